namespace CoopLessons.Core.Requirements.Standing;

/// <summary>Where a requirement stands.</summary>
public enum Verdict
{
    Met,

    /// <summary>The middle of the forecast reaches it.</summary>
    OnPace,

    /// <summary>The year runs, and fewer than three whole weeks are in the log.</summary>
    CannotTellYet,

    /// <summary>The law leaves it open, a figure is missing, or only part of a year counts.</summary>
    ForYouToJudge,

    /// <summary>The year runs, and the middle of the forecast falls short.</summary>
    Behind,

    /// <summary>The year is over and the figure was not reached.</summary>
    NotMet,

    /// <summary>Not asked of a child of this age or grade.</summary>
    NotAsked,
}

public static class Verdicts
{
    public static string Words(this Verdict verdict) => verdict switch
    {
        Verdict.Met => "met",
        Verdict.OnPace => "on pace",
        Verdict.CannotTellYet => "cannot tell yet",
        Verdict.ForYouToJudge => "for you to judge",
        Verdict.Behind => "behind",
        Verdict.NotMet => "not met",
        _ => "not asked",
    };

    /// <summary>Of alternatives, of which one is enough: the best. Those that are not asked are passed over.</summary>
    public static Verdict Best(this IEnumerable<Verdict> all) => Pick(all, descending: false);

    /// <summary>Of several that are all asked: the worst. Those that are not asked are passed over.</summary>
    public static Verdict Worst(this IEnumerable<Verdict> all) => Pick(all, descending: true);

    private static Verdict Pick(IEnumerable<Verdict> all, bool descending)
    {
        // The enumeration runs from best to worst.
        var asked = all.Where(v => v != Verdict.NotAsked).Order().ToList();
        if (asked.Count == 0)
            return Verdict.NotAsked;
        return descending ? asked[^1] : asked[0];
    }
}
