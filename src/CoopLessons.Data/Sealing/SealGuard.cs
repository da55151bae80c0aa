using Microsoft.EntityFrameworkCore;
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

    private static async Task LookAsync(AppDb db, CancellationToken ct)
    {
        if (db.Current.FamilyId is null || db.TakesFamilyIn)
            return;
        var changes = RecordTouches.In(db.ChangeTracker);
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
