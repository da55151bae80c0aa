using CoopLessons.Core.Coop;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops.Days;

/// <summary>What a class does at home when the day falls through, for children of an age.</summary>
/// <param name="FromAge">Completed years, inclusive.</param>
/// <param name="ToAge">Inclusive.</param>
public sealed record HomeVersion(int FromAge, int ToAge, string Does);

/// <summary>The lists of a class, kept together since they are read and written together.</summary>
/// <param name="Teachers">Ids of <see cref="CoopAdult"/>.</param>
/// <param name="Helpers">Likewise.</param>
/// <param name="Uses">What is eaten, drunk or touched, with what would do instead.</param>
/// <param name="Subjects">Names of the subjects that it teaches, met with each family's own by name.</param>
/// <param name="Perishables">What spoils when the day falls through: “2 l of milk”.</param>
public sealed record ClassDetails(
    IReadOnlyList<Guid> Teachers,
    IReadOnlyList<Guid> Helpers,
    IReadOnlyList<RoomIngredient> Uses,
    IReadOnlyList<string> Subjects,
    IReadOnlyList<HomeVersion> HomeVersions,
    IReadOnlyList<string> Perishables)
{
    public static ClassDetails Empty { get; } = new([], [], [], [], [], []);
}

/// <summary>The plain members of a class, set together.</summary>
/// <param name="FromAge">Completed years, inclusive.</param>
/// <param name="ToAge">Inclusive.</param>
/// <param name="Size">How many children have a place; 1 and more.</param>
/// <param name="First">The first day on which it may be held, inclusive.</param>
/// <param name="Last">Inclusive.</param>
public sealed record ClassFacts(string Title, string Does, Guid PeriodId, Guid RoomId, int FromAge, int ToAge, int Size, DateOnly First, DateOnly Last, bool OffSite);

/// <summary>A class of a co-op: at each meeting between two days, in one period and one room.</summary>
public sealed class CoopClass : ICoopOwned, IVersioned
{
    public const int LongestTitle = 120;
    public const int LongestDoes = 4000;

    private CoopClass() { }

    public CoopClass(Guid coopId, Guid id, ClassFacts facts, ClassDetails details)
    {
        (CoopId, Id) = (coopId, id);
        Describe(facts, details);
    }

    public Guid CoopId { get; private set; }
    public Guid Id { get; private set; }
    public string Title { get; private set; } = "";
    public string Does { get; private set; } = "";
    public Guid PeriodId { get; private set; }
    public Guid RoomId { get; private set; }
    public int FromAge { get; private set; }
    public int ToAge { get; private set; }
    public int Size { get; private set; }
    public DateOnly First { get; private set; }
    public DateOnly Last { get; private set; }
    public bool OffSite { get; private set; }
    public ClassDetails Details { get; private set; } = ClassDetails.Empty;
    public int Version { get; private set; }

    public bool IsHeldOn(DateOnly day) => First <= day && day <= Last;

    public void Describe(ClassFacts facts, ClassDetails details)
    {
        (Title, Does, PeriodId, RoomId) = (facts.Title, facts.Does, facts.PeriodId, facts.RoomId);
        (FromAge, ToAge, Size, First, Last, OffSite) = (facts.FromAge, facts.ToAge, facts.Size, facts.First, facts.Last, facts.OffSite);
        Details = details;
    }

    internal sealed class Mapping : IEntityTypeConfiguration<CoopClass>
    {
        public void Configure(EntityTypeBuilder<CoopClass> b)
        {
            b.HasKey(c => new { c.CoopId, c.Id });
            b.Property(c => c.Id).ValueGeneratedNever();
            b.Property(c => c.Title).HasMaxLength(LongestTitle);
            b.Property(c => c.Does).HasMaxLength(LongestDoes);
            b.Property(c => c.Details).AsJson();
        }
    }
}
