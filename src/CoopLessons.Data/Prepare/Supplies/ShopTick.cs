using CoopLessons.Core.Prepare.Supplies;
using CoopLessons.Core.Units;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Prepare.Supplies;

/// <summary>A good of a week's list lies in the basket. The row is there or not; said twice, it stays one.</summary>
public sealed class ShopTick : IFamilyOwned
{
    private ShopTick() { }

    /// <param name="week">As ISO 8601 writes it.</param>
    public ShopTick(string week, Guid goodId) => (Week, GoodId) = (week, goodId);

    public Guid FamilyId { get; private set; }
    public string Week { get; private set; } = "";
    public Guid GoodId { get; private set; }

    internal sealed class Mapping : IEntityTypeConfiguration<ShopTick>
    {
        public void Configure(EntityTypeBuilder<ShopTick> b)
        {
            b.HasKey(t => new { t.FamilyId, t.Week, t.GoodId });
            b.Property(t => t.Week).HasMaxLength(8);
            b.HasOne<Good>().WithMany().HasForeignKey(t => new { t.FamilyId, t.GoodId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}

/// <summary>Something that a family puts on a week's list itself, for no activity.</summary>
public sealed class ListedByHand : IFamilyOwned
{
    private ListedByHand() { }

    /// <param name="week">As ISO 8601 writes it.</param>
    public ListedByHand(Guid id, string week, Guid goodId, Amount amount)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(amount.Quantity, nameof(amount));
        (Id, Week, GoodId, Quantity, Measure) = (id, week, goodId, amount.Quantity, amount.Measure.Word);
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public string Week { get; private set; } = "";
    public Guid GoodId { get; private set; }
    public decimal Quantity { get; private set; }
    public string Measure { get; private set; } = "";

    /// <summary>The Sunday of its week: until then it is promised, and once that is past it is used.</summary>
    public DateOnly UsedOn => Core.Calendar.Week.TryParse(Week, out var week) ? week.Days.Last : DateOnly.MinValue;

    /// <summary>What it asks for: the amount once, used up unless the family keeps such a thing.</summary>
    public SupplyAsk AskOf(Good good) => new(null, "", null, new Supply(good.Name, Quantity, Measure, Per.Family), 1, true);

    internal sealed class Mapping : IEntityTypeConfiguration<ListedByHand>
    {
        public void Configure(EntityTypeBuilder<ListedByHand> b)
        {
            b.HasKey(h => new { h.FamilyId, h.Id });
            b.Property(h => h.Week).HasMaxLength(8);
            b.Property(h => h.Measure).HasMaxLength(ShelfCount.LongestMeasure);
            b.Ignore(h => h.UsedOn);
            b.HasIndex(h => new { h.FamilyId, h.Week });
            b.HasOne<Good>().WithMany().HasForeignKey(h => new { h.FamilyId, h.GoodId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
