using CoopLessons.Data;
using CoopLessons.Data.Log;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using IsoWeek = CoopLessons.Core.Calendar.Week;

namespace CoopLessons.Web.Pages.Log;

/// <summary>The log by days, a week at a time, the newest first.</summary>
public sealed class IndexModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    public IsoWeek Shown { get; private set; }
    public Guid? Learner { get; private set; }
    public EntryWords Words { get; private set; } = null!;
    public IReadOnlyList<IGrouping<DateOnly, FactsView>> Days { get; private set; } = [];
    public int CatchUpDays { get; private set; }
    public IReadOnlyList<LogRevision> Removed { get; private set; } = [];

    /// <param name="week">As ISO 8601 writes it; without it, the week of today.</param>
    public async Task<IActionResult> OnGetAsync(string? week, Guid? learner)
    {
        Words = await EntryWords.LoadAsync(Db, Ct);
        Shown = IsoWeek.Of(Today);
        if (!ModelState.IsValid || week is not null && !TryWeek(week) || learner is { } id && Words.Learners.All(l => l.Id != id))
            return NotFound();
        Learner = learner;
        var entries = await Db.StandingIn(Shown.Days).Where(r => learner == null || r.Times.Any(t => t.LearnerId == learner)).ToListAsync(Ct);
        Days =
        [
            .. entries.OrderByDescending(r => r.Date).ThenByDescending(r => r.StartsAt).ThenByDescending(r => r.WrittenAt).ThenBy(r => r.EntryId)
                .Select(r => new FactsView(r, Words, Family)).GroupBy(v => v.Revision.Date),
        ];
        Removed = await Db.LogRevisions.AsNoTracking()
            .Where(r => r.Number == r.Entry.Newest && r.Removed && r.Date >= Shown.Days.First && r.Date <= Shown.Days.Last)
            .Where(r => learner == null || r.Times.Any(t => t.LearnerId == learner))
            .OrderByDescending(r => r.Date).ThenBy(r => r.EntryId).ToListAsync(Ct);
        CatchUpDays = (await UnloggedDays.LoadAsync(Db, Today, Ct)).Days.Count;
        return Page();
    }

    private bool TryWeek(string text)
    {
        if (!IsoWeek.TryParse(text, out var week) || week.Days.First < DayWords.Earliest.AddDays(7) || week.Days.Last > DayWords.Latest.AddDays(-7))
            return false;
        Shown = week;
        return true;
    }
}
