using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Scores;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Requirements;
using CoopLessons.Web.Pages.Records;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Assessments;

/// <summary>A figure of the law beside one result.</summary>
public sealed record HeldScore(Assessment Assessment, ScoreStanding Standing);

/// <summary>A test or an evaluation that is asked for, with what the year's results say of its figures.</summary>
public sealed record AskedAssessment(LearnerDuty Duty, IReadOnlyList<ScoreFloor> Floors, IReadOnlyList<HeldScore> Held);

/// <summary>A learner's tests and evaluations of a year: what is asked, what exists, and how one stands beside the other.</summary>
public sealed class IndexModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    [BindProperty(SupportsGet = true, Name = "learnerId")]
    public Guid LearnerId { get; set; }

    [BindProperty(SupportsGet = true, Name = "year")]
    public Guid? YearId { get; set; }

    public Learner Learner { get; private set; } = null!;
    public IReadOnlyList<SchoolYear> Years { get; private set; } = [];
    public SchoolYear? Year { get; private set; }
    public LawOfLearner? Law { get; private set; }
    public IReadOnlyList<AskedAssessment> Asked { get; private set; } = [];

    /// <summary>Of the year, the newest first.</summary>
    public IReadOnlyList<Assessment> There { get; private set; } = [];

    /// <summary>Of other years, the newest first.</summary>
    public IReadOnlyList<Assessment> Others { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync()
    {
        if (!ModelState.IsValid || await Db.Learners.AsNoTracking().SingleOrDefaultAsync(l => l.Id == LearnerId, Ct) is not { } learner)
            return NotFound();
        Learner = learner;
        Years = await Db.SchoolYears.AsNoTracking().Include(y => y.Breaks).OrderByDescending(y => y.First).ToListAsync(Ct);
        Year = YearId is { } id ? Years.FirstOrDefault(y => y.Id == id) : LearnerYearPage.AtHand(Years, Today);
        if (YearId is not null && Year is null)
            return NotFound();
        var all = await Db.Assessments.AsNoTracking().Where(a => a.LearnerId == LearnerId).OrderByDescending(a => a.Date).ThenBy(a => a.Id).ToListAsync(Ct);
        if (Year is null)
        {
            Others = all;
            return Page();
        }

        Law = await LawOfLearner.LoadAsync(Db, learner, Year, Ct);
        var duties = DutiesOf(Law);
        var (first, last) = (await BeginsAsync(learner, Year), Until(duties, Year));
        There = [.. all.Where(a => a.Date >= first && a.Date <= last)];
        Others = [.. all.Where(a => a.Date < first || a.Date > last)];
        Asked = [.. duties.Select(d =>
        {
            List<ScoreFloor> floors = [.. (d.Dated.Duty.Scores ?? []).Where(f => f.Grades is null || (Law.Learner.Grade is { } grade && f.Grades.Hold(grade)))];
            return new AskedAssessment(d, floors,
                [.. There.Where(a => a.Results.Count > 0).SelectMany(a => floors.SelectMany(f => ScoreStanding.Of(f, a.Results)).Select(s => new HeldScore(a, s)))]);
        })];
        return Page();
    }

    private static List<LearnerDuty> DutiesOf(LawOfLearner law) =>
        [.. LearnerDuty.Of(law).Where(d => d.Dated.Duty is { Kind: DutyKind.Assessment or DutyKind.Evaluation, ByOthers: false })];

    /// <summary>A test after the last day of school still answers for its year until it is due.</summary>
    private static DateOnly Until(IEnumerable<LearnerDuty> duties, SchoolYear year) => duties.Select(d => d.Dated.Due ?? year.Last).Append(year.Last).Max();

    /// <summary>The year's first day, or the day after that until which a test answers for the year before.</summary>
    private async Task<DateOnly> BeginsAsync(Learner learner, SchoolYear year)
    {
        if (Years.FirstOrDefault(y => y.Last < year.First) is not { } before)
            return year.First;
        var answered = Until(DutiesOf(await LawOfLearner.LoadAsync(Db, learner, before, Ct)), before);
        return answered < year.First ? year.First : answered.AddDays(1);
    }
}
