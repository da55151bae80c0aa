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
        var lines = new List<LearnerStanding>();
        foreach (var id in await db.Learners.Where(l => !l.SetAside).OrderBy(l => l.Order).ThenBy(l => l.Id).Select(l => l.Id).ToListAsync(ct))
        {
            if (await LearnerYear.LoadAsync(db, id, new DayRange(year.Year.First, year.Year.Last), ct) is { } own)
                lines.Add(new LearnerStanding(id, own.Learner.Name, WeekTotals.Of(own.Ledger, today)));
        }

        return new Standing(lines);
    }
}

/// <summary>What goes back after a tap: the line, what follows it, and the standing.</summary>
public sealed record Swap(StripLine? Line, Standing Standing);
