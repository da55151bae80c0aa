using System.Reflection;
using CoopLessons.Data.Coops;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Travel;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace CoopLessons.Data.Families.Going;

/// <summary>What was deleted.</summary>
public sealed record Deleted(int Rows, int Files);

/// <summary>Deletes a family: all its rows in one transaction, what it has shown to co-ops, and sign-ins that belong to no family then.</summary>
public static class Deleting
{
    private static readonly MethodInfo s_delete = typeof(Deleting).GetMethod(nameof(DeleteRowsAsync), BindingFlags.Static | BindingFlags.NonPublic)!;

    /// <summary>Null where the receipt is not due, was stopped, or somebody else deletes at the same moment.</summary>
    /// <param name="forget">
    /// Removes the files of a family, or of a co-op in which nobody is left. Asked before the rows are gone for good: a crash in
    /// between is made good by the next try.
    /// </param>
    /// <param name="now">UTC.</param>
    public static async Task<Deleted?> OfAsync(AppDb db, string receiptHash, Func<Guid, Task> forget, DateTime now, CancellationToken ct)
    {
        db.Current.Leave();
        if (db.Database.IsSqlite())
        {
            // What is deleted is written over; a text that is gone must not be found in the file.
            await db.Database.OpenConnectionAsync(ct);
            await db.Database.ExecuteSqlRawAsync("PRAGMA secure_delete=ON", ct);
        }

        await using var transaction = await db.Database.BeginTransactionAsync(ct);
        var receipt = await db.LeavingReceipts.AsNoTracking().SingleOrDefaultAsync(r => r.SecretHash == receiptHash, ct);
        if (receipt?.FamilyId is not { } family || receipt.DueAt > now)
            return null;
        // Of two that come here together one changes the row.
        if (await db.LeavingReceipts.Where(r => r.SecretHash == receiptHash && r.DoneAt == null && r.StoppedAt == null).ExecuteUpdateAsync(s => s.SetProperty(r => r.DoneAt, now).SetProperty(r => r.FamilyId, (Guid?)null), ct) != 1)
            return null;
        db.Current.ActForProgram(family);
        var people = await db.Memberships.Select(m => m.PersonId).ToListAsync(ct);
        var files = await db.StoredFiles.CountAsync(ct);
        var emptied = await LeaveCoopsAsync(db, family, now, ct);
        var rows = 0;
        foreach (var type in LeavingOrder(db.Model))
            rows += await (Task<int>)s_delete.MakeGenericMethod(type.ClrType).Invoke(null, [db, ct])!;
        // Of somebody who keeps the sign-in, too.
        rows += await db.MailToSend.Where(m => m.FamilyId == family).ExecuteDeleteAsync(ct);
        foreach (var person in people)
            rows += await ForgetAsync(db, person, ct);
        db.Current.Leave();
        await db.LeavingReceipts.Where(r => r.SecretHash == receiptHash).ExecuteUpdateAsync(s => s.SetProperty(r => r.Rows, rows).SetProperty(r => r.Files, files), ct);
        foreach (var shelf in emptied.Append(family))
            await forget(shelf);
        // The files are gone: the rows that name them must not come back because the server stops.
        await transaction.CommitAsync(CancellationToken.None);
        return new Deleted(rows, files);
    }

    /// <summary>SQLite writes its file anew, so that nothing of what was deleted is left between its pages or in its log.</summary>
    public static async Task TidyAsync(AppDb db, CancellationToken ct)
    {
        if (!db.Database.IsSqlite())
            return;
        await db.Database.ExecuteSqlRawAsync("VACUUM", ct);
        await db.Database.ExecuteSqlRawAsync("PRAGMA wal_checkpoint(TRUNCATE)", ct);
    }

    /// <summary>Each table before those that its rows name, the family itself last.</summary>
    private static IEnumerable<IEntityType> LeavingOrder(IModel model)
    {
        var leaving = TravelTable.Of(model).Select(t => t.Type).ToList();
        // What stays when a family travels names what leaves, and is not named by it.
        var staying = TravelTable.InOrder(model.GetEntityTypes().Where(t => t.ClrType.IsAssignableTo(typeof(IFamilyOwned)) && !leaving.Contains(t)));
        return staying.Reverse().Concat(leaving.AsEnumerable().Reverse());
    }

    private static Task<int> DeleteRowsAsync<T>(AppDb db, CancellationToken ct)
        where T : class => db.Set<T>().ExecuteDeleteAsync(ct);

    /// <summary>As any family leaves; a co-op without its last leader is led by whoever is there longest, one without families goes.</summary>
    private static async Task<IReadOnlyList<Guid>> LeaveCoopsAsync(AppDb db, Guid family, DateTime now, CancellationToken ct)
    {
        // Which co-ops are the family's is not known yet: its own parts in them are what tells it.
        var coops = await db.CoopFamilies.IgnoreQueryFilters([AppDb.CoopFilter]).Where(f => f.FamilyId == family && f.LeftAt == null).Select(f => f.CoopId).ToListAsync(ct);
        db.Current.BelongTo(coops);
        var emptied = new List<Guid>();
        foreach (var coop in coops)
        {
            var families = await db.CoopFamilies.Where(f => f.CoopId == coop && f.LeftAt == null).OrderBy(f => f.Since).ThenBy(f => f.FamilyId).ToListAsync(ct);
            var own = families.Single(f => f.FamilyId == family);
            families.Remove(own);
            if (families.Count == 0)
            {
                emptied.Add(coop);
                continue;
            }

            if (own.Leads && !families.Exists(f => f.Leads))
                families[0].Become(CoopPart.Leader);
            await Leaving.TakeOutAsync(db, own, now, ct);
        }

        await db.SaveChangesAsync(ct);
        db.ChangeTracker.Clear();
        foreach (var coop in emptied)
            await db.Coops.Where(c => c.Id == coop).ExecuteDeleteAsync(ct);
        return emptied;
    }

    private static async Task<int> ForgetAsync(AppDb db, Guid person, CancellationToken ct)
    {
        db.Current.Leave();
        db.Current.Know(person);
        // Of all families: somebody who belongs to another keeps the sign-in.
        return await db.Memberships.IgnoreQueryFilters([AppDb.FamilyFilter]).AnyAsync(m => m.PersonId == person, ct) ? 0 : await db.Users.Where(p => p.Id == person).ExecuteDeleteAsync(ct);
    }
}
