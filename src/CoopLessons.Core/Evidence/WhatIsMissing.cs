using System.Globalization;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Evidence;

/// <summary>What a reader who asks for one subject would look for and not find, said before the reader says it.</summary>
public static class WhatIsMissing
{
    /// <summary>A stretch without the subject that is worth a word, in days (six weeks: common practice, no source).</summary>
    public const int LongStretch = 42;

    /// <summary>Plain sentences; none where nothing is missing.</summary>
    /// <param name="name">The subject as it was asked for.</param>
    /// <param name="facts">Of the days asked for.</param>
    /// <param name="samples">The days of its work samples among them.</param>
    /// <param name="untold">How many of those samples have no caption.</param>
    /// <param name="today">Days after it are not looked at.</param>
    /// <param name="teaching">Whether the family teaches on a day; breaks are not missed.</param>
    public static IReadOnlyList<string> Of(string name, SubjectFacts facts, IReadOnlyList<DateOnly> samples, int untold, DateOnly today, Func<DateOnly, bool> teaching)
    {
        var missing = new List<string>();
        if (facts.Asked.First > today)
            return missing;
        var until = facts.Asked.Last < today ? facts.Asked.Last : today;
        if (facts is { Days: 0, Touched: 0 })
            missing.Add($"Nothing is logged under {name} from {facts.Asked.First.Plain()} to {until.Plain()}.");
        else if (facts.Days == 0)
            missing.Add($"No minutes are logged under {name}; it was met in passing on {Count(facts.Touched, "day")}.");
        missing.AddRange(Stretches(name, facts, until, teaching));
        if (samples.Count == 0)
            missing.Add($"No photo, paper or recording shows {name}.");
        else
            missing.AddRange(Parts(facts.Asked, samples, until));
        if (untold > 0)
            missing.Add(untold == samples.Count && untold > 1 ? "None of the samples has a caption." : $"{Capital(Count(untold, "sample"))} {(untold == 1 ? "has" : "have")} no caption.");
        return missing;
    }

    private static IEnumerable<string> Stretches(string name, SubjectFacts facts, DateOnly until, Func<DateOnly, bool> teaching)
    {
        if (facts.Days == 0)
            yield break;
        var quiet = facts.Months.Where(m => m.Minutes == Minutes.Zero && m.Month.Days.First <= until && m.Month.Days.Last >= facts.Asked.First
            && m.Month.Days.Days().Any(d => d <= until && facts.Asked.Contains(d) && teaching(d))).Select(m => m.Month.Days.First.ToString("MMMM", CultureInfo.InvariantCulture)).ToList();
        if (quiet.Count > 0)
            yield return $"No minutes of {name} in {Joined(quiet)}.";
        if (facts.Last is { } last && until.DayNumber - last.DayNumber >= LongStretch && last.AddDays(1) <= until && TeachingBetween(last.AddDays(1), until, teaching))
            yield return $"Nothing since {last.Plain()}.";
    }

    private static bool TeachingBetween(DateOnly first, DateOnly last, Func<DateOnly, bool> teaching) => new DayRange(first, last).Days().Any(teaching);

    private static IEnumerable<string> Parts(DayRange asked, IReadOnlyList<DateOnly> samples, DateOnly until)
    {
        var there = samples.Select(s => SampleSpread.PartOf(s, asked)).ToHashSet();
        var over = SampleSpread.PartOf(until, asked);
        var none = Enum.GetValues<PartOfYear>().Where(p => !there.Contains(p) && p <= over).Select(Words).ToList();
        if (none.Count > 0)
            yield return $"No sample from the {Joined(none, "or the")} of these days.";
    }

    private static string Words(PartOfYear part) => part switch { PartOfYear.Beginning => "beginning", PartOfYear.Middle => "middle", _ => "end" };

    private static string Joined(List<string> words, string last = "and") =>
        words.Count == 1 ? words[0] : $"{string.Join(", ", words.Take(words.Count - 1))} {last} {words[^1]}";

    private static string Count(int n, string one) => n == 1 ? $"one {one}" : string.Create(CultureInfo.InvariantCulture, $"{n} {one}s");

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
