using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops.Sharing;

/// <summary>A shared unit as it was published once. It never changes.</summary>
public sealed class SharedRevision : IShownByFamily, IAppendOnly
{
    public const int LongestNote = 1000;

    private SharedRevision() { }

    internal SharedRevision(SharedUnit unit, PublishedBundle bundle, string note)
    {
        (CoopId, FamilyId, SharedUnitId, Number, Author, At) = (unit.CoopId, unit.FamilyId, unit.Id, unit.Newest, unit.Author, unit.PublishedAt);
        (Note, Hash, Text) = (note, bundle.Hash, bundle.Text);
    }

    public Guid CoopId { get; private set; }
    public Guid FamilyId { get; private set; }
    public Guid SharedUnitId { get; private set; }

    /// <summary>From 1, without gaps.</summary>
    public int Number { get; private set; }
    public string Author { get; private set; } = "";
    public DateTime At { get; private set; }

    /// <summary>What changed, in the author's words.</summary>
    public string Note { get; private set; } = "";

    /// <inheritdoc cref="Core.Sharing.UnitHash" />
    public string Hash { get; private set; } = "";

    /// <summary>The bundle, as <see cref="PublishedBundle"/> writes it.</summary>
    public string Text { get; private set; } = "";

    public PublishedBundle Bundle => PublishedBundle.Kept(Text);

    internal sealed class Mapping : IEntityTypeConfiguration<SharedRevision>
    {
        public void Configure(EntityTypeBuilder<SharedRevision> b)
        {
            b.HasKey(r => new { r.CoopId, r.SharedUnitId, r.Number });
            b.Property(r => r.Author).HasMaxLength(Family.LongestName);
            b.Property(r => r.Note).HasMaxLength(LongestNote);
            b.Property(r => r.Hash).HasMaxLength(64);
            b.Ignore(r => r.Bundle);
            b.HasOne<SharedUnit>().WithMany().HasForeignKey(r => new { r.CoopId, r.SharedUnitId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
