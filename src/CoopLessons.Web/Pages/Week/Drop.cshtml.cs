using CoopLessons.Data;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using IsoWeek = CoopLessons.Core.Calendar.Week;

namespace CoopLessons.Web.Pages.Week;

/// <summary>A session was carried to another day of the week with the mouse. By touch and keyboard, its own page does the same.</summary>
public sealed class DropModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    public async Task<IActionResult> OnGetAsync(Guid sessionId) =>
        await Db.PlannedSessions.AnyAsync(s => s.Id == sessionId, Ct) ? LocalRedirect($"/week/move/{sessionId}") : NotFound();

    public async Task<IActionResult> OnPostAsync(Guid sessionId, string? day)
    {
        if (await Db.WorkAsync(sessionId, Ct) is not { } work)
            return NotFound();
        if (!DayWords.TryRead(day, out var to))
            return BadRequest();
        var from = IsoWeek.Of(work.Session.Date).Iso;
        if (work.Session.State == SessionState.Done)
        {
            Say($"“{work.Title}” is done by now. What is done is changed in the log.");
            return LocalRedirect($"/week/{from}");
        }

        if (work.Session.Date != to)
        {
            work.Session.MoveTo(to);
            work.Session.Place(to, work.Session.StartsAt);
            work.Session.Pin(true);
            if (!await SaveNewAsync())
            {
                Say($"Somebody changed “{work.Title}” at the same moment. It stays as they left it.");
                return LocalRedirect($"/week/{from}");
            }
        }

        Say(await MovedAsync(Db, work, Today, Ct));
        return LocalRedirect($"/week/{IsoWeek.Of(to).Iso}");
    }

    /// <summary>Where it stands now, and what that breaks.</summary>
    public static async Task<string> MovedAsync(AppDb db, PlannedWork work, DateOnly today, CancellationToken ct)
    {
        var date = work.Session.Date;
        var doubt = (await TeachingDays.LoadAsync(db, ct)).Doubt(date);
        var said = $"“{work.Title}” is planned for {date.InWords(today)}{(doubt is null ? "" : $", {doubt}")}.";
        var breaks = await HandMoves.BreaksAsync(db, work.Session.Id, date, today, ct);
        return breaks.Count == 0 ? said : $"{said} Mind: {string.Join(" ", breaks)}";
    }
}
