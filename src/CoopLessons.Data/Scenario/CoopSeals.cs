using System.Text.Json;
using CoopLessons.Core.Hours;
using CoopLessons.Data.Log;
using CoopLessons.Data.Sealing;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Scenario;

/// <summary>Which years families of the co-op sealed, and what they corrected late, as <c>seed-scenario/sealed.json</c> tells it.</summary>
internal sealed record CoopSeals(IReadOnlyDictionary<string, CoopSeal> Families)
{
    public static CoopSeals Read() =>
        JsonSerializer.Deserialize<CoopSeals>(ScenarioFiles.Bytes("scenario/sealed.json"), Coop.Json) ?? throw new InvalidDataException("sealed.json holds nothing.");
}

/// <param name="Year">By its name.</param>
internal sealed record CoopSeal(string Year, DateOnly SealedOn, CoopAmendment Amendment);

/// <param name="Date">Of the entry.</param>
/// <param name="What">The entry's words.</param>
/// <param name="Minutes">What everybody in it is credited instead.</param>
internal sealed record CoopAmendment(DateOnly On, DateOnly Date, string What, int Minutes, string Why);

/// <summary>Seals a family's year on the day of the data and corrects it on a later one; days that did not come yet are left out.</summary>
internal sealed class SealOfFamily(AppDb db, Household house, CoopSeal told, DateOnly today)
{
    private const int Evening = 20 * 60 + 30;

    /// <summary>Saves, once everything of the year is saved.</summary>
    public async Task AddAsync(CancellationToken ct)
    {
        if (told.SealedOn >= today)
            return;
        db.ChangeTracker.AutoDetectChangesEnabled = true;
        var year = await db.SchoolYears.AsNoTracking().Include(y => y.Breaks).SingleAsync(y => y.Name == told.Year, ct);
        await db.SealAsync(year, house.Adults[0], told.SealedOn, house.Utc(told.SealedOn, Evening), ct);
        db.ChangeTracker.Clear();
        if (told.Amendment.On < today)
            await AmendAsync(told.Amendment, ct);
        db.ChangeTracker.Clear();
    }

    private async Task AmendAsync(CoopAmendment amendment, CancellationToken ct)
    {
        var now = house.Utc(amendment.On, Evening);
        var id = await db.LogRevisions.Where(r => r.Number == r.Entry.Newest && !r.Removed && r.Date == amendment.Date && r.What == amendment.What).Select(r => r.EntryId).SingleAsync(ct);
        var (entry, newest) = (await db.EntryAsync(id, ct))!.Value;
        entry.Change(newest.Facts with { Times = [.. newest.Facts.Times.Select(t => new LearnerTime(t.LearnerId, new Minutes(amendment.Minutes)))] }, house.Adults[0], now, amendment.Why);
        db.Late = new LateCorrection(amendment.Why, house.Adults[0], amendment.On, now);
        await db.SaveChangesAsync(ct);
        db.Late = null;
    }
}
