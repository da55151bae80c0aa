using CoopLessons.Core.Hours;
using CoopLessons.Core.Units;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Planning;

/// <summary>One thing of a loop. The id stays when the list is written anew.</summary>
public sealed record LoopStep(Guid Id, string Title, Guid SubjectId);

/// <summary>What a family says of a loop, set together.</summary>
/// <param name="Steps">At least one, at most <see cref="LessonLoop.MostSteps"/>.</param>
/// <param name="Minutes">5–240, for one sitting.</param>
/// <param name="PerWeek">1–7 sittings.</param>
public sealed record LoopFacts(
    string Title, IReadOnlyList<LoopStep> Steps, int Minutes, int PerWeek, IReadOnlyList<Guid> Learners, AdultNeed Need, bool Morning);

/// <summary>
/// A list that goes round: each sitting takes up the step at which the last one left off, on whatever day that is, so
/// that a missed day costs nothing.
/// </summary>
public sealed class LessonLoop : IFamilyOwned, IVersioned
{
    public const int LongestTitle = 120;
    public const int LongestStep = 120;
    public const int MostSteps = 20;

    private LessonLoop() { }

    public LessonLoop(Guid id, LoopFacts facts)
    {
        Id = id;
        Describe(facts);
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public string Title { get; private set; } = "";
    public List<LoopStep> Steps { get; private set; } = [];

    /// <summary>Place in the list of the step that comes next, 0 for first.</summary>
    public int Next { get; private set; }
    public int Minutes { get; private set; }
    public int PerWeek { get; private set; }
    public List<Guid> Learners { get; private set; } = [];
    public AdultNeed Need { get; private set; }

    /// <summary>Wished for before noon.</summary>
    public bool Morning { get; private set; }
    public bool SetAside { get; private set; }
    public int Version { get; private set; }

    public LoopFacts Facts => new(Title, Steps, Minutes, PerWeek, Learners, Need, Morning);

    /// <summary>A list written anew is taken up at the same step; where that one is gone, at the next that stayed.</summary>
    /// <exception cref="ArgumentException">There is no step.</exception>
    public void Describe(LoopFacts facts)
    {
        if (facts.Steps.Count == 0)
            throw new ArgumentException("A loop has a step.", nameof(facts));
        var inTurn = Enumerable.Range(0, Steps.Count).Select(i => Steps[(Next + i) % Steps.Count].Id);
        var stayed = inTurn.FirstOrDefault(id => facts.Steps.Any(s => s.Id == id));
        (Title, Minutes, PerWeek, Need, Morning) = (facts.Title, facts.Minutes, facts.PerWeek, facts.Need, facts.Morning);
        Steps = [.. facts.Steps];
        Learners = [.. facts.Learners.Distinct()];
        Next = Math.Max(0, Steps.FindIndex(s => s.Id == stayed));
    }

    /// <summary>The loop is taken up at this step; one that it does not have changes nothing.</summary>
    public void GoTo(Guid stepId)
    {
        if (Steps.FindIndex(s => s.Id == stepId) is var at and >= 0)
            Next = at;
    }

    public void PutAside() => SetAside = true;

    public void BringBack() => SetAside = false;

    /// <summary>The step that comes so many after the next one, round and round.</summary>
    public LoopStep StepAhead(int ahead) => Steps[(Next + ahead) % Steps.Count];

    public LoopStep? Step(Guid id) => Steps.FirstOrDefault(s => s.Id == id);

    /// <summary>The next step is done, and the bookmark moves on.</summary>
    public LoopStep StepDone()
    {
        var step = StepAhead(0);
        Next = (Next + 1) % Steps.Count;
        return step;
    }

    /// <summary>The step was not done after all: the bookmark goes back to it, unless a later step was done since.</summary>
    public void TakeBack(Guid stepId)
    {
        var before = (Next + Steps.Count - 1) % Steps.Count;
        if (Steps[before].Id == stepId)
            Next = before;
    }

    /// <summary>The step counts as done again; the bookmark moves on where it stands at this very step.</summary>
    public void DoneAgain(Guid stepId)
    {
        if (Steps[Next].Id == stepId)
            StepDone();
    }

    public static TakenSplit Split(LoopStep step) => new([new SubjectWeight(step.SubjectId, 1)], []);

    internal sealed class Mapping : IEntityTypeConfiguration<LessonLoop>
    {
        public void Configure(EntityTypeBuilder<LessonLoop> b)
        {
            b.HasKey(l => new { l.FamilyId, l.Id });
            b.Property(l => l.Title).HasMaxLength(LongestTitle);
            b.Property(l => l.Steps).AsJson();
            b.Property(l => l.Learners).AsJson();
            b.Ignore(l => l.Facts);
        }
    }
}
