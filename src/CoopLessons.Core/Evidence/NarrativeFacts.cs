using System.Globalization;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;

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
            told.Add($"{Hours(facts.Minutes)} on {Days(facts.Days)}, from {facts.Things.Min(t => t.First).Plain()} to {facts.Things.Max(t => t.Last).Plain()}.");
        if (facts.Touched > 0)
            told.Add(facts.Days > 0 ? $"Met in passing on {Days(facts.Touched)} more." : $"Met in passing on {Days(facts.Touched)}, without minutes of its own.");
        if (facts.Things.Count > 0)
            told.Add($"Most time went to: {string.Join("; ", facts.Things.Take(MostThings).Select(t => $"{t.What} ({t.Minutes.Clock}, {Days(t.Days)})"))}.");
        return told;
    }

    /// <summary>Of a matter that has no minutes of its own.</summary>
    /// <param name="within">The subjects in which it is taught; may be empty.</param>
    public static IReadOnlyList<string> OfTopic(string within) =>
        within.Length == 0 ? ["Nothing is logged under this subject."] : [$"Belongs within {within}; its minutes are not told apart there."];

    /// <summary>What is lacking of such a matter.</summary>
    public static string NotToldApart(string within) => $"Days, minutes and entries of this alone: the log does not tell them apart{(within.Length == 0 ? "" : $" from {within}")}.";

    private static string Hours(Minutes minutes) => (minutes.Value / 60, minutes.Value % 60) switch
    {
        (0, var rest) => $"{rest} min",
        (1, 0) => "1 hour",
        (1, var rest) => $"1 hour {rest} min",
        (var hours, 0) => string.Create(CultureInfo.InvariantCulture, $"{hours:#,0} hours"),
        var (hours, rest) => string.Create(CultureInfo.InvariantCulture, $"{hours:#,0} hours {rest} min"),
    };

    private static string Days(int count) => count == 1 ? "one day" : string.Create(CultureInfo.InvariantCulture, $"{count} days");
}
