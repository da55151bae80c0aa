using CoopLessons.Core.Coop;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops.Money;

/// <summary>A family by the name that it had when something was written, so that it is still known when it has left.</summary>
public sealed record MoneyFamily(Guid Id, string Name);

/// <summary>What a family bears of a cost.</summary>
/// <param name="Learners">How many of it took part; 1 where the cost is divided by family.</param>
public sealed record KeptShare(Guid FamilyId, string Family, int Learners, int Cents);

/// <summary>Something bought for a co-op: who paid it, and who bears which part. It is never changed; one that was wrong is struck out and stays.</summary>
public sealed class CoopExpense : ICoopOwned, IVersioned
{
    public const int LongestWhat = 120;
    public const int LongestWhy = 200;

    /// <summary>A million in whole units, so that sums of many stay far from the largest number.</summary>
    public const int MostCents = 100_000_000;

    private CoopExpense() { }

    /// <exception cref="ArgumentException">The shares do not come to the cost, to the cent.</exception>
    public CoopExpense(Guid coopId, Guid id, string what, int cents, DateOnly on, MoneyFamily paidBy, SharedBy by, IReadOnlyList<KeptShare> shares, MoneyFamily writtenBy, DateTime now)
    {
        if (shares.Sum(s => (long)s.Cents) != cents)
            throw new ArgumentException("The shares do not come to the cost.", nameof(shares));
        (CoopId, Id, What, Cents, On, By, WrittenAt) = (coopId, id, what, cents, on, by, now);
        (PaidById, PaidBy, WrittenById, WrittenBy) = (paidBy.Id, paidBy.Name, writtenBy.Id, writtenBy.Name);
        Shares = [.. shares];
    }

    public Guid CoopId { get; private set; }
    public Guid Id { get; private set; }
    public string What { get; private set; } = "";
    public int Cents { get; private set; }
    public DateOnly On { get; private set; }
    public Guid PaidById { get; private set; }
    public string PaidBy { get; private set; } = "";
    public SharedBy By { get; private set; }
    public List<KeptShare> Shares { get; private set; } = [];
    public Guid WrittenById { get; private set; }
    public string WrittenBy { get; private set; } = "";
    public DateTime WrittenAt { get; private set; }
    public bool HasReceipt { get; private set; }

    /// <summary>From then on it no longer counts; null while it does.</summary>
    public DateTime? StruckAt { get; private set; }
    public string StruckBy { get; private set; } = "";
    public string StruckFor { get; private set; } = "";
    public int Version { get; private set; }

    public bool Counts => StruckAt is null;

    /// <summary>The picture of its receipt, kept beside it.</summary>
    public CoopReceipt Attach(byte[] jpeg)
    {
        HasReceipt = true;
        return new CoopReceipt(this, jpeg);
    }

    public void StrikeOut(string by, string why, DateTime now)
    {
        if (StruckAt is null)
            (StruckAt, StruckBy, StruckFor) = (now, by, why);
    }

    internal sealed class Mapping : IEntityTypeConfiguration<CoopExpense>
    {
        public void Configure(EntityTypeBuilder<CoopExpense> b)
        {
            b.HasKey(e => new { e.CoopId, e.Id });
            b.Property(e => e.Id).ValueGeneratedNever();
            b.Property(e => e.What).HasMaxLength(LongestWhat);
            b.Property(e => e.PaidBy).HasMaxLength(Data.Families.Family.LongestName);
            b.Property(e => e.WrittenBy).HasMaxLength(Data.Families.Family.LongestName);
            b.Property(e => e.StruckBy).HasMaxLength(Data.Families.Family.LongestName);
            b.Property(e => e.StruckFor).HasMaxLength(LongestWhy);
            b.Property(e => e.By).HasConversion<string>().HasMaxLength(20);
            b.Property(e => e.Shares).AsJson();
            b.Ignore(e => e.Counts);
        }
    }
}

/// <summary>
/// The picture of a receipt: small, written anew without anything but the picture, and the co-op's own, so that its
/// families see this picture and nothing of the files of the family that brought it.
/// </summary>
public sealed class CoopReceipt : ICoopOwned
{
    /// <summary>Longest picture, in bytes.</summary>
    public const int MostBytes = 300_000;

    private CoopReceipt() { }

    internal CoopReceipt(CoopExpense of, byte[] jpeg) => (CoopId, ExpenseId, Jpeg) = (of.CoopId, of.Id, jpeg);

    public Guid CoopId { get; private set; }
    public Guid ExpenseId { get; private set; }
    public byte[] Jpeg { get; private set; } = [];

    internal sealed class Mapping : IEntityTypeConfiguration<CoopReceipt>
    {
        public void Configure(EntityTypeBuilder<CoopReceipt> b)
        {
            b.HasKey(r => new { r.CoopId, r.ExpenseId });
            b.HasOne<CoopExpense>().WithOne().HasForeignKey<CoopReceipt>(r => new { r.CoopId, r.ExpenseId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
