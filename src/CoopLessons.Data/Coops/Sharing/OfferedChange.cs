using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops.Sharing;

/// <summary>What a family made of a shared unit, offered back to its author.</summary>
public sealed class OfferedChange : IShownByFamily, IAppendOnly
{
    public const int LongestWhy = 500;

    private OfferedChange() { }

    /// <param name="revision">From which the family's version went out.</param>
    /// <param name="bundle">That revision with what is offered, and nothing else of the family's.</param>
    public OfferedChange(SharedRevision revision, CoopFamily from, Guid id, PublishedBundle bundle, string why, DateTime now)
    {
        (CoopId, FamilyId, Id, From) = (revision.CoopId, from.FamilyId, id, from.Name);
        (SharedUnitId, Number, Text, Why, At) = (revision.SharedUnitId, revision.Number, bundle.Text, why, now);
    }

    public Guid CoopId { get; private set; }
    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public string From { get; private set; } = "";
    public Guid SharedUnitId { get; private set; }
    public int Number { get; private set; }
    public string Text { get; private set; } = "";

    /// <summary>In the family's words: “halved the reading for the young ones”.</summary>
    public string Why { get; private set; } = "";
    public DateTime At { get; private set; }

    public PublishedBundle Bundle => PublishedBundle.Kept(Text);

    internal sealed class Mapping : IEntityTypeConfiguration<OfferedChange>
    {
        public void Configure(EntityTypeBuilder<OfferedChange> b)
        {
            b.HasKey(o => new { o.CoopId, o.Id });
            b.Property(o => o.Id).ValueGeneratedNever();
            b.Property(o => o.From).HasMaxLength(Family.LongestName);
            b.Property(o => o.Why).HasMaxLength(LongestWhy);
            b.Ignore(o => o.Bundle);
            b.HasOne<SharedUnit>().WithMany().HasForeignKey(o => new { o.CoopId, o.SharedUnitId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}

/// <summary>What the author did with an offer.</summary>
public sealed class OfferAnswer : IShownByFamily, IAppendOnly
{
    private OfferAnswer() { }

    /// <param name="taken">How many of the offered changes came into the author's unit.</param>
    public OfferAnswer(OfferedChange offer, Guid author, int taken, int of, string word, DateTime now) =>
        (CoopId, FamilyId, OfferId, Taken, Of, Word, At) = (offer.CoopId, author, offer.Id, taken, of, word, now);

    public Guid CoopId { get; private set; }

    /// <summary>The author.</summary>
    public Guid FamilyId { get; private set; }
    public Guid OfferId { get; private set; }
    public int Taken { get; private set; }
    public int Of { get; private set; }
    public string Word { get; private set; } = "";
    public DateTime At { get; private set; }

    internal sealed class Mapping : IEntityTypeConfiguration<OfferAnswer>
    {
        public void Configure(EntityTypeBuilder<OfferAnswer> b)
        {
            b.HasKey(a => new { a.CoopId, a.OfferId });
            b.Property(a => a.Word).HasMaxLength(OfferedChange.LongestWhy);
            b.HasOne<OfferedChange>().WithOne().HasForeignKey<OfferAnswer>(a => new { a.CoopId, a.OfferId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
