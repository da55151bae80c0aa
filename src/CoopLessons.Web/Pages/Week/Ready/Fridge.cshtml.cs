using CoopLessons.Core.Prepare;
using CoopLessons.Data;
using CoopLessons.Data.Files;
using CoopLessons.Data.Prepare;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc;
using IsoWeek = CoopLessons.Core.Calendar.Week;

namespace CoopLessons.Web.Pages.Week.Ready;

/// <summary>A day of the sheet: what is done to get ready, and what lies out for its activities.</summary>
public sealed record FridgeDay(DateOnly Date, IReadOnlyList<ReadyTask> Tasks, IReadOnlyList<ReadyActivity> Activities);

/// <summary>Getting ready on one page that hangs in the kitchen, with boxes to tick by pen.</summary>
public sealed class FridgeModel(AppDb db, TimeProvider clock, FileShelf shelf) : FamilyPage(db, clock)
{
    /// <summary>More lines than this need the smaller type to stay on one page.</summary>
    private const int LinesOfAPage = 34;

    private ReadyList _list = null!;

    public IsoWeek Shown { get; private set; }

    /// <summary>What is to be done before the week begins.</summary>
    public IReadOnlyList<ReadyTask> Before { get; private set; } = [];

    /// <summary>The days of the week on which there is anything.</summary>
    public IReadOnlyList<FridgeDay> Days { get; private set; } = [];

    /// <summary>What has no day yet.</summary>
    public IReadOnlyList<ReadyActivity> Whenever { get; private set; } = [];

    public int Done { get; private set; }

    public bool IsLong => Before.Count + Whenever.Count + Days.Sum(d => 1 + d.Tasks.Count + 2 * d.Activities.Count) > LinesOfAPage;

    public string CautionsOf(ReadyActivity activity) => Units.CautionWords.Brief(_list.Ready.CautionsOf(activity));

    public async Task<IActionResult> OnGetAsync(string week)
    {
        if (!DayWords.TryWeek(week, out var shown))
            return NotFound();
        Shown = shown;
        var held = await shelf.HeldForPrintAsync(Db, Ct);
        _list = await ReadyList.LoadAsync(Db, Shown, Today, held.Contains, Ct);
        var open = _list.Tasks.Where(t => !t.Done).ToList();
        Done = _list.Tasks.Count - open.Count;
        Before = [.. open.Where(t => t.By < Shown.Monday)];
        Days =
        [
            .. Shown.Days.Days().Select(d => new FridgeDay(d, [.. open.Where(t => t.By == d)], [.. _list.Ready.Activities.Where(a => a.Date == d)]))
                .Where(d => d.Tasks.Count + d.Activities.Count > 0),
        ];
        Whenever = [.. _list.Ready.Activities.Where(a => a.Date is null)];
        return Page();
    }

    /// <summary>What lies out for an activity: its supplies and what is printed, each by its name.</summary>
    public static string LaidOut(ReadyActivity activity) =>
        string.Join(", ", activity.LaidOut.Concat(activity.Activity.Details.Printables.Select(p => $"“{p.Title}”")));
}
