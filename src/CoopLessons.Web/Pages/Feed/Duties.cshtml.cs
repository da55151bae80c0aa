using System.Globalization;
using CoopLessons.Data;
using CoopLessons.Data.Coops.Off;
using CoopLessons.Data.Requirements;
using CoopLessons.Data.Tenancy;
using CoopLessons.Documents.Calendars;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Feed;

/// <summary>The family's due dates, and its co-ops' meetings where it chose so, for a calendar program. Reads, and tells nothing else.</summary>
public sealed class DutiesModel(AppDb db, CurrentFamily current, TimeProvider clock) : FeedDoor(db, current)
{
    public async Task<IActionResult> OnGetAsync(string secret)
    {
        if (await OpenAsync(secret) is { } shut)
            return shut;
        var family = await Db.Families.AsNoTracking().SingleAsync(Ct);
        var today = family.Today(clock);
        var duties = new List<CalendarDuty>();
        // The years that run, lie ahead, or ended in the last twelve months: papers fall due after a year, too.
        foreach (var year in await Db.SchoolYears.AsNoTracking().Include(y => y.Breaks).Where(y => y.Last >= today.AddYears(-1)).OrderBy(y => y.First).ToListAsync(Ct))
        {
            foreach (var law in await LawOfLearner.LoadAllAsync(Db, year, Ct))
            {
                var child = Address.WithNames ? law.Learner.Name : Initial(law.Learner.Name);
                duties.AddRange(LearnerDuty.Of(law).Select(d => CalendarDuty.Of(law.Learner.Id, year.Id, child, d.Dated, d.Mark?.DoneOn is not null)).OfType<CalendarDuty>());
            }
        }

        var name = Address.WithCoops ? "Papers, tests and co-op" : "Papers and tests";
        var content = new CalendarContent(Address.WithNames ? $"{family.Name}: {name.ToLowerInvariant()}" : name, clock.GetUtcNow(), duties) { Meetings = await MeetingsAsync(today.AddYears(-1)) };
        return File(DutyCalendar.Write(content), "text/calendar; charset=utf-8", "papers.ics");
    }

    // Nothing is there where the address tells of no co-op: the family belongs to none then.
    private async Task<IReadOnlyList<CalendarMeeting>> MeetingsAsync(DateOnly from)
    {
        var names = await Db.Coops.AsNoTracking().ToDictionaryAsync(c => c.Id, c => c.Name, Ct);
        var periods = (await Db.CoopPeriods.AsNoTracking().ToListAsync(Ct)).ToLookup(p => p.CoopId);
        var meetings = await Db.CoopMeetings.AsNoTracking().Where(m => m.On >= from).ToListAsync(Ct);
        var days = (await Db.CoopMeetings.AsNoTracking().Select(m => new { m.Id, m.On }).ToListAsync(Ct)).ToDictionary(m => m.Id, m => m.On);
        return
        [
            .. meetings.Select(m => new CalendarMeeting(
                string.Create(CultureInfo.InvariantCulture, $"{m.CoopId:N}/{m.Id:N}"),
                m.On,
                periods[m.CoopId].Any() ? (periods[m.CoopId].Min(p => p.From), periods[m.CoopId].Max(p => p.Until)) : null,
                names[m.CoopId],
                m.Where,
                [.. m.InsteadOf is { } lost && days.TryGetValue(lost, out var day) ? [$"Instead of {DayOff.Say(day)}."] : Array.Empty<string>(), m.Note],
                m.Stands ? null : $"Called off: {m.CalledOffFor}",
                m.Version)),
        ];
    }

    // The first letter with its accents.
    private static string Initial(string name) => StringInfo.GetNextTextElement(name) + ".";
}
