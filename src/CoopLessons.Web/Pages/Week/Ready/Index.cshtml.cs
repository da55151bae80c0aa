using CoopLessons.Core.Prepare;
using CoopLessons.Data;
using CoopLessons.Data.Files;
using CoopLessons.Data.Prepare;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc;
using IsoWeek = CoopLessons.Core.Calendar.Week;

namespace CoopLessons.Web.Pages.Week.Ready;

/// <summary>A week before it begins: what is printed, gathered, borrowed, read and started, and where somebody must take care.</summary>
public sealed class IndexModel(AppDb db, TimeProvider clock, FileShelf shelf) : FamilyPage(db, clock)
{
    public IsoWeek Shown { get; private set; }
    public ReadyList List { get; private set; } = null!;

    public IReadOnlyList<ReadyTask> Of(params ReadyKind[] kinds) => [.. List.Tasks.Where(t => kinds.Contains(t.Kind))];

    /// <param name="week">As ISO 8601 writes it; without it, the week at hand, from Saturday on the next one.</param>
    public async Task<IActionResult> OnGetAsync(string? week)
    {
        var shown = AtHand(Today);
        if (week is not null && !DayWords.TryWeek(week, out shown))
            return NotFound();
        Shown = shown;
        var held = await shelf.HeldForPrintAsync(Db, Ct);
        List = await ReadyList.LoadAsync(Db, Shown, Today, held.Contains, Ct);
        return Page();
    }

    /// <summary>The week that one gets ready for on a day: from Saturday on the one that follows.</summary>
    public static IsoWeek AtHand(DateOnly today) =>
        today.DayOfWeek is DayOfWeek.Saturday or DayOfWeek.Sunday ? IsoWeek.Of(today).Next : IsoWeek.Of(today);
}
