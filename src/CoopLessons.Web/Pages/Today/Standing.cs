using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;
using CoopLessons.Data;
using CoopLessons.Data.Hours;
using CoopLessons.Data.Schedule;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Today;

/// <summary>One learner's line: the arithmetic of the year and of the week, nothing foretold.</summary>
public sealed record LearnerStanding(Guid LearnerId, string Name, WeekTotals Totals);

/// <summary>Where the children stand today. Empty for a helper, and between school years.</summary>
public sealed record Standing(IReadOnlyList<LearnerStanding> Lines, bool Swapped = false)
{
    public static Standing None { get; } = new([]);

    public static async Task<Standing> LoadAsync(AppDb db, DateOnly today, CancellationToken ct)
    {
        if ((await TeachingDays.LoadAsync(db, ct)).YearOf(today) is not { } year)
            return None;
        var learners = await db.Learners.Where(l => !l.SetAside).OrderBy(l => l.Order).ThenBy(l => l.Id).Select(l => new { l.Id, l.Name }).ToListAsync(ct);
        var ledgers = await LearnerYear.LedgersAsync(db, learners.Select(l => l.Id), year.Year, ct);
        return new Standing([.. learners.Zip(ledgers, (l, ledger) => new LearnerStanding(l.Id, l.Name, WeekTotals.Of(ledger, today)))]);
    }
}

/// <summary>What goes back after a tap: the line, what follows it, and the standing.</summary>
public sealed record Swap(StripLine? Line, Standing Standing);
