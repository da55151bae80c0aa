using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Units;

/// <summary>Another version of a unit that came as a file and waits until somebody says what of it comes in. The newest takes the place of one before.</summary>
public sealed class ArrivedPack : IFamilyOwned, IVersioned
{
    private ArrivedPack() { }

    public ArrivedPack(Guid unitId, UnitPack pack, DateTime now)
    {
        UnitId = unitId;
        Be(pack, now);
    }

    public Guid FamilyId { get; private set; }
    public Guid UnitId { get; private set; }
    public string Text { get; private set; } = "";

    /// <summary>What the other side said both know.</summary>
    public string BaseText { get; private set; } = "";
    public string From { get; private set; } = "";
    public DateTime At { get; private set; }
    public List<TravellingPrint> Prints { get; private set; } = [];
    public int Version { get; private set; }

    public PublishedBundle Bundle => PublishedBundle.Kept(Text);

    public PublishedBundle Base => PublishedBundle.Kept(BaseText);

    public void Be(UnitPack pack, DateTime now) =>
        (Text, BaseText, From, At, Prints) = (pack.Unit.Text, pack.Base.Text, pack.From, now, [.. pack.Prints]);

    internal sealed class Mapping : IEntityTypeConfiguration<ArrivedPack>
    {
        public void Configure(EntityTypeBuilder<ArrivedPack> b)
        {
            b.HasKey(p => new { p.FamilyId, p.UnitId });
            b.Property(p => p.From).HasMaxLength(Families.Family.LongestName);
            b.Property(p => p.Prints).AsJson();
            b.Ignore(p => p.Bundle).Ignore(p => p.Base);
            b.HasOne<Unit>().WithOne().HasForeignKey<ArrivedPack>(p => new { p.FamilyId, p.UnitId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
