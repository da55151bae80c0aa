using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Credits;
using CoopLessons.Data;
using CoopLessons.Data.Credits;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.HighSchool;

/// <summary>A mark and the credit that is awarded with it, as typed.</summary>
public sealed class MarkInput : IValidatableObject
{
    [EnumDataType(typeof(MarkKind), ErrorMessage = "Choose one of the four.")]
    public MarkKind Kind { get; set; }

    [StringLength(HighSchoolCourse.LongestMark, ErrorMessage = "Choose a mark of your scale.")]
    public string? Mark { get; set; }

    public string? Awarded { get; set; }

    public CreditCount? Credit => CreditCount.TryRead(Awarded ?? "", out var count) ? count : null;

    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
    {
        if (Kind is MarkKind.Graded or MarkKind.Passed && Credit is not { Hundredths: <= CreditCount.Most })
            yield return new ValidationResult("Write the credit that you award, up to 10 with at most two decimals; 0 where it earns none.", [nameof(Awarded)]);
        if (Kind == MarkKind.Graded && string.IsNullOrEmpty(Mark))
            yield return new ValidationResult("Choose a mark of your scale.", [nameof(Mark)]);
    }
}

/// <summary>The mark of a course and the credit that the parent awards, beside what was worked out.</summary>
public sealed class MarkModel(AppDb db, TimeProvider clock) : CoursePage(db, clock)
{
    [BindProperty(Name = nameof(Input))]
    public MarkInput Input { get; set; } = new();

    public CreditCount? Computed => All.Computed(Course);

    public async Task<IActionResult> OnGetAsync()
    {
        if (!await FindAsync())
            return NotFound();
        Version = Course.Version;
        Input = new MarkInput { Kind = Course.Marked, Mark = Course.Mark, Awarded = (Course.Awarded is { } awarded ? new CreditCount(awarded) : Computed ?? new CreditCount(Course.Aim)).Text };
        return Page();
    }

    public async Task<IActionResult> OnPostAsync()
    {
        if (!await FindAsync())
            return NotFound();
        var step = All.Scale.Scale.Step(Input.Mark ?? "");
        if (Input.Kind == MarkKind.Graded && !string.IsNullOrEmpty(Input.Mark) && step is null)
            ModelState.AddModelError("Input.Mark", "Your scale does not have this mark. Choose one that it has.");
        if (!ModelState.IsValid)
            return Again();
        // What earns no credit has none, whatever stands in the field.
        CreditCount? awarded = Input.Kind switch
        {
            MarkKind.Open => null,
            MarkKind.NotPassed => CreditCount.Zero,
            MarkKind.Graded when !step!.EarnsCredit => CreditCount.Zero,
            _ => Input.Credit,
        };
        return await ChangeAsync(c => c.SetMark(Input.Kind, Input.Mark ?? "", awarded), $"{Course.Title}: {CreditWords.Of(Input.Kind, Input.Mark ?? "")}.", Home);
    }
}
