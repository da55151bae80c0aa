using CoopLessons.Core.Sharing;
using CoopLessons.Core.Units;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Coops.Sharing;

/// <summary>What a family made of a shared unit, as it may be offered back: in the author's codes, against the revision it went out from.</summary>
public sealed class Offering
{
    private Offering(Unit unit, SharedRevision revision, UnitChange change) => (Unit, Revision, Change) = (unit, revision, change);

    public Unit Unit { get; }
    public SharedRevision Revision { get; }
    public UnitChange Change { get; }

    /// <summary>Null where the unit is not the family's, or came from no co-op to which the family belongs.</summary>
    public static async Task<Offering?> FindAsync(AppDb db, Guid unitId, CancellationToken ct)
    {
        if (await db.WholeUnitAsync(unitId, ct) is not { } unit
            || await db.UnitOrigins.AsNoTracking().SingleOrDefaultAsync(o => o.UnitId == unitId, ct) is not { } origin
            || await db.SharedRevisions.AsNoTracking().SingleOrDefaultAsync(r => r.CoopId == origin.CoopId && r.SharedUnitId == origin.SharedId && r.Number == origin.Number, ct) is not { } revision)
            return null;
        var met = await MetSubjects.OfAsync(db, origin.Subjects, ct);
        var @base = revision.Bundle.Content;
        return new Offering(unit, revision, UnitChange.Between(@base, met.InTheirs(UnitTravel.ToBundle(unit, met.Own), @base.Subjects)));
    }

    /// <summary>The revision with some of the changes and nothing else of the family's.</summary>
    /// <returns>Collisions where something cannot stand without what was not chosen with it.</returns>
    public UnitMerge With(IReadOnlyCollection<UnitSpot> chosen) => Change.Onto(Revision.Bundle.Content, chosen);
}
