using System.ComponentModel.DataAnnotations;
using System.Globalization;
using CoopLessons.Core.Credits;
using CoopLessons.Core.Hours;
using CoopLessons.Data;
using CoopLessons.Data.Credits;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.HighSchool;

/// <summary>One mark as typed.</summary>
public sealed class StepInput : IValidatableObject
{
    [StringLength(HighSchoolCourse.LongestMark, ErrorMessage = "A mark has at most {1} signs.")]
    public string? Mark { get; set; }

    public string? Points { get; set; }

    [Range(0, 100, ErrorMessage = "Give a whole number from {1} to {2}, or leave this empty.")]
    public int? FromPercent { get; set; }

    public bool IsEmpty => string.IsNullOrWhiteSpace(Mark);

    public GradeStep Read() => new(Mark!.Trim(), ScaleInput.Points(Points)!.Value, FromPercent);

    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
    {
        if (IsEmpty)
            yield break;
        if (Mark!.Any(char.IsControl))
            yield return new ValidationResult("Write the mark on one line.", [nameof(Mark)]);
        if (ScaleInput.Points(Points) is null)
            yield return new ValidationResult("Points go from 0 to 10, with at most two decimals.", [nameof(Points)]);
    }
}

/// <summary>A family's scale and what it counts as a credit, as typed.</summary>
public sealed class ScaleInput : IValidatableObject
{
    public List<StepInput> Steps { get; set; } = [];

    [Required(ErrorMessage = "Write a number; 0 for nothing.")]
    public string? HonorsAdds { get; set; }

    [Required(ErrorMessage = "Write a number; 0 for nothing.")]
    public string? CollegeAdds { get; set; }

    [Required(ErrorMessage = "Say how many hours make a credit.")]
    [Range(60, 300, ErrorMessage = "Give whole hours from {1} to {2}.")]
    public int? HoursPerCredit { get; set; }

    [Required(ErrorMessage = "Say how many college credits make a credit.")]
    public string? CollegePerCredit { get; set; }

    internal static int? Points(string? typed) => CreditCount.TryRead(typed ?? "", out var count) && count.Hundredths <= 1000 ? count.Hundredths : null;

    public static ScaleInput Of(GradeScale scale, GradingScale row) => new()
    {
        Steps = [.. scale.Steps.Select(s => new StepInput { Mark = s.Mark, Points = GradeAverage.Text(s.Points), FromPercent = s.FromPercent }), new(), new()],
        HonorsAdds = GradeAverage.Text(scale.HonorsAdds),
        CollegeAdds = GradeAverage.Text(scale.CollegeAdds),
        HoursPerCredit = row.PerCredit / 60,
        CollegePerCredit = new CreditCount(row.CollegePerCredit).Text,
    };

    /// <summary>The form was found sound.</summary>
    public void WriteTo(GradingScale row) => row.Describe(
        new GradeScale([.. Steps.Where(s => !s.IsEmpty).Select(s => s.Read()).OrderByDescending(s => s.Points)], Points(HonorsAdds)!.Value, Points(CollegeAdds)!.Value),
        new Minutes(HoursPerCredit!.Value * 60), Points(CollegePerCredit)!.Value);

    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
    {
        var marks = Steps.Where(s => !s.IsEmpty).Select(s => s.Mark!.Trim()).ToList();
        if (marks.Count is 0 or > GradingScale.MostSteps)
            yield return new ValidationResult(string.Create(CultureInfo.InvariantCulture, $"A scale has 1 to {GradingScale.MostSteps} marks."), [nameof(Steps)]);
        if (marks.Distinct().Count() < marks.Count)
            yield return new ValidationResult("Each mark stands there once.", [nameof(Steps)]);
        if (HonorsAdds is not null && Points(HonorsAdds) is null)
            yield return new ValidationResult("Write 0 to 10, with at most two decimals.", [nameof(HonorsAdds)]);
        if (CollegeAdds is not null && Points(CollegeAdds) is null)
            yield return new ValidationResult("Write 0 to 10, with at most two decimals.", [nameof(CollegeAdds)]);
        if (CollegePerCredit is not null && Points(CollegePerCredit) is null or 0)
            yield return new ValidationResult("Write a number up to 10, such as 3.", [nameof(CollegePerCredit)]);
    }
}

/// <summary>How the family marks, and what it counts as a credit.</summary>
public sealed class ScaleModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    [BindProperty(Name = nameof(Input))]
    public ScaleInput Input { get; set; } = new();

    [BindProperty]
    public int Version { get; set; }

    /// <summary>Courses whose mark the scale does not have.</summary>
    public IReadOnlyList<string> Unknown { get; private set; } = [];

    /// <param name="begin"><c>plain</c> or <c>plus</c>: a usual scale in the form, not kept yet.</param>
    public async Task<IActionResult> OnGetAsync(string? begin)
    {
        var row = await Db.GradingScales.AsNoTracking().SingleOrDefaultAsync(Ct) ?? GradingScale.Usual;
        Version = row.Version;
        Input = ScaleInput.Of(begin switch { "plain" => GradeScale.Plain, "plus" => GradeScale.WithPlusAndMinus, _ => row.Scale }, row);
        var marked = await Db.HighSchoolCourses.AsNoTracking().Where(c => c.Mark != "").OrderBy(c => c.Title).Select(c => new { c.Title, c.Mark }).ToListAsync(Ct);
        Unknown = [.. marked.Where(c => row.Scale.Step(c.Mark) is null).Select(c => $"{c.Title}: {c.Mark}")];
        return Page();
    }

    public async Task<IActionResult> OnPostAsync()
    {
        if (!ModelState.IsValid)
            return Again();
        var row = await Db.GradingScales.SingleOrDefaultAsync(Ct);
        if (row is null)
        {
            row = new GradingScale();
            Input.WriteTo(row);
            Db.Add(row);
            if (!await SaveNewAsync())
                return AgainAfterOthers();
        }
        else
        {
            Input.WriteTo(row);
            Expect(row, Version);
            if (!await SaveAsync())
            {
                Version = await Db.GradingScales.Select(s => s.Version).SingleAsync(Ct);
                ModelState.Remove(nameof(Version));
                return Again(StatusCodes.Status409Conflict);
            }
        }

        Say("Your scale is saved. Averages follow it from now on.");
        return RedirectToPage();
    }
}
