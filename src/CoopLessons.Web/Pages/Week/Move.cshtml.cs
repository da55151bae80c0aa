using CoopLessons.Data;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc;
using IsoWeek = CoopLessons.Core.Calendar.Week;

namespace CoopLessons.Web.Pages.Week;

/// <summary>Gives a planned session another day, time or place in its day, or lets it go.</summary>
public sealed class MoveModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    [BindProperty]
    public PlanForm Input { get; set; } = new();

    [BindProperty]
    public int Version { get; set; }

    public PlannedWork Work { get; private set; } = null!;

    /// <summary>What shares its day and its time: among these alone the order is free.</summary>
    public IReadOnlyList<PlannedWork> Beside { get; private set; } = [];

    public int At => Beside.ToList().FindIndex(w => w.Session.Id == Work.Session.Id);

    public async Task<IActionResult> OnGetAsync(Guid sessionId)
    {
        if (!await LoadAsync(sessionId))
            return NotFound();
        if (Work.Session.State == SessionState.Done)
            return LocalRedirect($"/log/{Work.Session.EntryId}");
        Input = new PlanForm { Date = Work.Session.Date, Start = DayWords.TimeOf(Work.Session.StartsAt), Pinned = true };
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(Guid sessionId)
    {
        if (!await LoadAsync(sessionId))
            return NotFound();
        if (Input.Read(ModelState) is not { } date)
            return Again();
        if (Work.Session.State == SessionState.Done)
            return IsDone();
        Expect(Work.Session, Version);
        Work.Session.PlanAgain();
        Work.Session.Place(date, Input.StartsAt);
        Work.Session.Pin(Input.Pinned);
        if (!await SaveAsync())
            return await OvertakenAsync(sessionId);
        Say(await DropModel.MovedAsync(Db, Work, Today, Ct));
        return LocalRedirect($"/week/{IsoWeek.Of(date).Iso}");
    }

    public async Task<IActionResult> OnPostLetGoAsync(Guid sessionId)
    {
        if (!await LoadAsync(sessionId))
            return NotFound();
        ModelState.Clear();
        Input = new PlanForm { Date = Work.Session.Date, Start = DayWords.TimeOf(Work.Session.StartsAt), Pinned = true };
        if (Work.Session.State == SessionState.Done)
            return IsDone();
        Work.Session.LetGo();
        if (!await SaveAsync())
            return await OvertakenAsync(sessionId);
        Say($"“{Work.Title}” is let go. It stays in its week, and can be planned again from there.");
        return LocalRedirect($"/week/{IsoWeek.Of(Work.Session.Date).Iso}");
    }

    /// <param name="place">Where it shall stand among those of its time, 0 for first: a second sending changes nothing.</param>
    public async Task<IActionResult> OnPostOrderAsync(Guid sessionId, int place)
    {
        if (!await LoadAsync(sessionId))
            return NotFound();
        if (place < 0 || place >= Beside.Count)
            return BadRequest();
        await Db.StandInDayAsync(Work.Session, [.. Beside.Select(w => w.Session)], place, Ct);
        ModelState.Clear();
        if (!await SaveAsync())
            return await OvertakenAsync(sessionId);
        return LocalRedirect($"/week/move/{sessionId}");
    }

    private IActionResult IsDone()
    {
        ModelState.AddModelError("", "This is done by now. What is done is changed in the log.");
        return Again(StatusCodes.Status409Conflict);
    }

    private async Task<IActionResult> OvertakenAsync(Guid sessionId)
    {
        await LoadAsync(sessionId);
        Version = Work.Session.Version;
        ModelState.Remove(nameof(Version));
        return Again(StatusCodes.Status409Conflict);
    }

    private async Task<bool> LoadAsync(Guid sessionId)
    {
        if (await Db.WorkAsync(sessionId, Ct) is not { } work)
            return false;
        Work = work;
        var (date, at) = (work.Session.Date, work.Session.StartsAt);
        Beside = [.. (await Db.WorkAsync(Db.PlannedSessions.Where(s => s.Date == date && s.StartsAt == at && s.State != SessionState.LetGo), Ct))];
        if (HttpMethods.IsGet(Request.Method))
            Version = work.Session.Version;
        return true;
    }
}
