using CoopLessons.Core.Calendar;
using CoopLessons.Data;
using CoopLessons.Data.Coops;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Pages.Today;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Phone;

/// <summary>A page that a phone keeps.</summary>
/// <param name="Until">The last day on which it may be kept; null where the phone's own limit holds.</param>
public sealed record PageToKeep(string Path, DateOnly? Until = null);

/// <summary>Which pages a phone keeps for the days without a network.</summary>
public static class PagesToKeep
{
    /// <summary>Today and the six days after it.</summary>
    private const int Days = 7;

    /// <summary>As many entries as a full day has; each brings its page and its form.</summary>
    private const int MostEntries = 16;

    public static async Task<IReadOnlyList<PageToKeep>> OfAsync(AppDb db, DateOnly today, CancellationToken ct)
    {
        var pages = Enumerable.Range(0, Days).Select(i => new PageToKeep($"/today/{today.AddDays(i).Iso()}")).ToList();
        pages.Add(new("/log/new"));
        // Names beyond the family's own, numbers and allergies are kept for their day alone, and fetched when it is near.
        foreach (var day in new[] { today, today.AddDays(1) })
        {
            if ((await FixedPoint.InAsync(db, new(day, day), ct)).Any(f => OutModel.IsOut(f.Appointment)))
                pages.Add(new($"/today/{day.Iso()}/out", day));
        }

        if (db.Current.Role == Role.Guardian)
        {
            var week = Week.Of(today);
            pages.AddRange([new($"/week/shopping/{week.Iso}"), new($"/week/shopping/{week.Next.Iso}")]);
            pages.AddRange(await OfCoopsAsync(db, today, ct));
        }

        var entries = await db.LogRevisions.Where(r => r.Number == r.Entry.Newest && !r.Removed && r.Date == today)
            .OrderByDescending(r => r.WrittenAt).Select(r => r.EntryId).Take(MostEntries).ToListAsync(ct);
        pages.AddRange(entries.SelectMany(id => new PageToKeep[] { new($"/log/{id}"), new($"/log/{id}/change") }));
        return pages;
    }

    /// <summary>Who is there on a class day that is near, for families that teach; the card of an outing to which the family goes.</summary>
    private static async Task<IReadOnlyList<PageToKeep>> OfCoopsAsync(AppDb db, DateOnly today, CancellationToken ct)
    {
        var (family, tomorrow) = (db.Current.FamilyId, today.AddDays(1));
        var meetings = await db.CoopMeetings.Where(m => (m.On == today || m.On == tomorrow) && m.CalledOffAt == null && db.CoopFamilies.Any(f => f.CoopId == m.CoopId && f.FamilyId == family && f.Part != CoopPart.Member))
            .Select(m => new { m.CoopId, m.Id, m.On }).ToListAsync(ct);
        var outings = await db.CoopOutings.Where(o => (o.On == today || o.On == tomorrow) && db.OutingAnswers.Any(a => a.CoopId == o.CoopId && a.OutingId == o.Id && a.FamilyId == family && a.CancelledOn == null))
            .Select(o => new { o.CoopId, o.Id, o.On }).ToListAsync(ct);
        return [.. meetings.Select(m => new PageToKeep($"/coop/{m.CoopId}/days/{m.Id}/attendance", m.On)), .. outings.Select(o => new PageToKeep($"/coop/{o.CoopId}/outings/{o.Id}/card", o.On))];
    }
}
