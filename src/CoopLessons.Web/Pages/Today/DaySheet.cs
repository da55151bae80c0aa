using CoopLessons.Data.Families;
using CoopLessons.Data.Planning;

namespace CoopLessons.Web.Pages.Today;

/// <summary>One line of the day for somebody who stands in: a thing to do, a look, or an appointment.</summary>
/// <param name="From">Minutes after midnight; null for what has no hour.</param>
/// <param name="Until">When to stop; null for a look and for what has no hour.</param>
public sealed record SheetLine(int? From, int? Until, StripLine? Line, Look? Look, Appointment? Appointment);

/// <summary>A number under which somebody can be reached.</summary>
public sealed record SheetPhone(string Name, string Number);

/// <summary>A day told to a grown-up who does not know it: one page to take along.</summary>
public sealed record DaySheet(
    DateOnly Date, IReadOnlyList<Learner> Learners, IReadOnlyList<SheetLine> Lines, IReadOnlyList<SheetPhone> Phones, IReadOnlyDictionary<Guid, string> Names)
{
    // What fits on one printed page in ordinary print; more is set smaller, in two columns.
    private const int OrdinarySigns = 3000;

    /// <summary>Whether there is so much to read that a printed page holds it only in small print.</summary>
    public bool IsLong => Lines.Sum(l => l.Line is { } line ? 150 + SignsOf(line) : 80) > OrdinarySigns;

    /// <summary>What is let go, moved away or done is not on it, nor what rests while somebody is ill; what has no hour comes last.</summary>
    public static DaySheet Of(DayStrip strip, IReadOnlyList<Appointment> appointments, IReadOnlyList<TeachingAdult> adults)
    {
        var planned = strip.Items.Where(i => i.Look is not null || i.Line is { } l && (l.IsOpen && !l.Rests || l.IsNotDone))
            .Select(i => i.Look is { } look
                ? new SheetLine(look.At, null, null, look, null)
                : new SheetLine(i.Line!.Session.StartsAt, i.Line.Session.StartsAt + i.Line.Work.Minutes, i.Line, null, null));
        var fixedTimes = appointments.Where(a => a.IsOn(strip.Date)).Select(a => new SheetLine(a.StartsAt, a.Time.To, null, null, a));
        return new DaySheet(
            strip.Date, strip.Learners,
            // The order of the strip holds among those of one minute; an appointment comes before them.
            [.. fixedTimes.Concat(planned).OrderBy(l => l.From ?? int.MaxValue)],
            [.. adults.Where(a => a.Phone.Length > 0).Select(a => new SheetPhone(a.Name, a.Phone))],
            strip.Learners.ToDictionary(l => l.Id, l => l.Name).Concat(adults.ToDictionary(a => a.Id, a => a.Name)).DistinctBy(n => n.Key).ToDictionary());
    }

    private static int SignsOf(StripLine line) => line.Doing.Does.Length + line.Parts.Sum(p => p.Does.Length)
        + line.Doing.Details.Hazards.Sum(h => h.Caution.Length) + line.Doing.Details.Supplies.Sum(s => s.Name.Length + 10) + line.Cautions.Count * 200;

    /// <summary>Who is taken up by an appointment; empty where nobody is named.</summary>
    public string WhoHas(Appointment appointment) =>
        DayWords.Names(appointment.Learners.Concat(appointment.Adults).Where(Names.ContainsKey).Select(id => Names[id]));

    /// <summary><c>The dough rises until about now: see whether it is ready.</c></summary>
    public static string Waited(Look look) => look.For.Length == 0
        ? "See whether it is ready."
        : $"{char.ToUpperInvariant(look.For[0])}{look.For[1..]}{(look.Since is { } since ? $", since {since.InWords()}," : "")} until about now: see whether it is ready.";
}
