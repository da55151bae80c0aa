using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops.Turns;

/// <summary>The plain members of a role, set together.</summary>
/// <param name="Name">“Teaching”.</param>
/// <param name="Weight">What one turn counts, 1 to 20.</param>
/// <param name="Places">How many have it at each meeting, 1 and more.</param>
/// <param name="RoomId">The room in which it is done; null for none.</param>
/// <param name="ForAll">Whether every adult may have it; else those whom it names.</param>
/// <param name="May">Ids of adults; looked at only where it is not for all.</param>
public sealed record TurnRoleFacts(string Name, int Weight, int Places, Guid? RoomId, bool ForAll, IReadOnlyList<Guid> May);

/// <summary>A role that turns among the families of a co-op.</summary>
public sealed class TurnRole : ICoopOwned, IVersioned
{
    public const int LongestName = 60;

    /// <summary>As many as a rota can give at once.</summary>
    public const int Most = Core.Coop.RotaProblemFaults.MostRoles;

    private TurnRole() { }

    public TurnRole(Guid coopId, Guid id, int order, TurnRoleFacts facts)
    {
        (CoopId, Id, Order) = (coopId, id, order);
        Describe(facts);
    }

    public Guid CoopId { get; private set; }
    public Guid Id { get; private set; }
    public int Order { get; private set; }
    public string Name { get; private set; } = "";
    public int Weight { get; private set; }
    public int Places { get; private set; }
    public Guid? RoomId { get; private set; }
    public bool ForAll { get; private set; } = true;
    public List<Guid> May { get; private set; } = [];

    /// <summary>No longer given; turns that were had in it stay.</summary>
    public bool Ended { get; private set; }
    public int Version { get; private set; }

    public void Describe(TurnRoleFacts facts)
    {
        (Name, Weight, Places, RoomId, ForAll) = (facts.Name, facts.Weight, facts.Places, facts.RoomId, facts.ForAll);
        May = facts.ForAll ? [] : [.. facts.May];
        Ended = false;
    }

    public void End() => Ended = true;

    internal sealed class Mapping : IEntityTypeConfiguration<TurnRole>
    {
        public void Configure(EntityTypeBuilder<TurnRole> b)
        {
            b.HasKey(r => new { r.CoopId, r.Id });
            b.Property(r => r.Id).ValueGeneratedNever();
            b.Property(r => r.Name).HasMaxLength(LongestName);
            b.Property(r => r.May).AsJson();
        }
    }
}
