using System.Globalization;
using CoopLessons.Data.Planning;

namespace CoopLessons.Web.Pages.Week.Layout;

/// <summary>
/// What a parent said of single sessions before a week is laid out, as a form carries it: <c>leave:KEY</c>, <c>next:KEY</c>,
/// <c>short:KEY:MINUTES</c> or <c>help:KEY</c>.
/// </summary>
public static class AskForm
{
    public const int MostChoices = 200;
    private const int LeastMinutes = 5;
    private const int MostMinutes = 480;

    /// <summary>Null where a choice cannot be read: such a form was not made by the page.</summary>
    public static WeekAsk? Read(IReadOnlyList<string> choices)
    {
        if (choices.Count > MostChoices)
            return null;
        var (leave, next, help) = (new HashSet<string>(StringComparer.Ordinal), new HashSet<string>(StringComparer.Ordinal), new HashSet<string>(StringComparer.Ordinal));
        var shorter = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var choice in choices)
        {
            var parts = choice.Split(':');
            if (parts.Length < 2 || !Guid.TryParseExact(parts[1], "N", out _))
                return null;
            switch (parts[0])
            {
                case "leave" when parts.Length == 2:
                    leave.Add(parts[1]);
                    break;
                case "next" when parts.Length == 2:
                    next.Add(parts[1]);
                    break;
                case "help" when parts.Length == 2:
                    help.Add(parts[1]);
                    break;
                case "short" when parts.Length == 3 && int.TryParse(parts[2], NumberStyles.None, CultureInfo.InvariantCulture, out var minutes)
                    && minutes is >= LeastMinutes and <= MostMinutes:
                    shorter[parts[1]] = minutes;
                    break;
                default:
                    return null;
            }
        }

        return WeekAsk.Plain with { LeftOut = leave, NextWeek = next, Helped = help, Shorter = shorter };
    }

    /// <summary>The same as a form carries it.</summary>
    public static IReadOnlyList<string> Write(WeekAsk ask) =>
    [
        .. ask.LeftOut.Order(StringComparer.Ordinal).Select(k => $"leave:{k}"),
        .. ask.NextWeek.Order(StringComparer.Ordinal).Select(k => $"next:{k}"),
        .. ask.Helped.Order(StringComparer.Ordinal).Select(k => $"help:{k}"),
        .. ask.Shorter.OrderBy(s => s.Key, StringComparer.Ordinal).Select(s => string.Create(CultureInfo.InvariantCulture, $"short:{s.Key}:{s.Value}")),
    ];

    /// <summary>About two thirds of a length, in whole fives, never the whole; null where there is nothing to shorten.</summary>
    public static int? Shortened(int minutes) => minutes / 15 * 10 is var shorter && shorter >= 10 && shorter < minutes ? shorter : null;
}
