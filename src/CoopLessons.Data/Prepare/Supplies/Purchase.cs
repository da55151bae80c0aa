using CoopLessons.Core.Prepare.Supplies;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Prepare.Supplies;

/// <summary>What an activity bears of a price. The titles stay readable when unit or activity are gone.</summary>
public sealed record PurchaseShare(Guid ActivityId, string Activity, Guid UnitId, string Unit, int Cents);

/// <summary>For whom something is bought, and how much of it each needs in one measure.</summary>
public sealed record PurchaseNeed(Guid ActivityId, string Activity, Guid UnitId, string Unit, decimal Quantity);

/// <summary>Something bought and put on the shelf.</summary>
public sealed class Purchase : IFamilyOwned
{
    public const int MostCents = 10_000_000;

    private Purchase() { }

    /// <summary>Divides the price over those for whom it is bought, by need and to the cent.</summary>
    /// <param name="cents">0 to <see cref="MostCents"/>.</param>
    /// <param name="week">The week for which it was bought, as ISO 8601 writes it; null for none.</param>
    /// <param name="needs">Empty where it was bought for no activity in particular.</param>
    /// <param name="byHand">How much of it was listed for no activity, in the measure of the needs; its part of the price is borne by none.</param>
    public Purchase(Guid id, Guid goodId, Amount amount, int cents, DateOnly day, DateTime at, string? week, IReadOnlyList<PurchaseNeed> needs, decimal byHand = 0)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(amount.Quantity, nameof(amount));
        ArgumentOutOfRangeException.ThrowIfNegative(cents);
        (Id, GoodId, Quantity, Measure, Cents, Day, At, Week) = (id, goodId, amount.Quantity, amount.Measure.Word, cents, day, at, week);
        if (needs.Count > 0)
            Shares = [.. needs.Zip(CostShares.Of(cents, byHand > 0 ? [.. needs.Select(n => n.Quantity), byHand] : [.. needs.Select(n => n.Quantity)]), (n, share) => new PurchaseShare(n.ActivityId, n.Activity, n.UnitId, n.Unit, share))];
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public Guid GoodId { get; private set; }
    public decimal Quantity { get; private set; }
    public string Measure { get; private set; } = "";

    /// <summary>What was paid for all of it.</summary>
    public int Cents { get; private set; }
    public DateOnly Day { get; private set; }
    public DateTime At { get; private set; }
    public string? Week { get; private set; }

    /// <summary>They add up to <see cref="Cents"/> at most; the rest was paid for no activity in particular.</summary>
    public List<PurchaseShare> Shares { get; private set; } = [];

    public Amount Amount => new(Quantity, Measures.Find(Measure) ?? Measures.Piece);

    internal sealed class Mapping : IEntityTypeConfiguration<Purchase>
    {
        public void Configure(EntityTypeBuilder<Purchase> b)
        {
            b.HasKey(p => new { p.FamilyId, p.Id });
            b.Property(p => p.Measure).HasMaxLength(ShelfCount.LongestMeasure);
            b.Property(p => p.Week).HasMaxLength(8);
            b.Property(p => p.Shares).AsJson();
            b.Ignore(p => p.Amount);
            b.HasIndex(p => new { p.FamilyId, p.Day });
            b.HasOne<Good>().WithMany().HasForeignKey(p => new { p.FamilyId, p.GoodId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
