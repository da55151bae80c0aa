using CoopLessons.Core.Calendar;
using CoopLessons.Core.Families;
using CoopLessons.Core.Hours;

namespace CoopLessons.Web.Tests.Documents;

/// <summary>Invented reports of the Millrace co-op, counted from invented logs by the ledger itself.</summary>
internal static class SampleReports
{
    public static readonly string[] EverydaySubjects =
        ["Reading", "Language arts", "Mathematics", "Science", "Social studies", "Health", "Art", "Music", "Physical education", "Home economics"];

    public static readonly DayRange WholeYear = new(new DateOnly(2026, 8, 3), new DateOnly(2027, 7, 30));

    /// <summary>Wren's year: twelve months, ten subjects, odd minutes, several places, touches and days under the minimum.</summary>
    public static HoursReport Year() => Of("Alder", "Wren", EverydaySubjects, WholeYear);

    public static HoursReport Autumn() => Of("Birch", "Lark", EverydaySubjects[..6], new DayRange(new DateOnly(2026, 9, 1), new DateOnly(2026, 12, 18)));

    /// <summary>Names and a policy as nobody should type them, and more subjects than a sheet holds.</summary>
    public static HoursReport Hostile() => Of(HostileName, HostileName, HostileSubjects, WholeYear, string.Concat(Enumerable.Repeat("Wheat 🍞 and \u05D3\u05D2\u05DF. ", 500)));

    public static string HostileName { get; } = "Wren 👩‍👩‍👧 \u202Etfel\u202C \u05E9\u05DC\u05D5\u05DD \u0007\u0000 \uD800 é " + new string('W', 90);

    public static IReadOnlyList<string> HostileSubjects { get; } =
        ["=1+1", "+", "@SUM(A1)", "tab\tand\nline", new string('M', 120), string.Concat(Enumerable.Repeat("The river and its mill ", 60)), "\u200F\u200F", "🍞",
            .. Enumerable.Range(1, 60).Select(i => $"Subject {i}")];

    public static HoursReport Empty() =>
        HoursReport.Of(
            HoursLedger.Of(Id(1), [], WholeYear, []),
            SchoolDays.Of(HoursLedger.Of(Id(1), [], WholeYear, []), new Minutes(60), new Dictionary<DateOnly, bool>()),
            new ReportHeading("Cedar", "Heron", "2026–2027", "", new DateOnly(2026, 8, 2)));

    public static HoursReport Of(
        string family, string learner, IReadOnlyList<string> names, DayRange period, string policy = "We count lessons, reading aloud and projects; chores and play are not counted.")
    {
        var ledger = Ledger(names, period);
        var marks = new Dictionary<DateOnly, bool> { [period.First] = true };
        return HoursReport.Of(
            ledger, SchoolDays.Of(ledger, new Minutes(60), marks), new ReportHeading(family, learner, "2026–2027", policy, period.Last.AddDays(3)));
    }

    /// <summary>The ledger behind a report: the learner is <c>Id(1)</c>, the subjects are <c>Id(100)</c> and on.</summary>
    /// <param name="reach">Days over which the ledger counts, where they are more than the period of the log.</param>
    public static HoursLedger Ledger(IReadOnlyList<string> names, DayRange period, DayRange? reach = null)
    {
        var subjects = names.Select((name, i) => new Subject(Id(100 + i), name)).ToList();
        return HoursLedger.Of(Id(1), subjects, reach ?? period, Log(subjects, period));
    }

    private static IEnumerable<LoggedEntry> Log(List<Subject> subjects, DayRange period)
    {
        var number = 0;
        foreach (var day in period.Days().Where(d => d.DayOfWeek is not (DayOfWeek.Saturday or DayOfWeek.Sunday) && (d.Month is not 7 || d.Day < 10)))
        {
            number++;
            var a = subjects[number % subjects.Count].Id;
            var b = subjects[(number * 7 + 3) % subjects.Count].Id;
            IReadOnlyList<SubjectWeight> split = a == b ? [new(a, 1)] : [new(a, 2), new(b, 1)];
            IReadOnlyList<Guid> touches = number % 9 == 0 ? [subjects[(number + 1) % subjects.Count].Id] : [];
            var minutes = number % 11 == 0 ? 25 : 151 + number % 47;
            yield return Entry(number, day, (Place)(number % 4), minutes, split, touches, new TimeOnly(9, 0));
            // The second lesson of every sixtieth day begins before the first ends: a question for the parent.
            if (number % 60 == 0)
                yield return Entry(10_000 + number, day, Place.Home, 40, [new(b, 1)], [], new TimeOnly(10, 0));
        }
    }

    private static LoggedEntry Entry(
        int number, DateOnly day, Place place, int minutes, IReadOnlyList<SubjectWeight> split, IReadOnlyList<Guid> touches, TimeOnly start) =>
        new(Id(100_000 + number), 1, day, start, "From Grain to Loaf", place, [new LearnerTime(Id(1), new Minutes(minutes))], split, touches);

    public static Guid Id(int number) => new(number, 0, 0, [0, 0, 0, 0, 0, 0, 0, 1]);
}
