using CoopLessons.Core.Schedule;
using CoopLessons.Web.Pages.Today;
using CoopLessons.Web.Pages.Units;

namespace CoopLessons.Web.Pages.Week.Layout;

/// <summary>What is said of a plan.</summary>
public static class LayoutWords
{
    /// <summary>A session that was left out is worth so much; below it, only evenness, days and wishes are at stake.</summary>
    private const int OneLeftOut = 400;
    private const int MinutesOfAUnit = 5;

    /// <summary>How good the plan is, as far as that is known. “Best” is said only where it was proven.</summary>
    public static string Of(WeekPlan plan)
    {
        if (plan.CutShort)
            return "This took so long that it was cut short. The plan keeps every rule; a better one may exist.";
        var gap = plan.Cost.Total - plan.Bound;
        return plan.Proof switch
        {
            Proof.Best => "This is the best plan for your hours, rules and wishes: it was proven that none is better.",
            Proof.Within when gap < OneLeftOut => $"The plan keeps every rule. A better one, if there is one, could gain at most what {DayWords.Length(gap * MinutesOfAUnit)} of more even days are worth.",
            Proof.Within => "The plan keeps every rule. It was not proven that nothing more could be placed.",
            _ => "The plan keeps every rule. Whether there is a better one was not found out.",
        };
    }

    /// <summary>The same for one of several ways on.</summary>
    public static string Of(Proof? proof) => proof switch
    {
        null => "",
        Proof.Best => "The hours are proven to be the best for these days.",
        Proof.Within => "The hours keep every rule; better ones may exist.",
        _ => "The hours keep every rule; whether better ones exist was not found out.",
    };

    /// <summary>What was counted, in one line.</summary>
    public static string Counted(WeekPlan plan)
    {
        var parts = new List<string> { $"{UnitWords.Count(plan.Places.Count, "session has", "sessions have")} a place" };
        if (plan.Misfits.Count > 0)
            parts.Add(plan.Misfits.Count == 1 ? "one has none" : $"{plan.Misfits.Count} have none");
        if (plan.Cost.Unmet > 0)
            parts.Add(plan.Cost.Unmet == 1 ? "one wish is not met" : $"{plan.Cost.Unmet} wishes are not met");
        return DayWords.Names(parts) + ".";
    }
}
