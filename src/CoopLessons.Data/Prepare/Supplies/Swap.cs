using CoopLessons.Core.Prepare.Supplies;
using CoopLessons.Core.Units;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Prepare.Supplies;

/// <summary>What is used instead of a good.</summary>
/// <param name="Instead">Name of the other good; empty where the good is left out.</param>
/// <param name="Factor">Above zero; so many times the amount, in the same measure.</param>
/// <param name="Own">An amount of its own, in place of the factor.</param>
public sealed record SwapFacts(string Instead, decimal Factor, Amount? Own);

/// <summary>This instead of that, in one activity or in all.</summary>
public sealed class Swap : IFamilyOwned, IVersioned
{
    private Swap() { }

    /// <param name="activityId">Null for every activity.</param>
    public Swap(Guid id, Guid goodId, Guid? activityId, SwapFacts facts)
    {
        (Id, GoodId, ActivityId) = (id, goodId, activityId);
        Describe(facts);
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }

    /// <summary>The good that is not used.</summary>
    public Guid GoodId { get; private set; }
    public Guid? ActivityId { get; private set; }
    public string Instead { get; private set; } = "";
    public decimal Factor { get; private set; } = 1;
    public decimal? OwnQuantity { get; private set; }
    public string? OwnMeasure { get; private set; }
    public int Version { get; private set; }

    /// <summary>The id of the swap of a good in an activity, or in all: one swap has one id, however many forms write it.</summary>
    public static Guid IdFor(Guid goodId, Guid? activityId) => Good.IdFor(goodId, $"swap {activityId}");

    public bool LeavesOut => Instead.Length == 0;

    public Amount? Own => OwnQuantity is { } quantity && Measures.Find(OwnMeasure) is { } measure ? new Amount(quantity, measure) : null;

    public void Describe(SwapFacts facts)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(facts.Factor, nameof(facts));
        (Instead, Factor, OwnQuantity, OwnMeasure) = (facts.Instead, facts.Factor, facts.Own?.Quantity, facts.Own?.Measure.Word);
    }

    /// <summary>What is asked for instead; null where it is left out. How it is counted stays.</summary>
    public Supply? On(Supply supply) => LeavesOut ? null
        : new Supply(Instead, OwnQuantity ?? supply.Quantity * Factor, OwnMeasure ?? supply.Unit, supply.Per);

    internal sealed class Mapping : IEntityTypeConfiguration<Swap>
    {
        public void Configure(EntityTypeBuilder<Swap> b)
        {
            b.HasKey(s => new { s.FamilyId, s.Id });
            b.Property(s => s.Instead).HasMaxLength(Good.LongestName);
            b.Property(s => s.OwnMeasure).HasMaxLength(ShelfCount.LongestMeasure);
            b.Ignore(s => s.Own).Ignore(s => s.LeavesOut);
            b.HasOne<Good>().WithMany().HasForeignKey(s => new { s.FamilyId, s.GoodId }).OnDelete(DeleteBehavior.Cascade);
            b.HasOne<Activity>().WithMany().HasForeignKey(s => new { s.FamilyId, s.ActivityId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
