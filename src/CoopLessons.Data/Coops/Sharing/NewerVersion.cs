using CoopLessons.Core.Sharing;
using CoopLessons.Core.Units;
using CoopLessons.Data.Files;
using CoopLessons.Data.Log;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Coops.Sharing;

/// <summary>
/// A newer version of a unit that the family has in its hands: what arrived as a file, else the newest revision in the
/// co-op, else what was left for later of the last one.
/// </summary>
public sealed class NewerVersion
{
    private readonly AppDb _db;
    private readonly MetSubjects _met;
    private readonly PublishedBundle _theirs;
    private readonly ArrivedPack? _arrived;
    private readonly SharedRevision? _revision;

    private NewerVersion(AppDb db, Unit unit, UnitOrigin origin, MetSubjects met, PublishedBundle theirs, PublishedBundle @base, ArrivedPack? arrived, SharedRevision? revision)
    {
        (_db, Unit, Origin, _met, _theirs, _arrived, _revision) = (db, unit, origin, met, theirs, arrived, revision);
        var (before, next) = (met.InOwn(@base.Content), met.InOwn(theirs.Content));
        // After the others were met: a subject that the bundle brings may be one of the family's by now.
        Mine = UnitTravel.ToBundle(unit, met.Own);
        Merge = UnitMerge.Of(before, Mine, next, origin.Open);
    }

    public Unit Unit { get; }
    public UnitOrigin Origin { get; }
    public UnitBundle Mine { get; }
    public UnitMerge Merge { get; }

    /// <summary>Who made it.</summary>
    public string From => _arrived?.From ?? _revision?.Author ?? Origin.From;

    /// <summary>The revision in the co-op; null for a file, and for what was left for later.</summary>
    public SharedRevision? Revision => _arrived is null ? _revision : null;

    /// <summary>When a file arrived; null where none did.</summary>
    public DateTime? ArrivedAt => _arrived?.At;

    /// <summary>Nothing new came; only what was left for later is asked again.</summary>
    public bool IsLeftOver => _arrived is null && _revision is null;

    /// <summary>The same for as long as nobody changed either side; a form that was filled from another state says so by it.</summary>
    public string State => $"{_theirs.Hash[..16]}-{UnitHash.Of(Mine)[..16]}-{Origin.Version}";

    /// <summary>Null where the unit is not the family's, or nothing newer is known. Subjects that would come with it are added to the unit of work, unsaved.</summary>
    public static async Task<NewerVersion?> FindAsync(AppDb db, Guid unitId, CancellationToken ct)
    {
        if (await db.WholeUnitAsync(unitId, ct) is not { } unit)
            return null;
        var origin = await db.UnitOrigins.SingleOrDefaultAsync(o => o.UnitId == unitId, ct);
        var arrived = await db.ArrivedPacks.SingleOrDefaultAsync(p => p.UnitId == unitId, ct);
        var revision = origin is null || arrived is not null ? null : await NextAsync(db, origin, ct);
        if (arrived is null && revision is null && origin is not { Open.Count: > 0 })
            return null;

        if (origin is null)
        {
            origin = new UnitOrigin(unitId, unitId, arrived!.Base, new Dictionary<string, Guid>());
            db.UnitOrigins.Add(origin);
        }

        var met = await MetSubjects.OfAsync(db, origin.Subjects, ct);
        if (arrived is null)
            return new NewerVersion(db, unit, origin, met, revision?.Bundle ?? origin.Base, origin.Base, null, revision);
        // Somebody may go on from any state that went out or came in here, and from no other.
        var published = await db.SharedRevisions.AsNoTracking().Where(r => r.SharedUnitId == origin.SharedId).Select(r => r.Hash).ToListAsync(ct);
        var sent = arrived.Base;
        var known = origin.Known.Concat(published).Contains(sent.Hash);
        return new NewerVersion(db, unit, origin, met, arrived.Bundle, known ? sent : origin.Base, arrived, null);
    }

    /// <summary>Whether a unit in the family's hands has a newer version or something left for later, by id.</summary>
    public static async Task<IReadOnlySet<Guid>> WaitingAsync(AppDb db, CancellationToken ct)
    {
        var newest = await db.SharedUnits.AsNoTracking().ToDictionaryAsync(u => (u.CoopId, u.Id), u => u.Newest, ct);
        var arrived = await db.ArrivedPacks.AsNoTracking().Select(p => p.UnitId).ToListAsync(ct);
        var origins = await db.UnitOrigins.AsNoTracking().Select(o => new { o.UnitId, o.SharedId, o.CoopId, o.Number, o.Open }).ToListAsync(ct);
        return origins.Where(o => o.Open.Count > 0 || (o.CoopId is { } coop && newest.GetValueOrDefault((coop, o.SharedId)) > o.Number)).Select(o => o.UnitId).Concat(arrived).ToHashSet();
    }

    /// <summary>
    /// Brings in what was decided and what collides with nothing; the rest is left for later. Saved by the caller, who has
    /// the file shelf's turn.
    /// </summary>
    /// <returns>The merge after the decisions: collisions that are left.</returns>
    /// <inheritdoc cref="UnitMerge.Decided" />
    public async Task<UnitMerge> TakeAsync(IReadOnlyCollection<Decision> decisions, FileShelf shelf, Author by, DateTime now, CancellationToken ct)
    {
        var decided = Merge.Decided(decisions);
        var before = Origin.CoopId is { } coop ? await TakingUp.PrintsAsync(_db, coop, Origin.SharedId, Origin.Number, ct) : [];
        UnitTravel.Write(_db, Unit, decided.Merged, _met);
        Origin.Reach(_theirs, _met.Ids, decided.Open);
        if (_arrived is not null)
        {
            await TravellingFiles.AttachAsync(_db, shelf, Unit, _db.Current.FamilyId!.Value, _arrived.Prints, before, by, now, ct);
            _db.ArrivedPacks.Remove(_arrived);
        }
        else if (_revision is not null)
        {
            Origin.ComeFrom(_revision.Author, _revision.CoopId, _revision.Number);
            await TakingUp.ReachAsync(_db, _revision, now, ct);
            await TravellingFiles.AttachAsync(_db, shelf, Unit, _revision.CoopId, await TakingUp.PrintsAsync(_db, _revision.CoopId, Origin.SharedId, _revision.Number, ct), before, by, now, ct);
        }

        return decided;
    }

    private static Task<SharedRevision?> NextAsync(AppDb db, UnitOrigin origin, CancellationToken ct) =>
        db.SharedRevisions.AsNoTracking().Where(r => r.CoopId == origin.CoopId && r.SharedUnitId == origin.SharedId && r.Number > origin.Number).OrderByDescending(r => r.Number).FirstOrDefaultAsync(ct);
}
