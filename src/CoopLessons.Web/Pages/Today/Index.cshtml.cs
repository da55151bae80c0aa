using CoopLessons.Data;
using CoopLessons.Data.Log;
using CoopLessons.Data.Prepare;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Pages.Families.Lists;
using CoopLessons.Web.Pages.Pieces;
using CoopLessons.Web.Phone;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Today;

/// <summary>A day as a strip of time, and what is tapped on it.</summary>
public sealed class IndexModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    private const string Overtaken = "Somebody changed this meanwhile. This is how it stands now.";
    private Dictionary<Guid, string> _names = [];

    public DayStrip Strip { get; private set; } = null!;
    public Standing Standing { get; private set; } = Standing.None;

    /// <summary>What is begun or seen to on this day for a later one; only on today's own page.</summary>
    public IReadOnlyList<AheadLine> Ahead { get; private set; } = [];

    /// <summary>That somebody is ill on this day; null where nobody is.</summary>
    public IllNotice? Ill { get; private set; }

    /// <summary>How many days may be caught up with; told on today's own page alone.</summary>
    public int CatchUpDays { get; private set; }

    /// <summary>Minted with the page: a second “We are ill” is known by it.</summary>
    public Guid NewSpell { get; } = Guid.CreateVersion7();

    /// <summary>How many photos and files are kept of the day, as far as whoever looks may see them.</summary>
    public int Pieces { get; private set; }

    /// <summary>What children said and a guardian has not looked at; only on today's own page.</summary>
    public IReadOnlyList<SaidRow> Said { get; private set; } = [];

    /// <summary>The day in the address; without one, today.</summary>
    [BindProperty(SupportsGet = true, Name = "date")]
    public string? Day { get; set; }

    /// <summary>Entries of which two writings stand beside each other; for guardians, who say which holds.</summary>
    public IReadOnlyList<LogRevision> Questions { get; private set; } = [];

    public string NameOf(Guid learnerId) => _names.GetValueOrDefault(learnerId, "");

    /// <param name="just">A session that was changed a moment ago.</param>
    public async Task<IActionResult> OnGetAsync(Guid? just)
    {
        if (!TryDate(out var date) || (just is { } id && await Db.WorkAsync(id, Ct) is null))
            return NotFound();
        await LoadAsync(date, just);
        return Page();
    }

    public Task<IActionResult> OnPostDoneAsync(Guid sessionId, Guid entryId) => ChangeAsync(sessionId, async work =>
    {
        if (entryId == Guid.Empty)
            return BadRequest();
        if (await Db.KnowsEntryAsync(entryId, Ct) || work.Session.State == SessionState.Done)
            return null;
        if (work.Session.Date > Today)
            return await AnswerAsync(sessionId, $"{work.Title} is planned for {work.Session.Date.InWords()}, which is still to come. Move it to today, or log it as something else.", 422);
        if (work.AsPlanned() is not { } facts)
            return Kept is null
                ? LocalRedirect($"/log/new?session={sessionId}")
                : await AnswerAsync(sessionId, "It names no child or no subject: say who did it, and as what it counts.", 422);
        Db.LogEntries.Add(work.MarkDone(entryId, facts, await AuthorAsync(), Now));
        return await Db.SaveOnceAsync(entryId, Ct) == Written.Overtaken ? await AnswerAsync(sessionId, Overtaken, 409) : null;
    });

    public Task<IActionResult> OnPostUndoAsync(Guid sessionId, Guid entryId, int revision) => ChangeAsync(sessionId, async work =>
    {
        if (await Db.EntryAsync(entryId, Ct) is not { } found || found.Entry.SessionId != sessionId)
            return NotFound();
        // The form takes back the writing that it showed: sent once more after a restore or a change, it takes nothing.
        if (found.Newest.Removed || found.Newest.Number != revision)
            return null;
        found.Entry.Remove(found.Newest, await AuthorAsync(), Now, "Taken back on the day's strip");
        if (work.Session.EntryId == entryId)
            work.Undo();
        return await SaveOrTellAsync(sessionId);
    });

    public Task<IActionResult> OnPostNotTodayAsync(Guid sessionId) => ChangeOpenAsync(sessionId, s => s.NotToday());

    public Task<IActionResult> OnPostLetGoAsync(Guid sessionId) => ChangeOpenAsync(sessionId, s => s.LetGo());

    public Task<IActionResult> OnPostPlanAgainAsync(Guid sessionId) => ChangeOpenAsync(sessionId, s => s.PlanAgain());

    public Task<IActionResult> OnPostMoveAsync(Guid sessionId, string? from, string? to) => ChangeAsync(sessionId, async work =>
    {
        if (!DayWords.TryRead(from, out var first) || !DayWords.TryRead(to, out var second))
            return BadRequest();
        return await Plan.ApplyAsync(Db, [work.Session.ToDay(first, second)], Ct) == PlanAnswer.Taken
            ? await SaveOrTellAsync(sessionId)
            : await AnswerAsync(sessionId, Overtaken, 409);
    });

    private Task<IActionResult> ChangeOpenAsync(Guid sessionId, Action<PlannedSession> change) => ChangeAsync(sessionId, async work =>
    {
        if (work.Session.State == SessionState.Done)
            return await AnswerAsync(sessionId, Overtaken, 409);
        change(work.Session);
        return await SaveOrTellAsync(sessionId);
    });

    private async Task<IActionResult> ChangeAsync(Guid sessionId, Func<PlannedWork, Task<IActionResult?>> change)
    {
        if (!ModelState.IsValid)
            return BadRequest();
        if (!TryDate(out _) || await Db.WorkAsync(sessionId, Ct) is not { } work)
            return NotFound();
        return await change(work) ?? await AnswerAsync(sessionId);
    }

    private async Task<IActionResult?> SaveOrTellAsync(Guid sessionId) => await SaveAsync() ? null : await AnswerAsync(sessionId, Overtaken, 409);

    /// <summary>The line as it stands now, swapped in, or the whole day for a browser that does not swap.</summary>
    private async Task<IActionResult> AnswerAsync(Guid sessionId, string? fault = null, int status = 200)
    {
        TryDate(out var date);
        if (!Request.IsHtmx() && fault is null)
            return LocalRedirect($"/today/{date.Iso()}?just={sessionId}#line-{sessionId:N}");
        Db.ChangeTracker.Clear();
        if (fault is not null)
            ModelState.AddModelError("", fault);
        await LoadAsync(date, sessionId, fault);
        if (!Request.IsHtmx())
            return Again(status);
        return Fragment("_Swap", new Swap(Strip.Lines.SingleOrDefault(l => l.Session.Id == sessionId), Standing with { Swapped = true }), status);
    }

    private bool TryDate(out DateOnly date)
    {
        date = Today;
        return Day is null || DayWords.TryRead(Day, out date);
    }

    private async Task LoadAsync(DateOnly date, Guid? just, string? fault = null)
    {
        Strip = await DayStrip.LoadAsync(Db, date, new Reading(Family, Today, Db.Current.PersonId, !IsGuardian, just, fault, PageShots.IsKept(HttpContext)), Ct);
        _names = await Db.Learners.ToDictionaryAsync(l => l.Id, l => l.Name, Ct);
        if (Strip.Ill is { } spell)
            Ill = new IllNotice(spell, await Db.Learners.AsNoTracking().OrderBy(l => l.Order).ThenBy(l => l.Id).ToListAsync(Ct), Today, IsGuardian);
        if (date == Today && !Request.IsHtmx())
            CatchUpDays = (await UnloggedDays.LoadAsync(Db, Today, Ct)).Days.Count;
        if (date == Today && !Request.IsHtmx())
            Ahead = [.. (await AheadList.LoadAsync(Db, Today, Ct)).For(Today)];
        if (IsGuardian && !Request.IsHtmx())
            Questions = await Db.Unanswered().AsNoTracking().OrderBy(r => r.WrittenAt).ToListAsync(Ct);
        if (!Request.IsHtmx())
            Pieces = await Db.SeenPiecesOn(Today).CountAsync(p => p.RemovedAt == null && p.Date == date, Ct);
        if (IsGuardian && date == Today && !Request.IsHtmx())
            Said = await SaidRow.WaitingAsync(Db, Today, Ct);
        if (IsGuardian)
            Standing = await Standing.LoadAsync(Db, Family, Today, Ct);
    }
}
