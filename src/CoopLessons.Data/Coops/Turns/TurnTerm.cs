using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops.Turns;

/// <summary>A family among whom the turns of a term were divided, by the name it had.</summary>
public sealed record TermFamily(Guid Id, string Name);

/// <summary>A place that nobody has, with what would help.</summary>
public sealed record OpenPlace(DateOnly On, string Sentence, IReadOnlyList<string> Helps);

/// <summary>The days over which a rota that was taken reaches, and what is known of it.</summary>
public sealed class TurnTerm : ICoopOwned, IVersioned
{
    public const int LongestProof = 400;

    private TurnTerm() { }

    public TurnTerm(Guid coopId, Guid id, DateOnly first, DateOnly last, string by, DateTime now) =>
        (CoopId, Id, First, Last, By, TakenAt) = (coopId, id, first, last, by, now);

    public Guid CoopId { get; private set; }
    public Guid Id { get; private set; }
    public DateOnly First { get; private set; }

    /// <summary>Inclusive.</summary>
    public DateOnly Last { get; private set; }

    /// <summary>Who took it, by the name at that time.</summary>
    public string By { get; private set; } = "";
    public DateTime TakenAt { get; private set; }

    /// <summary>What was proven of it, in a sentence.</summary>
    public string Proof { get; private set; } = "";
    public List<TermFamily> Families { get; private set; } = [];
    public List<OpenPlace> OpenPlaces { get; private set; } = [];
    public int Version { get; private set; }

    public bool Holds(DateOnly day) => First <= day && day <= Last;

    /// <summary>Says what is known of the turns as they are now.</summary>
    public void Know(string proof, IEnumerable<TermFamily> families, IEnumerable<OpenPlace> open)
    {
        Proof = proof.Length <= LongestProof ? proof : proof[..LongestProof];
        (Families, OpenPlaces) = ([.. families], [.. open]);
    }

    /// <summary>A later rota begins on a day of this one.</summary>
    public void EndBefore(DateOnly day)
    {
        Last = day.AddDays(-1);
        OpenPlaces = [.. OpenPlaces.Where(p => p.On < day)];
    }

    internal sealed class Mapping : IEntityTypeConfiguration<TurnTerm>
    {
        public void Configure(EntityTypeBuilder<TurnTerm> b)
        {
            b.HasKey(t => new { t.CoopId, t.Id });
            b.Property(t => t.Id).ValueGeneratedNever();
            b.Property(t => t.By).HasMaxLength(People.Person.LongestName);
            b.Property(t => t.Proof).HasMaxLength(LongestProof);
            b.Property(t => t.Families).AsJson();
            b.Property(t => t.OpenPlaces).AsJson();
        }
    }
}
