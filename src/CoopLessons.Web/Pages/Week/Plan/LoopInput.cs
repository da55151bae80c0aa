using System.ComponentModel.DataAnnotations;
using CoopLessons.Data.Planning;

namespace CoopLessons.Web.Pages.Planning;

/// <summary>One row of a loop's list. A row without a title is left out.</summary>
public sealed class StepInput
{
    /// <summary>Empty for one that is being added.</summary>
    public Guid Id { get; set; }

    [StringLength(LessonLoop.LongestStep, ErrorMessage = "At most {1} signs here.")]
    public string? Title { get; set; }

    public Guid? SubjectId { get; set; }

    /// <summary>Where it stands in the list; rows with the same number stay as they are.</summary>
    [Range(1, 99, ErrorMessage = "Give a place from {1} to {2}.")]
    public int? Place { get; set; }

    public bool IsBlank => string.IsNullOrWhiteSpace(Title);
}

/// <summary>What a parent writes about a loop.</summary>
public sealed class LoopInput : RegularInput, IValidatableObject
{
    private const int BlankRows = 3;

    [MaxLength(LessonLoop.MostSteps, ErrorMessage = "A loop has at most 20 steps.")]
    public List<StepInput> Steps { get; set; } = [];

    /// <summary>Place in the posted list of the step that comes next.</summary>
    public int Next { get; set; }

    public static LoopInput Of(LessonLoop loop) => new LoopInput
    {
        Title = loop.Title,
        Steps = [.. loop.Steps.Select((s, i) => new StepInput { Id = s.Id, Title = s.Title, SubjectId = s.SubjectId, Place = i + 1 })],
        Next = loop.Next,
        Learners = [.. loop.Learners],
        Minutes = loop.Minutes,
        PerWeek = loop.PerWeek,
        Need = loop.Need,
        Morning = loop.Morning,
        SetAside = loop.SetAside,
    }.WithRoom();

    /// <summary>With blank rows to write in.</summary>
    public LoopInput WithRoom()
    {
        while (Steps.Count(s => s.IsBlank) < BlankRows && Steps.Count < LessonLoop.MostSteps)
            Steps.Add(new StepInput());
        return this;
    }

    /// <summary>The steps in their order, each with an id. A step that was typed without one gets the one given.</summary>
    public LoopFacts Read() => new(Title, [.. InOrder().Select(s => new LoopStep(s.Id, s.Title!.Trim(), s.SubjectId!.Value))], Minutes!.Value, PerWeek!.Value, Learners, Need, Morning);

    /// <summary>The step that comes next: the one chosen, or the first after it that was written.</summary>
    public Guid NextStep()
    {
        var chosen = Steps.Skip(Next).Concat(Steps.Take(Next)).FirstOrDefault(s => !s.IsBlank);
        return chosen?.Id ?? Guid.Empty;
    }

    private IEnumerable<StepInput> InOrder() => Steps.Where(s => !s.IsBlank).OrderBy(s => s.Place ?? 99);

    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
    {
        if (Learners.Count == 0)
            yield return new ValidationResult("Tick at least one child.", [nameof(Learners)]);
        if (Steps.All(s => s.IsBlank))
            yield return new ValidationResult("Write at least one step.", ["Steps[0].Title"]);
        for (var i = 0; i < Steps.Count; i++)
        {
            if (!Steps[i].IsBlank && Steps[i].SubjectId is null)
                yield return new ValidationResult("Choose the subject that it counts as.", [$"Steps[{i}].SubjectId"]);
        }
    }
}
