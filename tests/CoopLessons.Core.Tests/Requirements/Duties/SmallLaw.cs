using System.Globalization;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Duties;

namespace CoopLessons.Core.Tests.Requirements.Duties;

/// <summary>Pathways small enough to hold one duty or two, and the learners who stand under them.</summary>
internal static class SmallLaw
{
    public static readonly Source Somewhere = new("§ 1", Basis.Memory, new DateOnly(2026, 11, 25));

    /// <summary>Ten in the autumn of 2026, grade 5.</summary>
    public static readonly LearnerFacts Wren = new(Guid.Parse("00000000-0000-0000-0000-00000000000a"), "Wren", Day("2016-04-09"), 5);

    public static readonly TeachingCalendar Year = From("2026-08-31", "2027-06-04");

    public static DateOnly Day(string iso) => DateOnly.ParseExact(iso, "yyyy-MM-dd", CultureInfo.InvariantCulture);

    public static TeachingCalendar From(string first, string last, params Break[] breaks) =>
        new(new DayRange(Day(first), Day(last)), Weekdays.MondayToFriday, breaks);

    public static OnDate On(string monthDay, bool after = false, bool before = false, WeekendRule? weekend = null) =>
        new(MonthDay.TryParse(monthDay, out var date) ? date : throw new FormatException(monthDay), after, before, weekend);

    public static AfterEvent After(LegalEvent legal, int count, DueUnit unit = DueUnit.Days) => new(legal, count, unit);

    public static BeforeEvent Before(LegalEvent legal, int count, DueUnit unit = DueUnit.Days) => new(legal, count, unit);

    public static Duty Paper(DueRule due, Repeats repeats = Repeats.Yearly, string id = "paper") =>
        new(id, DutyKind.Notice, "a paper", "when it is due", due, repeats, FigureStatus.Required, Somewhere);

    public static Pathway Pathway(params Duty[] duties) =>
        new("home", "Home instruction", "A few papers.", Somewhere, new DutyAges(Somewhere), [], [], duties, [], []);

    public static PathwaySpan Under(Pathway pathway, string from = "2024-09-02", string? until = null, SpanReason because = SpanReason.Begins, string code = "US-NY") =>
        new(code, "a place", pathway, Day(from), until is null ? null : Day(until), because, null, PathwayChoices.None);

    public static RecordedEvent Told(LegalEvent legal, string on) => new(legal, Day(on));

    public static DutyDates Events(params RecordedEvent[] events) => DutyDates.None with { Events = events };

    public static DutyDates Own(string key, string date) => DutyDates.None with { SetByFamily = new Dictionary<string, DateOnly> { [key] = Day(date) } };

    /// <summary>The list of a learner under one pathway.</summary>
    public static IReadOnlyList<DatedDuty> List(PathwaySpan span, TeachingCalendar? year = null, DutyDates? dates = null, LearnerFacts? learner = null) =>
        DutyList.Of(learner ?? Wren, [span], year ?? Year, dates ?? DutyDates.None);

    /// <summary>The one duty there is.</summary>
    public static DatedDuty Only(Duty duty, PathwaySpan? span = null, TeachingCalendar? year = null, DutyDates? dates = null, LearnerFacts? learner = null) =>
        Assert.Single(List((span ?? Under(Pathway())) with { Pathway = Pathway(duty) }, year, dates, learner));
}
