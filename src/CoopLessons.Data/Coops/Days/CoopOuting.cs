using CoopLessons.Core.Coop;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops.Days;

/// <summary>The plain members of an outing, set together.</summary>
/// <param name="Where">Where it goes.</param>
/// <param name="MeetAt">Where everybody meets.</param>
/// <param name="From">When everybody meets.</param>
/// <param name="Back">When it is over; later than <paramref name="From"/>.</param>
/// <param name="CancelDays">See <see cref="Outing.CancelDays"/>.</param>
/// <param name="ChildrenPerFreeAdult">See <see cref="Outing.ChildrenPerFreeAdult"/>.</param>
public sealed record OutingFacts(
    string Name, DateOnly On, string Where, string MeetAt, TimeOnly From, TimeOnly Back, string Note, int CancelDays, int ChildCents, int AdultCents, int? ChildrenPerFreeAdult);

/// <summary>A day on which the families of a co-op go somewhere together.</summary>
public sealed class CoopOuting : ICoopOwned, IVersioned
{
    public const int LongestName = 80;
    public const int LongestPlace = 200;
    public const int LongestNote = 1000;

    private CoopOuting() { }

    public CoopOuting(Guid coopId, Guid id, OutingFacts facts)
    {
        (CoopId, Id) = (coopId, id);
        Describe(facts);
    }

    public Guid CoopId { get; private set; }
    public Guid Id { get; private set; }
    public string Name { get; private set; } = "";
    public DateOnly On { get; private set; }
    public string Where { get; private set; } = "";
    public string MeetAt { get; private set; } = "";
    public TimeOnly From { get; private set; }
    public TimeOnly Back { get; private set; }
    public string Note { get; private set; } = "";
    public int CancelDays { get; private set; }
    public int ChildCents { get; private set; }
    public int AdultCents { get; private set; }
    public int? ChildrenPerFreeAdult { get; private set; }
    public int Version { get; private set; }

    public OutingFacts Facts => new(Name, On, Where, MeetAt, From, Back, Note, CancelDays, ChildCents, AdultCents, ChildrenPerFreeAdult);

    public void Describe(OutingFacts facts)
    {
        (Name, On, Where, MeetAt, From, Back, Note) = (facts.Name, facts.On, facts.Where, facts.MeetAt, facts.From, facts.Back, facts.Note);
        (CancelDays, ChildCents, AdultCents, ChildrenPerFreeAdult) = (facts.CancelDays, facts.ChildCents, facts.AdultCents, facts.ChildrenPerFreeAdult);
    }

    public Outing ToCore() => new(Id, Name, On, CancelDays, ChildCents, AdultCents, ChildrenPerFreeAdult);

    internal sealed class Mapping : IEntityTypeConfiguration<CoopOuting>
    {
        public void Configure(EntityTypeBuilder<CoopOuting> b)
        {
            b.HasKey(o => new { o.CoopId, o.Id });
            b.Property(o => o.Id).ValueGeneratedNever();
            b.Property(o => o.Name).HasMaxLength(LongestName);
            b.Property(o => o.Where).HasMaxLength(LongestPlace);
            b.Property(o => o.MeetAt).HasMaxLength(LongestPlace);
            b.Property(o => o.Note).HasMaxLength(LongestNote);
            b.Ignore(o => o.Facts);
        }
    }
}

/// <summary>Who of a family comes to an outing. One row a family, changed until it says no.</summary>
public sealed class OutingAnswer : IShownByFamily, IVersioned
{
    private OutingAnswer() { }

    public OutingAnswer(Guid coopId, Guid outingId, Guid familyId) => (CoopId, OutingId, FamilyId) = (coopId, outingId, familyId);

    public Guid CoopId { get; private set; }
    public Guid OutingId { get; private set; }
    public Guid FamilyId { get; private set; }
    public List<Guid> Children { get; private set; } = [];

    /// <summary>Ids of <see cref="CoopAdult"/>.</summary>
    public List<Guid> Adults { get; private set; } = [];

    /// <summary>The day on which the family said no after all; null while it comes.</summary>
    public DateOnly? CancelledOn { get; private set; }
    public int Version { get; private set; }

    public void Come(IReadOnlyList<Guid> children, IReadOnlyList<Guid> adults) => (Children, Adults, CancelledOn) = ([.. children], [.. adults], null);

    public void Cancel(DateOnly today) => CancelledOn ??= today;

    internal sealed class Mapping : IEntityTypeConfiguration<OutingAnswer>
    {
        public void Configure(EntityTypeBuilder<OutingAnswer> b)
        {
            b.HasKey(a => new { a.CoopId, a.OutingId, a.FamilyId });
            b.Property(a => a.Children).AsJson();
            b.Property(a => a.Adults).AsJson();
            b.HasOne<CoopOuting>().WithMany().HasForeignKey(a => new { a.CoopId, a.OutingId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
