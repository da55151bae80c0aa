using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops.Days;

/// <summary>A stretch of each meeting during which classes run beside each other.</summary>
public sealed class CoopPeriod : ICoopOwned, IVersioned
{
    private CoopPeriod() { }

    public CoopPeriod(Guid coopId, Guid id, TimeOnly from, TimeOnly until) => (CoopId, Id, From, Until) = (coopId, id, from, until);

    public Guid CoopId { get; private set; }
    public Guid Id { get; private set; }
    public TimeOnly From { get; private set; }

    /// <summary>Later than <see cref="From"/>; exclusive.</summary>
    public TimeOnly Until { get; private set; }
    public int Version { get; private set; }

    public int Minutes => (int)(Until - From).TotalMinutes;

    public bool Meets(CoopPeriod other) => From < other.Until && other.From < Until;

    public void Be(TimeOnly from, TimeOnly until) => (From, Until) = (from, until);

    internal sealed class Mapping : IEntityTypeConfiguration<CoopPeriod>
    {
        public void Configure(EntityTypeBuilder<CoopPeriod> b)
        {
            b.HasKey(p => new { p.CoopId, p.Id });
            b.Property(p => p.Id).ValueGeneratedNever();
            b.Ignore(p => p.Minutes);
        }
    }
}
