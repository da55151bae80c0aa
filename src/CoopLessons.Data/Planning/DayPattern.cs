using CoopLessons.Core.Schedule;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Planning;

/// <summary>A stretch of a weekday, as it is kept.</summary>
public sealed record PatternHours(DayOfWeek Day, int From, int To);

/// <summary>The weekly hours of the whole family, of one learner, or of one adult.</summary>
public sealed class DayPattern : IFamilyOwned, IVersioned
{
    private DayPattern() { }

    public DayPattern(Guid? owner, WeekHours hours)
    {
        OwnerId = owner ?? Guid.Empty;
        Set(hours);
    }

    public Guid FamilyId { get; private set; }

    /// <summary>A learner's or an adult's id, or zeros for the family, so that the key allows one pattern each.</summary>
    public Guid OwnerId { get; private set; }
    public List<PatternHours> Stretches { get; private set; } = [];
    public int Version { get; private set; }

    /// <summary>Null for the family's usual teaching hours.</summary>
    public Guid? Owner => OwnerId == Guid.Empty ? null : OwnerId;

    public WeekHours Hours => new(Stretches.GroupBy(s => s.Day).ToDictionary(
        g => g.Key, IReadOnlyList<Stretch> (g) => [.. g.Select(s => new Stretch(s.From, s.To)).OrderBy(s => s.From)]));

    public void Set(WeekHours hours) =>
        Stretches = [.. WeekHours.FromMonday.SelectMany(d => hours.On(d).Select(s => new PatternHours(d, s.From, s.To)))];

    internal sealed class Mapping : IEntityTypeConfiguration<DayPattern>
    {
        public void Configure(EntityTypeBuilder<DayPattern> b)
        {
            b.HasKey(p => new { p.FamilyId, p.OwnerId });
            b.Property(p => p.OwnerId).ValueGeneratedNever();
            b.Property(p => p.Stretches).AsJson();
            b.Ignore(p => p.Owner).Ignore(p => p.Hours);
        }
    }
}
