using CoopLessons.Core.Prepare.Supplies;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Prepare.Supplies;

/// <summary>Somebody looked on a day, and so much of a good was there. Never changed: who counts anew writes a new count.</summary>
public sealed class ShelfCount : IFamilyOwned
{
    internal const int LongestMeasure = 10;

    private ShelfCount() { }

    /// <param name="at">The instant at which it is written down, UTC.</param>
    public ShelfCount(Guid id, Guid goodId, DateOnly day, DateTime at, Amount amount)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(amount.Quantity, nameof(amount));
        (Id, GoodId, Day, At, Quantity, Measure) = (id, goodId, day, at, amount.Quantity, amount.Measure.Word);
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public Guid GoodId { get; private set; }
    public DateOnly Day { get; private set; }
    public DateTime At { get; private set; }
    public decimal Quantity { get; private set; }
    public string Measure { get; private set; } = "";

    public Amount Amount => new(Quantity, Measures.Find(Measure) ?? Measures.Piece);

    internal sealed class Mapping : IEntityTypeConfiguration<ShelfCount>
    {
        public void Configure(EntityTypeBuilder<ShelfCount> b)
        {
            b.HasKey(c => new { c.FamilyId, c.Id });
            b.Property(c => c.Measure).HasMaxLength(LongestMeasure);
            b.Ignore(c => c.Amount);
            b.HasOne<Good>().WithMany().HasForeignKey(c => new { c.FamilyId, c.GoodId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
