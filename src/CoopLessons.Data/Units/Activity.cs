using System.Text.Json.Serialization;
using CoopLessons.Core.Families;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Prepare.Supplies;
using CoopLessons.Core.Schedule;
using CoopLessons.Core.Units;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Units;

/// <summary>How an activity's minutes are divided; 0 for a subject met in passing.</summary>
public sealed record ActivitySubject(Guid SubjectId, int Weight);

/// <summary>The lists of an activity, kept together since they are read and written together.</summary>
public sealed record ActivityDetails(
    IReadOnlyList<ActivitySubject> Subjects,
    IReadOnlyList<LevelVariant> Variants,
    IReadOnlyList<Supply> Supplies,
    IReadOnlyList<Printable> Printables,
    IReadOnlyList<Book> Books,
    IReadOnlyList<Hazard> Hazards,
    IReadOnlyList<Ingredient> Ingredients)
{
    public static ActivityDetails Empty { get; } = new([], [], [], [], [], [], []);

    /// <summary>Codes of the unit's activities that are done first.</summary>
    public IReadOnlyList<string> After { get; init; } = [];

    /// <summary>What is begun days before.</summary>
    public IReadOnlyList<AheadStart> Ahead { get; init; } = [];

    /// <summary>The hands-on minutes as somebody wrote them, where those that hold were taken from the log's memory.</summary>
    public int? MinutesBefore { get; init; }

    [JsonIgnore]
    public IEnumerable<Guid> SubjectIds => Subjects.Select(s => s.SubjectId);

    [JsonIgnore]
    public IReadOnlyList<SubjectWeight> Weights => [.. Subjects.Where(s => s.Weight > 0).Select(s => new SubjectWeight(s.SubjectId, s.Weight))];

    [JsonIgnore]
    public IReadOnlyList<Guid> Touches => [.. Subjects.Where(s => s.Weight == 0).Select(s => s.SubjectId)];
}

/// <summary>The plain members of an activity, set together.</summary>
/// <param name="Week">1 to the unit's weeks.</param>
/// <param name="HandsOnMinutes">1–480, for one group together.</param>
/// <param name="WaitingMinutes">0–43,200; planned for and never credited.</param>
public sealed record ActivityFacts(
    int Week, int Order, string Title, ActivityKind Kind, string Does, AdultNeed AdultNeed, int HandsOnMinutes, int WaitingMinutes, string WaitingFor);

/// <summary>One thing to do in a unit.</summary>
public sealed class Activity : IFamilyOwned, IVersioned
{
    public const int LongestTitle = 120;
    public const int LongestDoes = 4000;
    public const int MostHandsOn = 480;
    public const int MostWaiting = 43_200;

    private Activity() { }

    public Activity(Guid id, string code, ActivityFacts facts, ActivityDetails details)
    {
        (Id, Code) = (id, code);
        Describe(facts, details);
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public Guid UnitId { get; private set; }

    /// <summary>Names the activity within its unit wherever the unit travels.</summary>
    public string Code { get; private set; } = "";
    public int Week { get; private set; }
    public int Order { get; private set; }
    public string Title { get; private set; } = "";
    public ActivityKind Kind { get; private set; }
    public string Does { get; private set; } = "";
    public AdultNeed AdultNeed { get; private set; }
    public int HandsOnMinutes { get; private set; }
    public int WaitingMinutes { get; private set; }
    public string WaitingFor { get; private set; } = "";
    public bool LeftOut { get; private set; }
    public ActivityDetails Details { get; private set; } = ActivityDetails.Empty;
    public int Version { get; private set; }

    public void Describe(ActivityFacts facts, ActivityDetails details)
    {
        (Week, Order, Title, Kind, Does) = (facts.Week, facts.Order, facts.Title, facts.Kind, facts.Does);
        // Minutes that somebody writes are the ones from which the memory of the log reckons.
        Details = details with { MinutesBefore = facts.HandsOnMinutes == HandsOnMinutes ? Details.MinutesBefore : null };
        (AdultNeed, HandsOnMinutes, WaitingMinutes, WaitingFor) = (facts.AdultNeed, facts.HandsOnMinutes, facts.WaitingMinutes, facts.WaitingFor);
    }

    /// <summary>Hands-on minutes as somebody wrote them.</summary>
    public int WrittenMinutes => Details.MinutesBefore ?? HandsOnMinutes;

    /// <summary>Takes the minutes that it is likely to need, and remembers those that were written.</summary>
    /// <param name="minutes">1 to <see cref="MostHandsOn"/>.</param>
    public void TakeLikely(int minutes)
    {
        var written = WrittenMinutes;
        HandsOnMinutes = minutes;
        Details = Details with { MinutesBefore = minutes == written ? null : written };
    }

    public void LeaveOut() => LeftOut = true;

    public void BringBack() => LeftOut = false;

    public TakenSplit? Split(IReadOnlySet<Guid> leftOut) => TakenSubjects.Of(Details.Weights, Details.Touches, leftOut);

    public bool IsInPlan(IReadOnlySet<Guid> leftOut) => !LeftOut && Split(leftOut) is not null;

    /// <summary>
    /// Whether a child is old enough on a day for the youngest version that is written, and for what lies about: a child for
    /// whose sake it is done during a nap does not take part in it.
    /// </summary>
    public bool Suits(DateOnly born, DateOnly day) =>
        (Details.Variants.Count == 0 || Age.On(day, born) >= Details.Variants.Min(v => v.FromAge))
        && !(SmallPartsInTheRoom.AreIn(Details.Hazards) && SmallPartsInTheRoom.Matter([born], day));

    /// <summary>What cautions look at. A supply whose name points to an allergen that no ingredient marks counts as an ingredient.</summary>
    public ActivityCare Care => CareWith([]);

    /// <summary>The same with what a family uses beside or instead. What is swapped out stays, since labels and habits lag behind.</summary>
    /// <param name="instead">By name.</param>
    public ActivityCare CareWith(IEnumerable<string> instead)
    {
        var marked = Details.Ingredients.SelectMany(i => i.Allergens).ToHashSet();
        var named = Details.Supplies.Select(s => s.Name).Concat(instead)
            .Select(name => new Ingredient(name, [.. AllergenWords.In(name).Select(f => f.Allergen).Where(a => !marked.Contains(a))]));
        return new ActivityCare([.. Details.Ingredients, .. named.Where(i => i.Allergens.Count > 0)], Details.Hazards, Details.Variants, AdultNeed);
    }

    internal sealed class Mapping : IEntityTypeConfiguration<Activity>
    {
        public void Configure(EntityTypeBuilder<Activity> b)
        {
            b.HasKey(a => new { a.FamilyId, a.Id });
            b.Property(a => a.Id).ValueGeneratedNever();
            b.Property(a => a.Code).HasMaxLength(40);
            b.HasIndex(a => new { a.FamilyId, a.UnitId, a.Code }).IsUnique();
            b.Property(a => a.Title).HasMaxLength(LongestTitle);
            b.Property(a => a.Does).HasMaxLength(LongestDoes);
            b.Property(a => a.WaitingFor).HasMaxLength(LongestTitle);
            b.Property(a => a.Details).AsJson();
            b.Ignore(a => a.WrittenMinutes).Ignore(a => a.Care);
        }
    }
}
