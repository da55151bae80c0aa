using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Requirements;
using CoopLessons.Data;
using CoopLessons.Data.Requirements;
using CoopLessons.Web.Pages.Law;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Families.Law;

/// <summary>Under which pathways the children stand this year, and their grades.</summary>
public sealed class OverviewModel(AppDb db, TimeProvider clock) : LawPage(db, clock)
{
    [BindProperty(SupportsGet = true)]
    public Guid? YearId { get; set; }

    public IReadOnlyList<LawOfLearner> Learners { get; private set; } = [];

    public IReadOnlyList<OwnPathway> OwnPathways { get; private set; } = [];

    /// <summary>The grade typed last, where it could not be saved.</summary>
    public Guid? Refused { get; private set; }

    public async Task<IActionResult> OnGetAsync() => await FindAsync() ? Page() : NotFound();

    public async Task<IActionResult> OnPostGradeAsync(
        Guid learnerId, [Range(0, 12, ErrorMessage = "A grade is kindergarten or 1 to 12.")] int? grade)
    {
        if (YearId is null || !await FindAsync() || Learners.FirstOrDefault(l => l.Learner.Id == learnerId) is not { } law)
            return NotFound();
        if (!ModelState.IsValid)
        {
            Refused = learnerId;
            return Again();
        }

        if (!await GradeAsync(learnerId, grade) && !await GradeAsync(learnerId, grade))
            return AgainAfterOthers();
        Say(grade is { } number ? $"{law.Learner.Name} stands in {LawWords.Grade(number)} in {Year!.Name}." : $"No grade is set for {law.Learner.Name} in {Year!.Name}.");
        return RedirectToPage(new { yearId = YearId });
    }

    /// <summary>The pathways of this year, and those which are not there any more.</summary>
    public static IEnumerable<LostSpan> LostIn(LawOfLearner law) =>
        law.Lost.Where(l => l.Row.From <= law.Year.Last && (l.Until is null || l.Until >= law.Year.First));

    /// <summary>Figures that the family still has to enter, since they are set where it lives.</summary>
    public static bool LacksFigures(PathwaySpan span) => SpanChoices.Local(span.Pathway).Any(r => !span.Choices.Figures.ContainsKey(r.Id));

    private async Task<bool> GradeAsync(Guid learnerId, int? grade)
    {
        var known = await Db.LearnerGrades.SingleOrDefaultAsync(g => g.LearnerId == learnerId && g.SchoolYearId == Year!.Id, Ct);
        if (grade is not { } number)
            _ = known is null ? null : Db.Remove(known);
        else if (known is null)
            Db.Add(new LearnerGrade(learnerId, Year!.Id, number));
        else
            known.Become(number);
        return await SaveNewAsync();
    }

    private async Task<bool> FindAsync()
    {
        if (!await FindYearAsync(YearId))
            return false;
        OwnPathways = await Db.OwnPathways.AsNoTracking().OrderBy(p => p.Name).ToListAsync(Ct);
        if (Year is not null)
            Learners = await LawOfLearner.LoadAllAsync(Db, Year, Ct);
        return true;
    }
}
