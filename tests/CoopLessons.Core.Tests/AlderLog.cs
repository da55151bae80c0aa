using CoopLessons.Core.Families;
using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Tests;

/// <summary>The Alders of the Millrace co-op: two learners, five subjects in the family's own order, and a pen for their log.</summary>
internal static class AlderLog
{
    public static readonly Guid Wren = Id(901);
    public static readonly Guid Finch = Id(902);

    public static readonly Subject Reading = new(Id(801), "Reading");
    public static readonly Subject Arithmetic = new(Id(802), "Arithmetic");
    public static readonly Subject Science = new(Id(803), "Science");
    public static readonly Subject Writing = new(Id(804), "Writing");
    public static readonly Subject Art = new(Id(805), "Art");

    public static readonly IReadOnlyList<Subject> Subjects = [Reading, Arithmetic, Science, Writing, Art];

    /// <summary>1 August 2026 to 31 May 2027.</summary>
    public static readonly Core.Calendar.DayRange Year = new(new DateOnly(2026, 8, 1), new DateOnly(2027, 5, 31));

    public static readonly DateOnly Tuesday = new(2026, 11, 3);

    public static Guid Id(int number) => new(number.ToString("x32", System.Globalization.CultureInfo.InvariantCulture));

    /// <summary>An entry of Wren's in one subject, unless the caller says otherwise.</summary>
    public static LoggedEntry Entry(
        int id,
        DateOnly date,
        int minutes,
        Subject? subject = null,
        TimeOnly? start = null,
        Place place = Place.Home,
        IReadOnlyList<SubjectWeight>? split = null,
        IReadOnlyList<Guid>? touches = null,
        IReadOnlyList<LearnerTime>? learners = null,
        int revision = 1) =>
        new(
            Id(id),
            revision,
            date,
            start,
            "Grinding wheat by hand",
            place,
            learners ?? [new LearnerTime(Wren, new Minutes(minutes))],
            split ?? [new SubjectWeight((subject ?? Science).Id, 1)],
            touches ?? []);

    public static SubjectWeight Of(this int weight, Subject subject) => new(subject.Id, weight);

    public static TimeOnly At(int hour, int minute = 0) => new(hour, minute);

    public static HoursLedger WrensLedger(params LoggedEntry[] log) => HoursLedger.Of(Wren, Subjects, Year, log);

    public static SchoolDays WithoutMarks(this HoursLedger ledger, int minimum) =>
        SchoolDays.Of(ledger, new Minutes(minimum), new Dictionary<DateOnly, bool>());
}
