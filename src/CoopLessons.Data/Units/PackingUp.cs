using CoopLessons.Data.Prepare.Printing;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Units;

/// <summary>A unit made ready to leave for another installation, and to come back.</summary>
public static class PackingUp
{
    /// <summary>The pack; that it went out is remembered with the unit, saved by the caller.</summary>
    /// <param name="unit">With subjects and activities loaded.</param>
    /// <param name="prints">Which of its files travel.</param>
    public static async Task<UnitPack> OfAsync(AppDb db, Unit unit, string from, IReadOnlyCollection<PrintSource> prints, CancellationToken ct)
    {
        var origin = await db.UnitOrigins.SingleOrDefaultAsync(o => o.UnitId == unit.Id, ct);
        var met = await MetSubjects.OfAsync(db, origin?.Subjects ?? [], ct);
        var own = UnitTravel.ToBundle(unit, met.Own);
        var bundle = PublishedBundle.Of(origin is null ? own : met.InTheirs(own, origin.Base.Content.Subjects));
        if (origin is null)
        {
            var ids = met.Own.ToDictionary(s => s.Code, s => s.Id, StringComparer.Ordinal);
            db.UnitOrigins.Add(origin = new UnitOrigin(unit.Id, unit.Id, bundle, own.Subjects.ToDictionary(s => s.Code, s => ids[s.Code], StringComparer.Ordinal)));
        }

        origin.Know(bundle.Hash);
        var codes = unit.Activities.ToDictionary(a => a.Id, a => a.Code);
        var hashes = prints.Select(p => p.Hash).ToHashSet(StringComparer.Ordinal);
        var files = await db.StoredFiles.AsNoTracking().Where(f => hashes.Contains(f.Hash)).ToDictionaryAsync(f => f.Hash, ct);
        return new UnitPack(origin.SharedId, from, bundle, origin.Base, [.. prints.Where(p => files.ContainsKey(p.Hash)).Select(p => Travelling(p, codes[p.ActivityId], files[p.Hash]))]);
    }

    private static TravellingPrint Travelling(PrintSource source, string activity, Files.StoredFile file) =>
        new(activity, source.Printable, source.FileName, file.Hash, file.Kind, file.Bytes, file.Pages);
}
