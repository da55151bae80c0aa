using CoopLessons.Data.Files;
using CoopLessons.Data.Log;
using CoopLessons.Data.Prepare.Printing;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Units;

/// <summary>Files to print from that travel with a unit.</summary>
public static class TravellingFiles
{
    /// <summary>From one shelf to another: a family's, or a co-op's under its id. False where the file is not there.</summary>
    public static async Task<bool> CopyAsync(FileShelf shelf, Guid from, Guid to, string hash, CancellationToken ct)
    {
        if (from == to || await shelf.HasAsync(to, hash, ct))
            return true;
        using var file = await shelf.AtHandAsync(from, hash, ct);
        if (file is null)
            return false;
        await using var content = file.Open();
        await shelf.PutAsync(to, content, ct);
        return true;
    }

    /// <summary>
    /// Gives the unit's activities the files that came with it. A printable that has a file of the family's keeps it, unless
    /// that one came from there, too. Saved by the caller, who has the shelf's turn.
    /// </summary>
    /// <param name="from">On whose shelf they lie: the family's own, or a co-op's.</param>
    /// <param name="before">Files that came with the version before.</param>
    public static async Task AttachAsync(AppDb db, FileShelf shelf, Unit unit, Guid from, IReadOnlyCollection<TravellingPrint> prints, IReadOnlyCollection<TravellingPrint> before, Author by, DateTime now, CancellationToken ct)
    {
        if (prints.Count == 0)
            return;
        var family = db.Current.FamilyId!.Value;
        var ids = unit.Activities.Select(a => a.Id).ToList();
        var sources = await db.PrintSources.Where(s => ids.Contains(s.ActivityId)).ToListAsync(ct);
        foreach (var print in prints)
        {
            if (unit.Activities.FirstOrDefault(a => a.Code == print.Activity) is not { } activity)
                continue;
            var source = sources.Find(s => s.ActivityId == activity.Id && s.Printable == print.Printable);
            var theirs = before.FirstOrDefault(p => p.Activity == print.Activity && p.Printable == print.Printable);
            if (source is not null && (source.Hash == print.Hash || source.Hash != theirs?.Hash))
                continue;
            if (!await CopyAsync(shelf, from, family, print.Hash, ct))
                continue;
            var file = db.StoredFiles.Local.FirstOrDefault(f => f.Hash == print.Hash) ?? await db.StoredFiles.SingleOrDefaultAsync(f => f.Hash == print.Hash, ct);
            if (file is null)
                db.StoredFiles.Add(file = new StoredFile(print.Hash, print.Kind, print.Bytes, print.Pages, by.Name, now));
            if (source is null)
                db.PrintSources.Add(new PrintSource(Guid.CreateVersion7(), activity.Id, print.Printable, file, print.FileName));
            else
                source.Exchange(file, print.FileName);
        }
    }
}
