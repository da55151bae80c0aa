using System.Globalization;
using CoopLessons.Core.Calendar;

namespace CoopLessons.Core.Evidence;

/// <summary>Sentences that the log can vouch for, offered to a parent who writes about a subject. Nothing in them judges.</summary>
public static class NarrativeFacts
{
    /// <summary>How many things are named.</summary>
    public const int MostThings = 6;

    /// <summary>In the order in which they would be told; one saying that nothing is logged where that is so.</summary>
    public static IReadOnlyList<string> Of(SubjectFacts facts)
    {
        if (facts is { Days: 0, Touched: 0 })
            return ["Nothing is logged under this subject."];
        var told = new List<string>();
        if (facts.Days > 0)
            told.Add($"{facts.Minutes.Clock} hours and minutes on {Days(facts.Days)}, from {facts.First!.Value.Plain()} to {facts.Last!.Value.Plain()}.");
        if (facts.Touched > 0)
            told.Add(facts.Days > 0 ? $"Met in passing on {Days(facts.Touched)} more." : $"Met in passing on {Days(facts.Touched)}, without minutes of its own.");
        if (facts.Things.Count > 0)
            told.Add($"Most time went to: {string.Join("; ", facts.Things.Take(MostThings).Select(t => $"{t.What} ({t.Minutes.Clock}, {Days(t.Days)})"))}.");
        return told;
    }

    private static string Days(int count) => count == 1 ? "one day" : string.Create(CultureInfo.InvariantCulture, $"{count} days");
}
