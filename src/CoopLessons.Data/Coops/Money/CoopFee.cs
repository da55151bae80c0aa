using CoopLessons.Core.Coop;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops.Money;

/// <summary>What a family pays for a term, and what it got back of it.</summary>
/// <param name="BackCents">0 where nothing was given back.</param>
/// <param name="BackSaid">By which part of the rule, in a sentence; empty where nothing was given back.</param>
public sealed record FamilyFee(Guid FamilyId, string Family, int Learners, int Cents, int BackCents = 0, DateOnly? SaidOn = null, string BackSaid = "");

/// <summary>The fee of a term: figured for each family by one rule, collected by one of them, given back by one rule.</summary>
public sealed class CoopFee : ICoopOwned, IVersioned
{
    public const int LongestName = 60;

    private CoopFee() { }

    public CoopFee(Guid coopId, Guid id, string name, DateOnly first, DateOnly last, TermFee fee, DateOnly wholeBefore, MoneyFamily keeper, IReadOnlyList<FamilyFee> families)
    {
        (CoopId, Id, Name, First, Last, WholeBefore) = (coopId, id, name, first, last, wholeBefore);
        (FamilyCents, LearnerCents, MostCents) = (fee.FamilyCents, fee.LearnerCents, fee.MostCents);
        (KeeperId, Keeper) = (keeper.Id, keeper.Name);
        Families = [.. families];
    }

    public Guid CoopId { get; private set; }
    public Guid Id { get; private set; }
    public string Name { get; private set; } = "";

    /// <summary>First day of the term, inclusive.</summary>
    public DateOnly First { get; private set; }

    /// <summary>Inclusive.</summary>
    public DateOnly Last { get; private set; }
    public int FamilyCents { get; private set; }
    public int LearnerCents { get; private set; }
    public int? MostCents { get; private set; }

    /// <summary>Who says before this day that it leaves gets the whole back.</summary>
    public DateOnly WholeBefore { get; private set; }

    /// <summary>The family that collects the fees and pays from them what they are for.</summary>
    public Guid KeeperId { get; private set; }
    public string Keeper { get; private set; } = "";
    public List<FamilyFee> Families { get; private set; } = [];

    /// <summary>From then on it no longer counts; null while it does.</summary>
    public DateTime? StruckAt { get; private set; }
    public string StruckFor { get; private set; } = "";
    public int Version { get; private set; }

    public bool Counts => StruckAt is null;

    public void StrikeOut(string why, DateTime now)
    {
        if (StruckAt is null)
            (StruckAt, StruckFor) = (now, why);
    }

    public TermFee Fee => new(FamilyCents, LearnerCents, MostCents);

    /// <param name="meetings">All days of the term on which the co-op meets, as they were planned.</param>
    public Refund RefundOf(Guid familyId, DateOnly saidOn, IReadOnlyList<DateOnly> meetings) =>
        new RefundRule(WholeBefore, meetings).Of(Families.Single(f => f.FamilyId == familyId).Cents, saidOn);

    /// <summary>Keeps what the rule gives back; once for each family.</summary>
    public void GiveBack(Guid familyId, DateOnly saidOn, Refund refund) =>
        Families = [.. Families.Select(f => f.FamilyId == familyId && f.SaidOn is null ? f with { BackCents = refund.Cents, SaidOn = saidOn, BackSaid = refund.Sentence } : f)];

    internal sealed class Mapping : IEntityTypeConfiguration<CoopFee>
    {
        public void Configure(EntityTypeBuilder<CoopFee> b)
        {
            b.HasKey(f => new { f.CoopId, f.Id });
            b.Property(f => f.Id).ValueGeneratedNever();
            b.Property(f => f.Name).HasMaxLength(LongestName);
            b.Property(f => f.Keeper).HasMaxLength(Data.Families.Family.LongestName);
            b.Property(f => f.Families).AsJson();
            b.Property(f => f.StruckFor).HasMaxLength(CoopExpense.LongestWhy);
            b.Ignore(f => f.Fee).Ignore(f => f.Counts);
        }
    }
}
