using CoopLessons.Core.Calendar;
using CoopLessons.Core.Families;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Core.Tests.Requirements;

/// <summary>
/// A pen for a learner's log over a law's year: so many days of so many minutes, on every day from a first one on, week
/// ends too, so that the arithmetic stays plain.
/// </summary>
internal sealed class StateLog
{
    /// <summary>1 July 2025 to 30 June 2026.</summary>
    public static readonly DayRange Year = new(new DateOnly(2025, 7, 1), new DateOnly(2026, 6, 30));

    /// <summary>The year is over, and the standing is asked for.</summary>
    public static readonly DateOnly Afterwards = new(2026, 7, 15);

    /// <summary>A subject that counts as core wherever a law has a core.</summary>
    public static readonly Subject Core = AlderLog.Arithmetic;

    public static readonly Subject Other = AlderLog.Art;

    private static readonly Subject[] CoreSubjects = [AlderLog.Reading, AlderLog.Arithmetic, AlderLog.Science, AlderLog.Writing];

    private readonly List<LoggedEntry> _log = [];

    public IReadOnlyList<LoggedEntry> Entries => _log;
    public Dictionary<DateOnly, bool> Marks { get; } = [];
    public Minutes FamilyMinimum { get; init; } = new(60);
    public TeachingCalendar School { get; init; } = new(Year, Weekdays.MondayToFriday, []);
    public PathwayChoices Choices { get; init; } = PathwayChoices.None;

    /// <summary>So many days of so many minutes each, from the first day on without a gap.</summary>
    public StateLog Write(DateOnly first, int days, int minutes, Subject? subject = null, Place place = Place.Home)
    {
        for (var day = 0; day < days; day++)
            _log.Add(AlderLog.Entry(_log.Count + 1, first.AddDays(day), minutes, subject ?? Core, place: place));
        return this;
    }

    /// <summary>The same on teaching days of the school year alone, so many as there are up to the last day.</summary>
    public StateLog Teach(DateOnly first, DateOnly last, int minutes, Subject? subject = null)
    {
        foreach (var day in School.TeachingDays().Where(d => d >= first && d <= last))
            _log.Add(AlderLog.Entry(_log.Count + 1, day, minutes, subject ?? Core));
        return this;
    }

    /// <summary>Wren, born on the day, in the grade of this school year.</summary>
    public static LearnerFacts Wren(DateOnly born, int? grade) => new(AlderLog.Wren, "Wren", born, grade);

    /// <summary>Wren at an age that she has on all days of <see cref="Year"/>.</summary>
    public static LearnerFacts Aged(int age, int? grade = null) => Wren(new DateOnly(2025 - age, 7, 1), grade);

    /// <summary>Wren in a grade, six years older than its number.</summary>
    public static LearnerFacts InGrade(int grade) => Aged(grade + 6, grade);

    public PathwayStanding Under(string code, string pathway, LearnerFacts learner, DateOnly? asOf = null, Func<PathwaySpan, PathwaySpan>? span = null)
    {
        var whole = Catalog.Of50AndDc[code]!;
        var stands = new PathwaySpan(code, whole.Name, whole.Pathway(pathway)!, School.Year.First, null, SpanReason.Begins, null, Choices with { Subjects = CoreOf(whole.Pathway(pathway)!) });
        return Under(span?.Invoke(stands) ?? stands, learner, asOf);
    }

    public PathwayStanding Under(PathwaySpan span, LearnerFacts learner, DateOnly? asOf = null)
    {
        var ledger = HoursLedger.Of(learner.Id, AlderLog.Subjects, LegalWindow.Reach([span], School.Year), _log);
        return PathwayStanding.Of(new StandingQuestion(learner, ledger, Marks, FamilyMinimum, School, asOf ?? Afterwards), span);
    }

    // Whatever the statute names in a pool is met by the four subjects of reading, arithmetic, science and writing.
    private static Dictionary<string, IReadOnlySet<Guid>> CoreOf(Pathway pathway) =>
        pathway.Subjects.ToDictionary(s => s.Id, _ => (IReadOnlySet<Guid>)CoreSubjects.Select(s => s.Id).ToHashSet());
}

/// <summary>Looking up one figure of a standing, and what holds of it.</summary>
internal static class StandingReading
{
    /// <summary>The figure with the id: what counts, what does not, and alternatives inside.</summary>
    public static RequirementStanding Line(this PathwayStanding standing, string id) =>
        standing.Lines.Concat(standing.Others).SelectMany(l => l.Parts.Prepend(l).Concat(l.Parts.SelectMany(p => p.Parts))).First(l => l.Requirement.Id == id);

    /// <summary>Met with so many minutes, days or months.</summary>
    public static void AssertMet(this RequirementStanding line, int measured)
    {
        Assert.Equal((Verdict.Met, measured), (line.Verdict, line.Measured!.Value.Value));
        Assert.Equal(0, line.Missing!.Value.Value);
    }

    /// <summary>Not met when all is over: so many are there, so many are missing.</summary>
    public static void AssertShort(this RequirementStanding line, int measured, int missing) =>
        Assert.Equal((Verdict.NotMet, measured, missing), (line.Verdict, line.Measured!.Value.Value, line.Missing!.Value.Value));

    public static void AssertNotAsked(this RequirementStanding line)
    {
        Assert.Equal(Verdict.NotAsked, line.Verdict);
        Assert.Null(line.Measured);
    }
}
