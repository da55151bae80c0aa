using CoopLessons.Data;
using CoopLessons.Data.OwnLists;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Families.Lists;

/// <summary>What children said was done: logged with one tap, with changes, or not yet.</summary>
public sealed class SaidModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    private const string Overtaken = "Somebody changed this meanwhile. This is how it stands now.";

    public IReadOnlyList<SaidRow> Waiting { get; private set; } = [];

    public IReadOnlyList<SaidRow> Decided { get; private set; } = [];

    public Task OnGetAsync() => LoadAsync();

    /// <param name="entryId">Made with the page, so that a second sending is recognised.</param>
    public Task<IActionResult> OnPostConfirmAsync(Guid saidId, Guid entryId) => DecideAsync(saidId, async said =>
    {
        if (entryId == Guid.Empty)
            return BadRequest();
        return await Db.ConfirmAsync(said, entryId, await AuthorAsync(), Now, Ct) switch
        {
            Confirmed.NeedsForm => ToForm(saidId),
            Confirmed.Overtaken => await AnswerAsync(saidId, Overtaken, StatusCodes.Status409Conflict),
            _ => null,
        };
    });

    public Task<IActionResult> OnPostNotYetAsync(Guid saidId, string? answer) => DecideAsync(saidId, async said =>
    {
        if (answer?.Length > ChildSaid.LongestAnswer)
            return await AnswerAsync(saidId, $"A short word has at most {ChildSaid.LongestAnswer} signs.", StatusCodes.Status422UnprocessableEntity);
        if (!said.IsWaiting)
            return null;
        said.Decline(answer ?? "", await AuthorAsync(), Now);
        return await SaveOrTellAsync(saidId);
    });

    public Task<IActionResult> OnPostUndoAsync(Guid saidId) => DecideAsync(saidId, async said =>
    {
        if (said.IsWaiting || said.State == SaidState.TakenBack)
            return null;
        await Db.UndoAsync(said, await AuthorAsync(), Now, Ct);
        return await SaveOrTellAsync(saidId);
    });

    private async Task<IActionResult> DecideAsync(Guid saidId, Func<ChildSaid, Task<IActionResult?>> decide)
    {
        if (!ModelState.IsValid)
            return BadRequest();
        if (await Db.ChildrenSaid.SingleOrDefaultAsync(s => s.Id == saidId, Ct) is not { } said)
            return NotFound();
        return await decide(said) ?? await AnswerAsync(saidId);
    }

    private async Task<IActionResult?> SaveOrTellAsync(Guid saidId) => await SaveNewAsync() ? null : await AnswerAsync(saidId, Overtaken, StatusCodes.Status409Conflict);

    private IActionResult ToForm(Guid saidId)
    {
        var form = $"/log/new?said={saidId}";
        if (!Request.IsHtmx())
            return LocalRedirect(form);
        Response.Headers["HX-Redirect"] = form;
        return new StatusCodeResult(StatusCodes.Status204NoContent);
    }

    /// <summary>The row as it stands now, swapped in, or the whole page for a browser that does not swap.</summary>
    private async Task<IActionResult> AnswerAsync(Guid saidId, string? fault = null, int status = StatusCodes.Status200OK)
    {
        Db.ChangeTracker.Clear();
        var row = await SaidRow.OfAsync(Db, saidId, Today, fault, Ct);
        if (Request.IsHtmx())
            return Fragment("_Said", row, status);
        if (fault is null)
        {
            Say($"{row.Child}, {row.Said.What}: {row.Outcome}");
            return LocalRedirect($"/family/said#{row.Id}");
        }

        await LoadAsync();
        (Waiting, Decided) = ([.. Waiting.Select(Told)], [.. Decided.Select(Told)]);
        return Again(status);

        SaidRow Told(SaidRow other) => other.Said.Id == saidId ? row : other;
    }

    private async Task LoadAsync()
    {
        Waiting = await SaidRow.WaitingAsync(Db, Today, Ct);
        Decided = await SaidRow.DecidedAsync(Db, Today, Now, Ct);
    }
}
