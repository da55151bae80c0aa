using CoopLessons.Data;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Data.Coops.Off;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>A lost meeting as one family sees it: what its own children can do at home, and what spoils.</summary>
public sealed record AtHome(CoopMeeting Meeting, IReadOnlyList<(HomeChild Child, IReadOnlyList<HomeTask> Tasks)> Children, IReadOnlyList<SpoilsSoon> Spoils)
{
    /// <summary>The family's own children, by what itself knows of them: nothing of it is shown to the co-op.</summary>
    public static async Task<AtHome> ReadAsync(AppDb db, CoopMeeting meeting, CancellationToken ct)
    {
        var held = await HeldAsync(db, meeting, ct);
        var adults = await db.CoopAdults.AsNoTracking().Where(a => a.CoopId == meeting.CoopId).ToListAsync(ct);
        // Where nobody signed anybody up, a child's age says what it would have done.
        var table = await Timetable.LoadAsync(db, meeting.CoopId, ct);
        var places = held.SelectMany(k => table.Roll(k).Places.Select(p => (p.Child, Class: k.Id))).ToLookup(p => p.Child, p => p.Class);
        var children = (await db.Learners.AsNoTracking().Where(l => !l.SetAside).OrderBy(l => l.Order).ThenBy(l => l.Name).ToListAsync(ct))
            .Select(l => new HomeChild(l.Id, l.Name, l.AgeOn(meeting.On), l.Allergies) { Classes = places.Count == 0 ? null : [.. places[l.Id]] }).ToList();
        return new AtHome(meeting, HomeDay.For(held, children), HomeDay.Spoils(held, adults));
    }

    /// <summary>The classes of that day, in the order in which they would have been held.</summary>
    public static async Task<IReadOnlyList<CoopClass>> HeldAsync(AppDb db, CoopMeeting meeting, CancellationToken ct)
    {
        var begins = await db.CoopPeriods.AsNoTracking().Where(p => p.CoopId == meeting.CoopId).ToDictionaryAsync(p => p.Id, p => p.From, ct);
        var all = await db.CoopClasses.AsNoTracking().Where(c => c.CoopId == meeting.CoopId && c.First <= meeting.On && meeting.On <= c.Last).ToListAsync(ct);
        return [.. all.OrderBy(c => begins.GetValueOrDefault(c.PeriodId)).ThenBy(c => c.Title, StringComparer.OrdinalIgnoreCase)];
    }
}
