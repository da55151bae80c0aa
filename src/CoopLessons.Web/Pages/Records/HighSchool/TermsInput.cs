using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Credits;
using CoopLessons.Data.Credits;
using CoopLessons.Web.Pages.Account;

namespace CoopLessons.Web.Pages.HighSchool;

/// <summary>What a parent writes of a course.</summary>
public sealed class TermsInput : IValidatableObject
{
    [Required(ErrorMessage = "Say what the course is called.")]
    [StringLength(HighSchoolCourse.LongestTitle, ErrorMessage = "At most {1} signs here.")]
    [Visible]
    public string? Title { get; set; }

    [EnumDataType(typeof(CourseArea), ErrorMessage = "Choose an area from the list.")]
    public CourseArea Area { get; set; }

    [EnumDataType(typeof(CourseLevel), ErrorMessage = "Choose one of the three.")]
    public CourseLevel Level { get; set; }

    [Required(ErrorMessage = "Choose its first day.")]
    public DateOnly? First { get; set; }

    [Required(ErrorMessage = "Choose its last day.")]
    public DateOnly? Last { get; set; }

    [EnumDataType(typeof(CreditBasis), ErrorMessage = "Choose what the credit rests on.")]
    public CreditBasis Basis { get; set; }

    [Required(ErrorMessage = "Say for how many credits it is meant.")]
    public string? Aim { get; set; } = "1";

    public string? CollegeCredits { get; set; }

    [StringLength(HighSchoolCourse.LongestCollege, ErrorMessage = "At most {1} signs here.")]
    public string? College { get; set; }

    /// <summary>Whether a rule for a subject is added with the course.</summary>
    public Guid? SubjectId { get; set; }

    public static TermsInput Of(HighSchoolCourse course) => new()
    {
        Title = course.Title,
        Area = course.Area,
        Level = course.Level,
        First = course.First,
        Last = course.Last,
        Basis = course.Basis,
        Aim = new CreditCount(course.Aim).Text,
        CollegeCredits = course.CollegeCredits is { } college ? new CreditCount(college).Text : null,
        College = course.College,
    };

    /// <summary>The form was found sound.</summary>
    public CourseTerms Read()
    {
        CreditCount.TryRead(Aim!, out var aim);
        int? college = Basis == CreditBasis.CollegeCourse && CreditCount.TryRead(CollegeCredits ?? "", out var given) ? given.Hundredths : null;
        return new CourseTerms(Title!.Trim(), Area, Level, AskedDays.Of(First, Last), Basis, aim, college, Basis == CreditBasis.CollegeCourse ? College?.Trim() ?? "" : "");
    }

    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
    {
        if (AskedDays.Fault(First, Last) is { } fault)
            yield return new ValidationResult(fault, [nameof(Last)]);
        if (Aim is not null && (!CreditCount.TryRead(Aim, out var aim) || aim.Hundredths is < 1 or > CreditCount.Most))
            yield return new ValidationResult("Write a number up to 10 with at most two decimals, such as 1 or 0.5.", [nameof(Aim)]);
        if (Basis == CreditBasis.CollegeCourse && (!CreditCount.TryRead(CollegeCredits ?? "", out var college) || college.Hundredths is < 1 or > 3 * CreditCount.Most))
            yield return new ValidationResult("Write how many credits the college gave, up to 30, such as 3.", [nameof(CollegeCredits)]);
        if (Title?.Any(char.IsControl) == true)
            yield return new ValidationResult("Write the title on one line.", [nameof(Title)]);
        if (College?.Any(char.IsControl) == true)
            yield return new ValidationResult("Write the name on one line.", [nameof(College)]);
    }
}
