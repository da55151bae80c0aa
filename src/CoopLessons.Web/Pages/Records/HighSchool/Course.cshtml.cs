using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Credits;
using CoopLessons.Core.Hours;
using CoopLessons.Data;
using CoopLessons.Data.Credits;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.HighSchool;

/// <summary>A subject that comes to a course of itself.</summary>
public sealed class RuleInput : IValidatableObject
{
    [Required(ErrorMessage = "Choose a subject.")]
    public Guid? SubjectId { get; set; }

    [Required(ErrorMessage = "Choose the first day.")]
    public DateOnly? First { get; set; }

    [Required(ErrorMessage = "Choose the last day.")]
    public DateOnly? Last { get; set; }

    public Guid? UnitId { get; set; }

    public CourseRule Read() => new(SubjectId!.Value, AskedDays.Of(First, Last), UnitId);

    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
    {
        if (AskedDays.Fault(First, Last) is { } fault)
            yield return new ValidationResult(fault, [nameof(Last)]);
    }
}

/// <summary>Something that is lacking, as typed.</summary>
public sealed class LackingInput
{
    [StringLength(HighSchoolCourse.LongestLine, ErrorMessage = "At most {1} signs a line.")]
    public string? What { get; set; }

    public bool There { get; set; }
}

/// <summary>One course: what came to it, what is lacking, its rules and its study outside the log.</summary>
public sealed class CourseModel(AppDb db, TimeProvider clock) : CoursePage(db, clock)
{
    [BindProperty(Name = nameof(Rule))]
    public RuleInput Rule { get; set; } = new();

    [BindProperty(Name = nameof(Lines))]
    public List<LackingInput> Lines { get; set; } = [];

    public IReadOnlyList<(Guid Id, string Title)> Units { get; private set; } = [];
    public IReadOnlyList<OtherStudy> Studies => [.. All.Studies.Where(s => s.CourseId == CourseId)];
    public CreditForecast Forecast => All.Forecast(Course);
    public int WeeksLeft => CreditForecast.WeeksLeft(Today, Course.Last);

    /// <summary>Whether the form of a rule was sent and did not pass.</summary>
    public bool IsRuleRefused => ModelState.Keys.Any(k => k.StartsWith("Rule.", StringComparison.Ordinal) && ModelState[k]!.Errors.Count > 0);

    public string SubjectName(Guid id) => All.Log.Ledger.Subjects.First(s => s.Id == id).Name;

    /// <summary>Minutes by subject, the most first.</summary>
    public IReadOnlyList<(string Name, Minutes Minutes)> BySubject =>
        [.. Total.Credits.GroupBy(c => c.Credit.SubjectId).Select(g => (SubjectName(g.Key), g.Select(c => c.Credit.Minutes).Sum())).OrderByDescending(s => s.Item2)];

    public async Task<IActionResult> OnGetAsync()
    {
        if (!await FindAsync())
            return NotFound();
        Fill();
        return Page();
    }

    public async Task<IActionResult> OnPostRuleAsync()
    {
        if (!await FindAsync()
            || (Rule.SubjectId is { } subject && All.Log.Ledger.Subjects.All(s => s.Id != subject))
            || (Rule.UnitId is { } unit && Units.All(u => u.Id != unit)))
            return NotFound();
        Keep("Rule.");
        if (ModelState.IsValid && Course.Rules.Count >= HighSchoolCourse.MostRules)
            ModelState.AddModelError("Rule.SubjectId", $"A course has at most {HighSchoolCourse.MostRules} of these.");
        if (!ModelState.IsValid)
            return AgainWith();
        // Sent twice, it is the same rule.
        if (Course.Rules.Any(r => r.ToCore() == Rule.Read()))
            return LocalRedirect(Home);
        return await ChangeAsync(c => c.AddRule(Guid.CreateVersion7(), Rule.Read()), "The subject is added.", Home);
    }

    public async Task<IActionResult> OnPostTakeRuleAsync(Guid ruleId)
    {
        if (!await FindAsync() || Course.Rules.All(r => r.Id != ruleId))
            return NotFound();
        ModelState.Clear();
        return await ChangeAsync(c => c.RemoveRule(ruleId), "The subject is taken away.", Home);
    }

    public async Task<IActionResult> OnPostLackingAsync()
    {
        if (!await FindAsync())
            return NotFound();
        Keep("Lines");
        if (Lines.Count > HighSchoolCourse.MostLines + 1 || Lines.Any(l => l.What?.Any(char.IsControl) == true))
            ModelState.AddModelError("Lines", $"Write at most {HighSchoolCourse.MostLines} lines, each on its own.");
        if (!ModelState.IsValid)
            return AgainWith();
        return await ChangeAsync(
            c => c.Lacks(Lines.Where(l => !string.IsNullOrWhiteSpace(l.What)).Take(HighSchoolCourse.MostLines).Select(l => new LackingLine(l.What!.Trim(), l.There))),
            "What is lacking is written down.", Home);
    }

    protected override async Task<bool> FindAsync()
    {
        if (!await base.FindAsync())
            return false;
        Units = [.. (await Db.Units.AsNoTracking().OrderBy(u => u.Title).ThenBy(u => u.Id).Select(u => new { u.Id, u.Title }).ToListAsync(Ct)).Select(u => (u.Id, u.Title))];
        return true;
    }

    private void Fill()
    {
        Version = Course.Version;
        (Rule.First, Rule.Last) = (Course.First, Course.Last);
        Lines = [.. Course.Lacking.Select(l => new LackingInput { What = l.What, There = l.There }), new LackingInput()];
    }

    // The page has two forms: what belongs to the other one did not come.
    private void Keep(string prefix)
    {
        foreach (var key in ModelState.Keys.Where(k => k.StartsWith("Rule", StringComparison.Ordinal) || k.StartsWith("Lines", StringComparison.Ordinal)).Where(k => !k.StartsWith(prefix, StringComparison.Ordinal)).ToList())
            ModelState.Remove(key);
    }

    private IActionResult AgainWith()
    {
        if (Lines.Count == 0)
            Lines = [.. Course.Lacking.Select(l => new LackingInput { What = l.What, There = l.There }), new LackingInput()];
        if (!IsRuleRefused)
            (Rule.First, Rule.Last) = (Course.First, Course.Last);
        return Again();
    }
}
