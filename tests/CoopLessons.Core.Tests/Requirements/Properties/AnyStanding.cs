using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Core.Tests.Requirements.Properties;

/// <summary>Any log of <see cref="AnyLog"/> held against pathways that together hold every kind of figure.</summary>
internal static class AnyStanding
{
    public static readonly DayRange School = new(new DateOnly(2026, 8, 3), new DateOnly(2027, 5, 28));

    /// <summary>The year runs, and the log lies before this day.</summary>
    public static readonly DateOnly Running = new(2027, 1, 11);

    /// <summary>The year is over: nothing is forecast.</summary>
    public static readonly DateOnly Over = new(2027, 7, 15);

    private static readonly (string Code, string Pathway)[] Laws =
    [
        ("US-MO", "home-school"), ("US-NY", "home-instruction"), ("US-CO", "home-based"), ("US-NC", "home-school"), ("US-PA", "home-education"), ("US-FL", "private-school"), ("US-IA", "cpi-licensed"),
    ];

    public static IReadOnlyList<PathwayStanding> Of(IReadOnlyList<LoggedEntry> log, DateOnly asOf) => [.. Laws.Select(law => Under(log, Span(law.Code, law.Pathway), asOf))];

    public static PathwayStanding Under(IReadOnlyList<LoggedEntry> log, PathwaySpan span, DateOnly asOf)
    {
        var ledger = HoursLedger.Of(AlderLog.Wren, AlderLog.Subjects, LegalWindow.Reach([span], School), log);
        var wren = new LearnerFacts(AlderLog.Wren, "Wren", new DateOnly(2016, 3, 1), 5);
        return PathwayStanding.Of(new StandingQuestion(wren, ledger, new Dictionary<DateOnly, bool>(), new Minutes(240), new TeachingCalendar(School, Weekdays.MondayToFriday, []), asOf), span);
    }

    public static PathwaySpan Span(string code, string pathway)
    {
        var whole = Catalog.Of50AndDc[code]!;
        var law = whole.Pathway(pathway)!;
        var core = law.Subjects.ToDictionary(s => s.Id, _ => (IReadOnlySet<Guid>)new HashSet<Guid> { AlderLog.Arithmetic.Id, AlderLog.Science.Id });
        return new PathwaySpan(code, whole.Name, law, School.First, null, SpanReason.Begins, null, PathwayChoices.None with { Subjects = core });
    }

    /// <summary>A pathway of the family's own with the figures.</summary>
    public static PathwaySpan Own(params Requirement[] figures) => new(
        "", "your own", new Pathway("own", "Our own way", "What we set ourselves.", Ours, new DutyAges(Ours), [], figures, [], [], []), School.First, null, SpanReason.Begins, null, PathwayChoices.None);

    public static DaysRequirement Days(int days) => new() { Id = "days", Name = "days", Status = FigureStatus.Required, Source = Ours, Days = days };

    public static HoursRequirement Hours(int hours) => new() { Id = "hours", Name = "hours", Status = FigureStatus.Required, Source = Ours, Hours = hours };

    public static AnyOf EitherOf(params Requirement[] of) => new() { Id = "either", Name = "either", Status = FigureStatus.Required, Source = Ours, Of = of };

    /// <summary>Every line of a standing, those inside others too.</summary>
    public static IEnumerable<RequirementStanding> All(this PathwayStanding standing) => standing.Lines.Concat(standing.Others).SelectMany(WithParts);

    /// <summary>What was measured, line by line, with its figure's name.</summary>
    public static IReadOnlyList<(string Line, int Measured)> Measured(this IEnumerable<PathwayStanding> standings, Func<Requirement, bool> which) =>
        [.. standings.SelectMany(s => s.All().Where(l => l.Measured is not null && which(l.Requirement)).Select(l => ($"{s.Span.Code} {l.Requirement.Id} {l.Part}", l.Measured!.Value.Value)))];

    private static Source Ours => new("our own plan", Basis.Family, new DateOnly(2026, 8, 1));

    private static IEnumerable<RequirementStanding> WithParts(RequirementStanding line) => line.Parts.SelectMany(WithParts).Prepend(line);
}
