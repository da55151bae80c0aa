using CoopLessons.Core.Coop;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops.Turns;

/// <summary>What a co-op asks of the adults in its rooms, where it asks for anything else than what is common practice.</summary>
public sealed class CoverFigures : ICoopOwned, IVersioned
{
    private CoverFigures() { }

    public CoverFigures(Guid coopId, CoverRules rules)
    {
        CoopId = coopId;
        Be(rules);
    }

    public Guid CoopId { get; private set; }
    public CoverRules Rules { get; private set; } = CoverRules.Usual;
    public int Version { get; private set; }

    public void Be(CoverRules rules) => Rules = rules;

    /// <summary>The rules of a co-op; the usual ones where it never changed any.</summary>
    public static async Task<CoverRules> OfAsync(AppDb db, Guid coopId, CancellationToken ct) =>
        (await db.CoverFigures.AsNoTracking().SingleOrDefaultAsync(f => f.CoopId == coopId, ct))?.Rules ?? CoverRules.Usual;

    internal sealed class Mapping : IEntityTypeConfiguration<CoverFigures>
    {
        public void Configure(EntityTypeBuilder<CoverFigures> b)
        {
            b.HasKey(f => f.CoopId);
            b.Property(f => f.CoopId).ValueGeneratedNever();
            b.Property(f => f.Rules).AsJson();
        }
    }
}

/// <summary>How many children are usually in a room, so that it opens with enough adults.</summary>
public sealed class RoomChildren : ICoopOwned, IVersioned
{
    private RoomChildren() { }

    public RoomChildren(Guid coopId, Guid roomId) => (CoopId, RoomId) = (coopId, roomId);

    public Guid CoopId { get; private set; }
    public Guid RoomId { get; private set; }

    /// <summary>Below the age from which the co-op counts children as older ones.</summary>
    public int Young { get; private set; }
    public int Older { get; private set; }

    /// <summary>Whether the place is away from where the co-op meets.</summary>
    public bool OffSite { get; private set; }
    public int Version { get; private set; }

    public void Be(int young, int older, bool offSite) => (Young, Older, OffSite) = (young, older, offSite);

    /// <summary>How many adults the ratios ask for.</summary>
    public int AdultsNeeded(CoverRules rules) => Cover.AdultsNeeded(
        [.. Enumerable.Repeat(rules.YoungBelow - 1, Young), .. Enumerable.Repeat(rules.YoungBelow, Older)], OffSite, rules);

    internal sealed class Mapping : IEntityTypeConfiguration<RoomChildren>
    {
        public void Configure(EntityTypeBuilder<RoomChildren> b) => b.HasKey(r => new { r.CoopId, r.RoomId });
    }
}
