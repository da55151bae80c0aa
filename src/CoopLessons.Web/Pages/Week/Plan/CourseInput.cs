using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Units;
using CoopLessons.Data.Planning;
using CoopLessons.Web.Pages.Account;

namespace CoopLessons.Web.Pages.Planning;

/// <summary>What courses and loops have in common.</summary>
public class RegularInput
{
    [Required(ErrorMessage = "Say what it is called.")]
    [StringLength(Course.LongestTitle, ErrorMessage = "At most {1} signs here.")]
    [Visible]
    public string Title { get; set; } = "";

    [MaxLength(40)]
    public List<Guid> Learners { get; set; } = [];

    [Required(ErrorMessage = "Say how many minutes one takes.")]
    [Range(Course.LeastMinutes, Course.MostMinutes, ErrorMessage = "Give whole minutes from {1} to {2}.")]
    public int? Minutes { get; set; }

    [Required(ErrorMessage = "Say how often in a week.")]
    [Range(1, 7, ErrorMessage = "Give a number of times from {1} to {2}.")]
    public int? PerWeek { get; set; }

    [EnumDataType(typeof(AdultNeed), ErrorMessage = "Choose one of the three.")]
    public AdultNeed Need { get; set; } = AdultNeed.Beside;

    public bool Morning { get; set; }

    public bool SetAside { get; set; }
}

/// <summary>What a parent writes about a course.</summary>
public sealed class CourseInput : RegularInput, IValidatableObject
{
    [Required(ErrorMessage = "Choose the subject that its minutes count as.")]
    public Guid? SubjectId { get; set; }

    [Range(1, Course.MostLessons, ErrorMessage = "Give a number from {1} to {2}, or leave this empty.")]
    public int? Lessons { get; set; }

    [Required(ErrorMessage = "Say which lesson comes next; 1 for a course that is just begun.")]
    [Range(1, Course.MostLessons + 1, ErrorMessage = "Give a number from {1} to {2}.")]
    public int? NextLesson { get; set; }

    public static CourseInput Of(Course course) => new()
    {
        Title = course.Title,
        SubjectId = course.SubjectId,
        Learners = [.. course.Learners],
        Minutes = course.Minutes,
        PerWeek = course.PerWeek,
        Need = course.Need,
        Lessons = course.Lessons,
        NextLesson = course.NextLesson,
        Morning = course.Morning,
        SetAside = course.SetAside,
    };

    public CourseFacts Read() => new(Title, SubjectId!.Value, Learners, Minutes!.Value, PerWeek!.Value, Need, Lessons, NextLesson!.Value, Morning);

    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
    {
        if (Learners.Count == 0)
            yield return new ValidationResult("Tick at least one child.", [nameof(Learners)]);
        if (NextLesson > Lessons + 1)
            yield return new ValidationResult($"The last lesson is {Lessons}, so the next is at most {Lessons + 1}, which says that all are done.", [nameof(NextLesson)]);
    }
}
