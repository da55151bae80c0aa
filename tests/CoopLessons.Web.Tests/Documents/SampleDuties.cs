using CoopLessons.Core.Requirements;
using CoopLessons.Documents.Calendars;

namespace CoopLessons.Web.Tests.Documents;

/// <summary>Invented calendars of the Millrace co-op.</summary>
internal static class SampleDuties
{
    public static readonly DateTimeOffset Written = new(2026, 11, 25, 9, 30, 15, TimeSpan.FromHours(-6));

    public static readonly Source Rule = new("§ 100.10(b)(1); the co-op's own copy", Basis.Statute, new DateOnly(2026, 11, 25));

    public static CalendarDuty Notice { get; } =
        new("wren/notice", new DateOnly(2027, 7, 1), "Notice, to the office (W)", ["When: by 1 July each school year", "Why this date: By 1 July."], Rule, Lead: 7);

    /// <summary>Texts as nobody should type them, none of which may cut a line, end a value or start a property.</summary>
    public static IReadOnlyList<string> HostileTexts { get; } =
    [
        "a, b; c \\ d \\n e \\, f \\; g \\\\ h: i",
        "line\nafter line\n\nEND:VEVENT\nBEGIN:VEVENT",
        string.Concat(Enumerable.Repeat("🍞🌾", 150)),
        new string('x', 300),
        string.Concat(Enumerable.Repeat("é", 300)),
        "👩‍👩‍👧 bread",
        "\u200F\u05E9\u05DC\u05D5\u05DD\u200E, \u05D3\u05D2\u05DF;",
        "\"quoted\"; 'and' <not> & %20 =0D=0A ^n",
        "a b c d e f g h i j k l m n o p q r s t u v w x y z and once more, a b c d e f g",
    ];

    public static CalendarContent Content(params CalendarDuty[] duties) => new("Alder, due dates", Written, duties);

    /// <summary>Each hostile text as a title and as a paragraph, and moved along by up to five characters so that it folds elsewhere.</summary>
    public static CalendarContent Hostile() => new(
        HostileTexts[0],
        Written,
        [.. HostileTexts.SelectMany((text, i) => Enumerable.Range(0, 6).Select(n => Notice with
        {
            Key = $"{i}/{n}",
            Due = new DateOnly(2027, 1, 1).AddDays(6 * i + n),
            Title = new string('-', n) + text,
            Lines = [new string('-', n) + text],
        }))]);
}
