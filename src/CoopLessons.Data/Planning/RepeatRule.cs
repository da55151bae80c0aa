using CoopLessons.Core.Calendar;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Evaluation;

namespace CoopLessons.Data.Planning;

/// <summary>
/// On which days something comes back: a rule of RFC 5545 (3.3.10) over whole days. Rules by the hour, the minute or the
/// second are none of a family's days.
/// </summary>
public sealed record RepeatRule
{
    public const int Longest = 200;

    /// <summary>Days that one reading gives at most; more than a year of every day.</summary>
    public const int MostDays = 400;

    /// <summary>Steps of a rule without a day in them, after which it is taken to be over: 30 February never comes.</summary>
    private const int MostEmptySteps = 500;

    private readonly RecurrenceRule? _rule;

    private RepeatRule(string text) => (Text, _rule) = (text, text.Length == 0 ? null : new RecurrenceRule(text));

    /// <summary>The one day alone.</summary>
    public static RepeatRule Once { get; } = new("");

    /// <summary>As RFC 5545 writes it, in capitals; empty for a single day.</summary>
    public string Text { get; }

    /// <summary>Reads a rule, with or without "RRULE:" before it; nothing written means once.</summary>
    /// <param name="fault">A sentence that says what cannot be read and what to write; empty where there is none.</param>
    public static bool TryRead(string? text, out RepeatRule rule, out string fault)
    {
        rule = Once;
        var plain = (text ?? "").Trim().ToUpperInvariant();
        if (plain.StartsWith("RRULE:", StringComparison.Ordinal))
            plain = plain["RRULE:".Length..];
        fault = plain.Length == 0 ? "" : RepeatParts.Fault(plain);
        if (fault.Length > 0)
            return false;
        try
        {
            rule = new RepeatRule(plain);
            // A rule may be well formed and still say nothing that can be counted, which shows only when it is.
            rule.DaysIn(new DateOnly(2024, 1, 1), new DayRange(new DateOnly(2024, 1, 1), new DateOnly(2024, 1, 31)));
            return true;
        }
        catch (Exception e) when (e is ArgumentException or FormatException or InvalidOperationException or EvaluationException)
        {
            (rule, fault) = (Once, "This rule cannot be read. Write it like FREQ=WEEKLY;BYDAY=TH.");
            return false;
        }
    }

    /// <summary>The days of the range on which something takes place that begins on <paramref name="first"/>: ascending, at most <see cref="MostDays"/>.</summary>
    public IReadOnlyList<DateOnly> DaysIn(DateOnly first, DayRange range) =>
        range.Last < first ? [] : [.. From(first, range.First > first ? range.First : first).TakeWhile(d => d <= range.Last).Take(MostDays)];

    /// <summary>The next days from a date on, that date included; fewer where the rule ends.</summary>
    public IReadOnlyList<DateOnly> Next(DateOnly first, DateOnly from, int most) => [.. From(first, from > first ? from : first).Take(most)];

    private IEnumerable<DateOnly> From(DateOnly first, DateOnly from)
    {
        if (_rule is null)
        {
            if (from <= first)
                yield return first;
            yield break;
        }

        var repeated = new CalendarEvent { Start = new CalDateTime(first), RecurrenceRule = _rule };
        using var found = repeated.GetOccurrences(new CalDateTime(from), new EvaluationOptions { MaxUnmatchedIncrementsLimit = MostEmptySteps }).GetEnumerator();
        while (MovesOn(found))
            yield return DateOnly.FromDateTime(found.Current.Period.StartTime.Value);
    }

    private static bool MovesOn(IEnumerator<Occurrence> found)
    {
        try
        {
            return found.MoveNext();
        }
        catch (EvaluationException)
        {
            // Too many steps without a day, or past the last year that can be written.
            return false;
        }
    }
}
