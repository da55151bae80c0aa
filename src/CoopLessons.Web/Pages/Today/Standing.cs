using CoopLessons.Core.Hours;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Requirements;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Today;

/// <summary>One learner's line: the year's total or, where a pathway is chosen, where the learner stands under it; and the week.</summary>
/// <param name="UnderLaw">Such as "512 of 1,000 hours, on pace with 9 days to spare"; empty without a pathway that asks for a number.</param>
public sealed record StandingLine(Guid LearnerId, string Name, WeekTotals Totals, string UnderLaw);

/// <summary>Where the children stand today. Empty for a helper, and between school years.</summary>
public sealed record Standing(IReadOnlyList<StandingLine> Lines, bool Swapped = false)
{
    public static Standing None { get; } = new([]);

    public static async Task<Standing> LoadAsync(AppDb db, Data.Families.Family family, DateOnly today, CancellationToken ct)
    {
        if (await db.SchoolYears.AsNoTracking().Include(y => y.Breaks).FirstOrDefaultAsync(y => y.First <= today && y.Last >= today, ct) is not { } year)
            return None;
        var all = await LearnerStanding.LoadAllAsync(db, family, year, today, ct);
        return new Standing([.. all.Select(s => new StandingLine(
            s.Law.Learner.Id, s.Law.Learner.Name, WeekTotals.Of(s.Question.Ledger, year.Days, today), s.Now?.Brief ?? ""))]);
    }
}

/// <summary>What goes back after a tap: the line, what follows it, and the standing.</summary>
public sealed record Swap(StripLine? Line, Standing Standing);
