using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops.Money;

/// <summary>
/// A family says that it paid another. It counts once the other says that the money came: until then neither account
/// changes. Nothing is paid by it; the money goes its own way.
/// </summary>
public sealed class CoopPayment : ICoopOwned, IVersioned
{
    private CoopPayment() { }

    public CoopPayment(Guid coopId, Guid id, MoneyFamily from, MoneyFamily to, int cents, DateOnly on)
    {
        (CoopId, Id, Cents, On) = (coopId, id, cents, on);
        (FromId, From, ToId, To) = (from.Id, from.Name, to.Id, to.Name);
    }

    public Guid CoopId { get; private set; }
    public Guid Id { get; private set; }
    public Guid FromId { get; private set; }
    public string From { get; private set; } = "";
    public Guid ToId { get; private set; }
    public string To { get; private set; } = "";

    /// <summary>Above 0.</summary>
    public int Cents { get; private set; }

    /// <summary>The day on which it was said.</summary>
    public DateOnly On { get; private set; }

    /// <summary>From then on it counts.</summary>
    public DateTime? CameAt { get; private set; }

    /// <summary>Which family said that it came.</summary>
    public string CameSaidBy { get; private set; } = "";

    /// <summary>It was not paid after all, or did not come.</summary>
    public DateTime? TakenBackAt { get; private set; }
    public int Version { get; private set; }

    public bool Counts => CameAt is not null;

    public bool IsOpen => CameAt is null && TakenBackAt is null;

    public void Came(string saidBy, DateTime now)
    {
        if (IsOpen)
            (CameAt, CameSaidBy) = (now, saidBy);
    }

    public void TakeBack(DateTime now)
    {
        if (IsOpen)
            TakenBackAt = now;
    }

    internal sealed class Mapping : IEntityTypeConfiguration<CoopPayment>
    {
        public void Configure(EntityTypeBuilder<CoopPayment> b)
        {
            b.HasKey(p => new { p.CoopId, p.Id });
            b.Property(p => p.Id).ValueGeneratedNever();
            b.Property(p => p.From).HasMaxLength(Data.Families.Family.LongestName);
            b.Property(p => p.To).HasMaxLength(Data.Families.Family.LongestName);
            b.Property(p => p.CameSaidBy).HasMaxLength(Data.Families.Family.LongestName);
            b.Ignore(p => p.Counts).Ignore(p => p.IsOpen);
        }
    }
}
