using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Papers;
using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Web.Tests.Documents;

/// <summary>The law beside the invented year of <see cref="SampleReports"/>.</summary>
internal static class SampleLaw
{
    public static readonly DateOnly Begins = new(2020, 8, 1);
    public static readonly DateOnly Moves = new(2026, 11, 3);
    private static readonly string[] Codes =
        ["reading", "writing", "mathematics", "science", "history", "health", "art", "music", "movement", "home-arts"];

    /// <summary>One pathway of a place for the whole year.</summary>
    public static LawSection Of(string code, string pathway, int? grade = 4) => Of([Span(code, pathway, Begins, null)], grade);

    public static LawSection Of(IReadOnlyList<PathwaySpan> spans, int? grade = 4, string learner = "Wren", IReadOnlyList<string>? names = null, DateOnly? asOf = null)
    {
        var ledger = SampleReports.Ledger(names ?? SampleReports.EverydaySubjects, SampleReports.WholeYear, new DayRange(new(2026, 7, 1), SampleReports.WholeYear.Last));
        var question = new StandingQuestion(
            new LearnerFacts(SampleReports.Id(1), learner, new DateOnly(2016, 5, 2), grade), ledger, new Dictionary<DateOnly, bool>(), new Minutes(60),
            new TeachingCalendar(SampleReports.WholeYear, Weekdays.MondayToFriday, []), asOf ?? SampleReports.WholeYear.Last.AddDays(3));
        return LawSection.Of(question, [.. spans.Select(s => PathwayStanding.Of(question, s))], [])!;
    }

    public static PathwaySpan Span(string code, string pathway, DateOnly from, DateOnly? until, DateOnly? countsFrom = null, params string[] goals)
    {
        var place = Catalog.Of50AndDc[code]!;
        return Span(code, place.Name, place.Pathway(pathway)!, from, until, countsFrom, goals);
    }

    public static PathwaySpan Span(string code, string place, Pathway pathway, DateOnly from, DateOnly? until, DateOnly? countsFrom = null, params string[] goals)
    {
        var subjects = SubjectProposal.Of(pathway, [.. Codes.Select((c, i) => new CodedSubject(SampleReports.Id(100 + i), c))], []);
        return new PathwaySpan(
            code, place, pathway, from, until, from == Begins ? SpanReason.Begins : SpanReason.Moves, countsFrom,
            new PathwayChoices(goals.ToHashSet(), new Dictionary<string, decimal>(), subjects));
    }

    /// <summary>From Missouri to Pennsylvania in November, the affidavit a week later.</summary>
    public static LawSection Move(string learner = "Wren") => Of(
        [Span("US-MO", "home-school", Begins, Moves.AddDays(-1)), Span("US-PA", "home-education", Moves, null, Moves.AddDays(7))], learner: learner);

    /// <summary>A family's own pathway whose every text is as nobody should type it.</summary>
    public static LawSection Hostile()
    {
        var bad = SampleReports.HostileName;
        var source = new Source(bad + string.Concat(Enumerable.Repeat(" The river and its mill", 60)), Basis.Family, new DateOnly(2026, 3, 1));
        var pathway = new Pathway(
            "own", bad, bad, source, new DutyAges(source, From: 4),
            [.. Enumerable.Range(0, 30).Select(i => new StatuteSubject($"s{i}", i == 3 ? "=1+1" : $"{bad} {i}", true, i % 3 == 0 ? [.. Codes] : [], source))],
            [
                new AnyOf
                {
                    Id = "any", Name = bad, Status = FigureStatus.Required, Source = source,
                    Of =
                    [
                        new DaysRequirement { Id = "days", Name = new string('M', 200), Status = FigureStatus.Required, Source = source, Days = 4_000, MinutesADay = 61 },
                        new AllOf
                        {
                            Id = "all", Name = "@SUM(1,1)", Status = FigureStatus.Required, Source = source,
                            Of = [new HoursRequirement { Id = "hours", Name = "\u200F\u200F", Status = FigureStatus.Required, Source = source, Hours = 35_000_000 }],
                        },
                    ],
                },
                new JudgedRequirement { Id = "judged", Name = "🍞", Status = FigureStatus.Required, Source = source, Text = string.Concat(Enumerable.Repeat("Wheat 🍞 and \u05D3\u05D2\u05DF. ", 300)) },
            ],
            [], [], []);
        return Of([Span("", "your own", pathway, Moves, null)], learner: bad, names: [.. SampleReports.HostileSubjects]);
    }
}
