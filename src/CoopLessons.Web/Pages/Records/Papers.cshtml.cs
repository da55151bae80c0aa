using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Duties;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Requirements;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records;

/// <summary>One learner's part of the page.</summary>
public sealed record LearnersPapers(LawOfLearner Law, IReadOnlyList<LearnerDuty> Duties, IReadOnlyList<KeptRecord> Kept);

/// <summary>Notices, reports, tests and records of a school year, with their dates: all children, or one.</summary>
public sealed class PapersModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    [BindProperty(SupportsGet = true, Name = "learner")]
    public Guid? LearnerId { get; set; }

    [BindProperty(SupportsGet = true, Name = "year")]
    public Guid? YearId { get; set; }

    /// <summary>The list that was tapped in shows one child, and so does the answer.</summary>
    [BindProperty(SupportsGet = true, Name = "one")]
    public bool One { get; set; }

    [BindProperty]
    public TellInput Input { get; set; } = new();

    /// <summary>In the family's order; a child who was set aside has papers only where asked for.</summary>
    public IReadOnlyList<LearnerFacts> Learners { get; private set; } = [];

    public IReadOnlyList<SchoolYear> Years { get; private set; } = [];
    public SchoolYear? Year { get; private set; }
    public IReadOnlyList<LearnersPapers> Papers { get; private set; } = [];

    /// <summary>Everything that is not done, by its date.</summary>
    public IEnumerable<LearnerDuty> Open(params DutyState[] states) =>
        Papers.SelectMany(p => p.Duties).Where(d => states.Contains(d.State(Today))).OrderBy(d => d.Dated.Due ?? DateOnly.MaxValue);

    /// <summary>What was typed into a field of this duty's form and did not pass; null where that is another's, or none.</summary>
    public string? Typed(LearnerDuty duty, string field) =>
        ModelState.IsValid || duty.Learner.Id != LearnerId || duty.Dated.Key != Input.Key ? null : ModelState[$"Input.{field}"]?.AttemptedValue ?? "";

    /// <summary>Children of whom the same records are kept stand together.</summary>
    public IEnumerable<IReadOnlyList<LearnersPapers>> KeptAlike =>
        Papers.Where(p => p.Kept.Count > 0).GroupBy(p => string.Join(' ', p.Kept.Select(k => $"{k.Span.Code}/{k.Span.Pathway.Id}/{k.Record.Id}")))
            .Select(g => (IReadOnlyList<LearnersPapers>)[.. g]);

    public async Task<IActionResult> OnGetAsync()
    {
        One = LearnerId is not null;
        return ModelState.IsValid && await FindAsync() ? Page() : NotFound();
    }

    /// <summary>Done today, in one tap. What was done before keeps its day.</summary>
    public async Task<IActionResult> OnPostDoneAsync() => await TellAsync(mark => mark.Done(mark.DoneOn ?? Today), "is done");

    /// <summary>Not done after all.</summary>
    public async Task<IActionResult> OnPostOpenAsync() => await TellAsync(mark => mark.Done(null), "is open again");

    /// <summary>Done on another day, a date of the family's own, a line about it.</summary>
    public async Task<IActionResult> OnPostTellAsync() => await TellAsync(
        mark =>
        {
            mark.Done(Input.DoneOn);
            mark.DueOn(Input.SetDue);
            mark.Remark(Input.Note?.Trim() ?? "");
        },
        "is written down");

    private async Task<IActionResult> TellAsync(Action<DutyMark> tell, string said)
    {
        var sound = ModelState.IsValid;
        if (LearnerId is null || !await FindAsync() || Year is null || Papers.SelectMany(p => p.Duties).FirstOrDefault(d => d.Learner.Id == LearnerId && d.Dated.Key == Input.Key) is not { } duty)
            return NotFound();
        if (!sound)
            return Again();
        var mark = await Db.DutyMarks.SingleOrDefaultAsync(m => m.LearnerId == LearnerId && m.SchoolYearId == Year.Id && m.Key == Input.Key, Ct);
        var isNew = mark is null;
        mark ??= new DutyMark(LearnerId.Value, Year.Id, Input.Key);
        tell(mark);
        if (isNew && !mark.IsEmpty)
            Db.DutyMarks.Add(mark);
        else if (!isNew && mark.IsEmpty)
            Db.DutyMarks.Remove(mark);
        if (!await SaveNewAsync())
        {
            await FindAsync();
            return AgainAfterOthers();
        }

        Say($"{duty.Learner.Name}: {duty.Dated.Duty.What} {said}.");
        return RedirectToPage(new { learner = One ? LearnerId : null, year = Year.Id });
    }

    private async Task<bool> FindAsync()
    {
        Years = await Db.SchoolYears.AsNoTracking().Include(y => y.Breaks).OrderByDescending(y => y.First).ToListAsync(Ct);
        Year = YearId is { } id ? Years.FirstOrDefault(y => y.Id == id) : LearnerYearPage.AtHand(Years, Today);
        if (YearId is not null && Year is null)
            return false;
        if (Year is null)
            return LearnerId is null;
        var all = await LawOfLearner.LoadAllAsync(Db, Year, Ct);
        Learners = [.. all.Select(l => l.Learner)];
        if (LearnerId is { } learner && Learners.All(l => l.Id != learner))
        {
            if (await Db.Learners.AsNoTracking().SingleOrDefaultAsync(l => l.Id == learner, Ct) is not { } aside)
                return false;
            (all, One) = ([await LawOfLearner.LoadAsync(Db, aside, Year, Ct)], true);
        }

        if (One)
            all = [.. all.Where(l => l.Learner.Id == LearnerId)];
        Papers = [.. all.Select(law => new LearnersPapers(law, LearnerDuty.Of(law), RecordsList.Of(law.Spans, Year.Calendar)))];
        return true;
    }

    public sealed class TellInput : IValidatableObject
    {
        [Required]
        [StringLength(DutyMark.LongestKey)]
        public string Key { get; set; } = "";

        public DateOnly? DoneOn { get; set; }
        public DateOnly? SetDue { get; set; }

        [StringLength(DutyMark.LongestNote, ErrorMessage = "A note has at most {1} signs.")]
        public string? Note { get; set; }

        public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
        {
            if (DoneOn is { Year: < 1900 or > 2200 })
                yield return new ValidationResult("Write a year between 1900 and 2200.", [nameof(DoneOn)]);
            if (SetDue is { Year: < 1900 or > 2200 })
                yield return new ValidationResult("Write a year between 1900 and 2200.", [nameof(SetDue)]);
            if (Note?.Any(char.IsControl) == true)
                yield return new ValidationResult("Write the note on one line.", [nameof(Note)]);
        }
    }
}
