using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace CoopLessons.Data.Sealing;

/// <summary>
/// The one place that keeps a sealed year as it is: before rows are saved, whatever would change a sealed year's record is
/// refused, unless it is saved as a late correction. Pages, phones, co-ops and layouts all come by here.
/// </summary>
public sealed class SealGuard : SaveChangesInterceptor
{
    public override InterceptionResult<int> SavingChanges(DbContextEventData eventData, InterceptionResult<int> result)
    {
        LookAsync((AppDb)eventData.Context!, CancellationToken.None).GetAwaiter().GetResult();
        return result;
    }

    public override async ValueTask<InterceptionResult<int>> SavingChangesAsync(
        DbContextEventData eventData, InterceptionResult<int> result, CancellationToken cancellationToken = default)
    {
        await LookAsync((AppDb)eventData.Context!, cancellationToken);
        return result;
    }

    /// <summary>Whether what is about to be saved may matter to a sealed year at all.</summary>
    internal static bool Minds(AppDb db) => Changes(db).Count > 0;

    /// <summary>
    /// Saves such rows. The look at what is sealed and the save are one transaction in which nobody else seals a year: what came
    /// into a year beside its sealing would look ever after as if it had been changed behind this program.
    /// </summary>
    internal static async Task<int> SaveAsync(AppDb db, Func<Task<int>> save, CancellationToken ct)
    {
        await using var transaction = db.Database.CurrentTransaction is null ? await db.Database.BeginTransactionAsync(ct) : null;
        await HoldAsync(db, alone: db.Late is not null, ct);
        var rows = db.Late is { } late ? await late.SaveAsync(db, save, ct) : await save();
        if (transaction is not null)
            await transaction.CommitAsync(ct);
        return rows;
    }

    /// <summary>Until the transaction ends nobody makes or corrects a seal of the family; who is alone here also keeps those away who only write.</summary>
    // On SQLite whoever begins a transaction that may write is alone already.
    internal static async Task HoldAsync(AppDb db, bool alone, CancellationToken ct)
    {
        if (!db.Database.IsNpgsql())
            return;
        var family = db.Current.FamilyId;
        _ = alone
            ? await db.Database.ExecuteSqlAsync($"""SELECT 1 FROM "Families" WHERE "Id" = {family} FOR NO KEY UPDATE""", ct)
            : await db.Database.ExecuteSqlAsync($"""SELECT 1 FROM "Families" WHERE "Id" = {family} FOR SHARE""", ct);
    }

    private static IReadOnlyList<EntityEntry> Changes(AppDb db) => db.Current.FamilyId is null || db.TakesFamilyIn ? [] : RecordTouches.In(db.ChangeTracker);

    private static async Task LookAsync(AppDb db, CancellationToken ct)
    {
        var changes = Changes(db);
        if (changes.Count == 0)
            return;
        var years = await db.SealedYears.AsNoTracking().ToListAsync(ct);
        if (years.Count == 0)
            return;
        foreach (var touch in await new RecordTouches(db, years).OfAsync(changes, ct))
        {
            if (touch.Never || db.Late is not { } late)
                throw new SealedYearException(touch.Year, touch.What, !touch.Never);
            late.Touch(touch.Year.SchoolYearId, touch.EntryId);
        }
    }
}
