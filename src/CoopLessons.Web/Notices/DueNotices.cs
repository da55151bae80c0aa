using CoopLessons.Data;
using CoopLessons.Data.Coops.News;
using CoopLessons.Data.Coops.Off;
using CoopLessons.Data.Families;
using CoopLessons.Data.Requirements;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Pages.Today;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Notices;

/// <summary>What a family is to be told now. A lock screen is read by anybody: no name of a child and no law stands in it.</summary>
public static class DueNotices
{
    /// <summary>A wait that came due earlier is told no more.</summary>
    public static readonly TimeSpan Late = TimeSpan.FromMinutes(15);

    /// <summary>Days before a date that the law sets.</summary>
    public static readonly IReadOnlyList<int> DaysBefore = [14, 3];

    /// <summary>A word of a co-op that is older is told no more.</summary>
    public static readonly TimeSpan OldNews = TimeSpan.FromHours(12);

    /// <summary>Hours of the day in which dates are told; the quiet ones lie between.</summary>
    public const int FirstHour = 7;
    public const int LastHour = 21;

    /// <summary>Waits that came due in the last minutes and whose line is neither let go nor put off, nor taken on by what comes after it.</summary>
    public static async Task<IReadOnlyList<Notice>> WaitsAsync(AppDb db, Family family, DateTimeOffset now, CancellationToken ct)
    {
        var local = family.Local(now).DateTime;
        var names = await db.Learners.AsNoTracking().Select(l => l.Name).ToListAsync(ct);
        var due = new List<Notice>();
        foreach (var date in new[] { DateOnly.FromDateTime(local - Late), DateOnly.FromDateTime(local) }.Distinct())
        {
            var strip = await DayStrip.LoadAsync(db, date, new Reading(family, date, null, false), ct);
            foreach (var look in strip.Items.Select(i => i.Look).OfType<Look>().Where(l => !l.Hidden))
            {
                var at = date.ToDateTime(TimeOnly.MinValue).AddMinutes(look.At);
                if (at <= local && local - at < Late && !await IsTakenOnAsync(db, look.SessionId, date, ct))
                    due.Add(new Notice($"wait/{family.Id:N}/{look.SessionId:N}/{at:yyyy-MM-ddTHH:mm}", "Look", WordsOf(look, names), "/today", Late, Urgent: true));
            }
        }

        return due;
    }

    /// <summary>Dates of papers that the family owes, so many days before; on those days only, and outside the quiet hours.</summary>
    public static async Task<IReadOnlyList<Notice>> LawDatesAsync(AppDb db, Family family, DateTimeOffset now, CancellationToken ct)
    {
        var local = family.Local(now).DateTime;
        if (local.Hour is < FirstHour or >= LastHour)
            return [];
        var today = DateOnly.FromDateTime(local);
        var due = new SortedSet<DateOnly>();
        // Papers fall due after a year, too.
        foreach (var year in await db.SchoolYears.AsNoTracking().Include(y => y.Breaks).Where(y => y.Last >= today.AddYears(-1)).ToListAsync(ct))
        {
            foreach (var law in await LawOfLearner.LoadAllAsync(db, year, ct))
                due.UnionWith(LearnerDuty.Of(law).Where(d => d.IsOwn && d.State(today) != DutyState.Done).Select(d => d.Dated.Due).OfType<DateOnly>());
        }

        return
        [
            .. due.Where(d => DaysBefore.Contains(d.DayNumber - today.DayNumber)).Select(d => new Notice(
                $"law/{family.Id:N}/{d:yyyy-MM-dd}/{d.DayNumber - today.DayNumber}", "A date ahead", $"A paper is due on {d:d MMMM}.", "/records", TimeSpan.FromHours(12), Urgent: false)),
        ];
    }

    /// <summary>What the family's co-ops told in the last hours, at any hour: a day falls through in the morning. The writer's own words stay on the page.</summary>
    public static async Task<IReadOnlyList<Notice>> CoopNewsAsync(AppDb db, Family family, DateTimeOffset now, CancellationToken ct)
    {
        var since = (now - OldNews).UtcDateTime;
        var told = await (from n in db.CoopNotices.AsNoTracking()
                          where n.At >= since && n.WithdrawnAt == null && db.CoopFamilies.Any(f => f.CoopId == n.CoopId && f.FamilyId == family.Id && f.Since <= n.At)
                          join c in db.Coops on n.CoopId equals c.Id
                          orderby n.At
                          select new { Coop = c.Name, n.CoopId, n.Id, n.About, On = db.CoopMeetings.Where(m => m.CoopId == n.CoopId && m.Id == n.MeetingId).Select(m => (DateOnly?)m.On).FirstOrDefault() }).ToListAsync(ct);
        return [.. told.Select(n => new Notice($"coop/{n.Id:N}", n.Coop, WordsOf(n.About, n.On), $"/coop/{n.CoopId}/news/{n.Id}", OldNews, Urgent: n.About != NoticeAbout.Word))];
    }

    private static string WordsOf(NoticeAbout about, DateOnly? on) => (about, on) switch
    {
        (NoticeAbout.CalledOff, { } lost) => $"No meeting on {DayOff.Say(lost)}.",
        (NoticeAbout.MeetAfterAll, { } held) => $"We meet after all on {DayOff.Say(held)}.",
        (NoticeAbout.MadeUp, { } made) => $"We meet on {DayOff.Say(made)} instead.",
        _ => "There is a new notice.",
    };

    /// <summary>Something that comes after it is done: what waited was seen to.</summary>
    private static async Task<bool> IsTakenOnAsync(AppDb db, Guid sessionId, DateOnly date, CancellationToken ct)
    {
        var waited = await (from s in db.PlannedSessions join a in db.Activities on s.ActivityId equals a.Id where s.Id == sessionId select new { a.UnitId, a.Code, s.Date }).SingleOrDefaultAsync(ct);
        if (waited is null)
            return false;
        var after = (await db.Activities.AsNoTracking().Where(a => a.UnitId == waited.UnitId).ToListAsync(ct)).Where(a => a.Details.After.Contains(waited.Code)).Select(a => (Guid?)a.Id).ToList();
        return after.Count > 0 && await db.PlannedSessions.AnyAsync(s => after.Contains(s.ActivityId) && s.State == SessionState.Done && s.Date >= waited.Date && s.Date <= date, ct);
    }

    // A parent's own words may name a child; they stay in the house then.
    private static string WordsOf(Look look, IReadOnlyList<string> names)
    {
        const string plain = "Something that waits wants to be looked at.";
        var said = look.For.Trim().TrimEnd('.');
        return said.Length == 0 || names.Any(n => said.Contains(n, StringComparison.CurrentCultureIgnoreCase)) ? plain : $"{char.ToUpperInvariant(said[0])}{said[1..]}: see whether it is ready.";
    }
}
