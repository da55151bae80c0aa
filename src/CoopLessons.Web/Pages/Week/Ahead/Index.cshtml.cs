using CoopLessons.Core.Prepare;
using CoopLessons.Data;
using CoopLessons.Data.Prepare;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Week.Ahead;

/// <summary>What is begun days before: when, how it stands, and what the plan's changes did to it.</summary>
public sealed class IndexModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    /// <summary>How far back a beginning can be written down; the longest takes a year.</summary>
    private const int DaysBack = 400;

    public IReadOnlyList<AheadLine> Lines { get; private set; } = [];

    /// <summary>The line beside which a message stands, and the message.</summary>
    public (Guid ActivityId, string What, string Message)? Fault { get; private set; }

    public async Task OnGetAsync() => await LoadAsync();

    /// <param name="on">The day on which it was begun; today or before.</param>
    public async Task<IActionResult> OnPostBeginAsync(Guid activityId, string? what, DateOnly? on)
    {
        if (await LineAsync(activityId, what) is not { } line)
            return NotFound();
        if (on is not { } day || day > Today || day < Today.AddDays(-DaysBack))
            return await FaultAsync(line, "Write a day that is not after today, such as " + Today.Iso() + ".");
        return await SavedAsync(line, mark => mark.Begin(day, line.NeededOn), $"“{line.Start.What}”: {AheadWords.Begun(line.Start.Kind)} on {day.InWords(Today)}.");
    }

    public async Task<IActionResult> OnPostTendAsync(Guid activityId, string? what)
    {
        if (await LineAsync(activityId, what) is not { } line)
            return NotFound();
        if (line.Underway is null)
            return await FaultAsync(line, "It is not begun by now.", StatusCodes.Status409Conflict);
        return await SavedAsync(line, mark => mark.Tend(Today), $"“{line.Start.What}” is seen to for today.");
    }

    /// <summary>The parent thought about a day that moved, and leaves it as it is.</summary>
    public async Task<IActionResult> OnPostLeaveAsync(Guid activityId, string? what)
    {
        if (await LineAsync(activityId, what) is not { } line)
            return NotFound();
        if (line.Underway is null)
            return await FaultAsync(line, "It is not begun by now.", StatusCodes.Status409Conflict);
        return await SavedAsync(line, mark => mark.MeanFor(line.NeededOn), $"“{line.Start.What}” is meant for {line.NeededOn.InWords(Today)} from now on.");
    }

    public async Task<IActionResult> OnPostNotNeededAsync(Guid activityId, string? what)
    {
        if (await LineAsync(activityId, what) is not { } line)
            return NotFound();
        return await SavedAsync(line, mark => mark.NeedNot(), $"“{line.Start.What}” is not needed. It stays at the end of this page.");
    }

    /// <summary>As though nothing had been begun.</summary>
    public async Task<IActionResult> OnPostAnewAsync(Guid activityId, string? what)
    {
        if (await LineAsync(activityId, what) is not { } line)
            return NotFound();
        if (line.Mark is not null)
        {
            Db.Remove(await Db.AheadMarks.SingleAsync(m => m.Id == line.Mark.Id, Ct));
            if (!await SaveAsync())
                return await FaultAsync(line, null, StatusCodes.Status409Conflict);
        }

        Say($"“{line.Start.What}” is to be begun once more.");
        return Back(line);
    }

    private async Task<IActionResult> SavedAsync(AheadLine line, Action<AheadMark> change, string said)
    {
        var mark = line.Mark is null ? null : await Db.AheadMarks.SingleOrDefaultAsync(m => m.Id == line.Mark.Id, Ct);
        if (mark is null)
            Db.Add(mark = new AheadMark(Guid.CreateVersion7(), line.Activity.Id, line.Start.What));
        change(mark);
        // A second sending in the same moment finds the mark there already: what it says is done.
        if (!await SaveNewAsync())
            return await FaultAsync(line, "Somebody else wrote here at the same moment. Look once more.", StatusCodes.Status409Conflict);
        Say(said);
        return Back(line);
    }

    private async Task<AheadLine?> LineAsync(Guid activityId, string? what)
    {
        await LoadAsync();
        return Lines.FirstOrDefault(l => l.Activity.Id == activityId && l.Start.What == what);
    }

    private async Task LoadAsync() => Lines = (await AheadList.LoadAsync(Db, Today, Ct)).Lines;

    private async Task<IActionResult> FaultAsync(AheadLine line, string? message, int status = StatusCodes.Status422UnprocessableEntity)
    {
        await LoadAsync();
        if (message is not null)
            Fault = (line.Activity.Id, line.Start.What, message);
        ModelState.Clear();
        return Again(status);
    }

    private LocalRedirectResult Back(AheadLine line) => LocalRedirect($"/week/ahead#{AheadTasks.Anchor(line)}");
}
