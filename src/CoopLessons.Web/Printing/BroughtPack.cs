using System.IO.Compression;
using CoopLessons.Core.Units;
using CoopLessons.Data;
using CoopLessons.Data.Files;
using CoopLessons.Data.Log;
using CoopLessons.Data.Units;
using CoopLessons.Web.Files;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Printing;

/// <summary>What came of a pack that somebody brought.</summary>
/// <param name="Fault">A sentence to stand beside the field; null where it was taken.</param>
/// <param name="Faults">Of the bundles in it.</param>
/// <param name="UnitId">The family's unit: a new one, or the one to which it is a newer version.</param>
/// <param name="IsNewer">Whether it waits there to be brought in.</param>
public sealed record PackAnswer(string? Fault, int Status, IReadOnlyList<BundleFault> Faults, Guid UnitId = default, bool IsNewer = false);

/// <summary>Takes in a unit's pack from another installation: as a new unit, or as a newer version of one that the family has.</summary>
public sealed class BroughtPack(AppDb db, FileShelf shelf, FileRoom room, FileLook look)
{
    /// <param name="newId">For a unit that is new here.</param>
    /// <param name="now">UTC.</param>
    public async Task<PackAnswer> TakeAsync(Stream file, Guid newId, Author by, DateTime now, CancellationToken ct)
    {
        using var turn = await room.EnterAsync(db.Current.FamilyId!.Value, ct);
        if (turn is null)
            return Refused(UploadWords.RoomFull, StatusCodes.Status503ServiceUnavailable);
        ZipArchive zip;
        try
        {
            zip = await ZipArchive.CreateAsync(file, ZipArchiveMode.Read, leaveOpen: true, null, ct);
        }
        catch (InvalidDataException)
        {
            return Refused("This file is no pack, or it was damaged on its way. Ask for it once more.");
        }

        await using (zip)
        {
            var reading = await PackFile.ReadAsync(zip, ct);
            if (reading.Pack is not { } pack)
                return new PackAnswer(reading.Fault, StatusCodes.Status422UnprocessableEntity, reading.Faults);
            using var mine = await shelf.TurnAsync(ct);
            var (fault, prints) = await OntoShelfAsync(zip, pack, by, now, ct);
            return fault ?? await SaveAsync(pack with { Prints = prints }, newId, by, now, ct);
        }
    }

    private async Task<PackAnswer> SaveAsync(UnitPack pack, Guid newId, Author by, DateTime now, CancellationToken ct)
    {
        var known = await db.Units.AnyAsync(u => u.Id == newId, ct)
            ? newId
            : await db.Units.Where(u => u.Id == pack.SharedId).Select(u => (Guid?)u.Id).SingleOrDefaultAsync(ct)
                ?? await db.UnitOrigins.Where(o => o.SharedId == pack.SharedId).OrderByDescending(o => o.UnitId).Select(o => (Guid?)o.UnitId).FirstOrDefaultAsync(ct);
        if (known == newId)
            return new PackAnswer(null, StatusCodes.Status200OK, [], newId);
        if (known is { } unitId)
        {
            if (await db.ArrivedPacks.SingleOrDefaultAsync(p => p.UnitId == unitId, ct) is { } before)
                before.Be(pack, now);
            else
                db.ArrivedPacks.Add(new ArrivedPack(unitId, pack, now));
        }
        else
        {
            var met = await MetSubjects.OfAsync(db, new Dictionary<string, Guid>(), ct);
            var unit = UnitTravel.TakeIn(db, met.InOwn(pack.Unit.Content), newId, met);
            var origin = new UnitOrigin(newId, pack.SharedId, pack.Unit, met.Ids);
            origin.ComeFrom(pack.From, null, 0);
            db.UnitOrigins.Add(origin);
            await TravellingFiles.AttachAsync(db, shelf, unit, db.Current.FamilyId!.Value, pack.Prints, [], by, now, ct);
        }

        try
        {
            await db.SaveChangesAsync(ct);
        }
        catch (DbUpdateException)
        {
            db.ChangeTracker.Clear();
            return Refused("Something else was saved at the same moment. Send it once more.", StatusCodes.Status409Conflict);
        }

        await shelf.TidyAsync(db, now, ct);
        return new PackAnswer(null, StatusCodes.Status200OK, [], known ?? newId, known is not null);
    }

    /// <summary>Looks at each file as if somebody had brought it by itself, and names it by what was kept of it.</summary>
    private async Task<(PackAnswer? Fault, IReadOnlyList<TravellingPrint> Prints)> OntoShelfAsync(ZipArchive zip, UnitPack pack, Author by, DateTime now, CancellationToken ct)
    {
        var family = db.Current.FamilyId!.Value;
        var kept = new Dictionary<string, StoredFile>(StringComparer.Ordinal);
        foreach (var print in pack.Prints.DistinctBy(p => p.Hash))
        {
            await using var came = shelf.Scratch();
            if (!await PackFile.CopyAsync(zip, print, came, ct))
                return (Refused($"The file for “{print.Printable}” is missing or was changed on its way. Ask for the pack once more."), []);
            await using var clean = shelf.Scratch();
            came.Position = 0;
            var verdict = await look.OfAsync(came, clean, ct);
            if (verdict is null)
                return (Refused(UploadWords.NoLook, StatusCodes.Status503ServiceUnavailable), []);
            if (verdict.Fault is not null)
                return (Refused($"“{print.Printable}”: {UploadWords.Of(verdict)}"), []);
            clean.Position = 0;
            var hash = await shelf.PutAsync(family, clean, ct);
            var file = db.StoredFiles.Local.FirstOrDefault(f => f.Hash == hash) ?? await db.StoredFiles.SingleOrDefaultAsync(f => f.Hash == hash, ct);
            if (file is null)
                db.StoredFiles.Add(file = new StoredFile(hash, UploadWords.Kept(verdict.Kind), clean.Length, verdict.Pages, by.Name, now));
            kept[print.Hash] = file;
        }

        return (null, [.. pack.Prints.Select(p => p with { Hash = kept[p.Hash].Hash, Kind = kept[p.Hash].Kind, Bytes = kept[p.Hash].Bytes, Pages = kept[p.Hash].Pages })]);
    }

    private static PackAnswer Refused(string fault, int status = StatusCodes.Status422UnprocessableEntity) => new(fault, status, []);
}
