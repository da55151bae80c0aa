using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops.Sharing;

/// <summary>A unit that one family prepared for all of a co-op. Its author alone publishes; it stays when the author leaves.</summary>
public sealed class SharedUnit : IShownByFamily, IVersioned
{
    private SharedUnit() { }

    /// <param name="unit">The author's own; the shared one has its id wherever it goes.</param>
    public SharedUnit(Guid coopId, CoopFamily author, Unit unit) => (CoopId, FamilyId, Id, Title) = (coopId, author.FamilyId, unit.Id, unit.Title);

    public Guid CoopId { get; private set; }

    /// <summary>The author.</summary>
    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }

    /// <summary>As the newest revision has it.</summary>
    public string Title { get; private set; } = "";

    /// <summary>By which name the author published last.</summary>
    public string Author { get; private set; } = "";

    /// <summary>Number of the newest revision, 1 for the first.</summary>
    public int Newest { get; private set; }
    public DateTime PublishedAt { get; private set; }
    public int Version { get; private set; }

    /// <summary>The next revision, to be added beside this.</summary>
    public SharedRevision Publish(CoopFamily author, PublishedBundle bundle, string note, DateTime now)
    {
        (Title, Author, PublishedAt) = (bundle.Content.Title, author.Name, now);
        Newest++;
        return new SharedRevision(this, bundle, note);
    }

    internal sealed class Mapping : IEntityTypeConfiguration<SharedUnit>
    {
        public void Configure(EntityTypeBuilder<SharedUnit> b)
        {
            b.HasKey(u => new { u.CoopId, u.Id });
            b.Property(u => u.Id).ValueGeneratedNever();
            b.Property(u => u.Title).HasMaxLength(Unit.LongestTitle);
            b.Property(u => u.Author).HasMaxLength(Family.LongestName);
        }
    }
}
