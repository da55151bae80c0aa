using CoopLessons.Core.Credits;
using CoopLessons.Core.Hours;
using static CoopLessons.Core.Tests.AlderLog;
using static CoopLessons.Core.Tests.Credits.CourseClaims;

namespace CoopLessons.Core.Tests.Credits;

public class A_course_told_from_the_log
{
    private static CourseInLog Facts(params LoggedEntry[] log) =>
        new("Biology", CourseLedger.Of(WrensLedger(log), [Course(Biology, All(Science))], NoUnits)[Biology], [("Science", new Minutes(90))], [], [], [], []);

    [Fact]
    public void Says_hours_days_and_dates() =>
        Assert.Equal(["Biology took 1:30 hours on 2 days from 3 November 2026 to 5 November 2026."], CourseDraft.Of(Facts(Entry(1, Tuesday, 60), Entry(2, Tuesday.AddDays(2), 30))));

    [Fact]
    public void Names_units_books_and_work()
    {
        var lines = CourseDraft.Of(Facts(Entry(1, Tuesday, 60)) with
        {
            Units = ["From Grain to Loaf"],
            Books = ["Yeast and Its Kin"],
            Deeds = ["Grinding wheat by hand.", "Dough under the microscope"],
            Elsewhere = [new StudyElsewhere(Year, new Minutes(600), "Laboratory days", "county extension")],
        });
        Assert.Equal(
            [
                "Biology took 1:00 hours on 1 day from 3 November 2026 to 3 November 2026.",
                "Unit studies: From Grain to Loaf.",
                "Read: Yeast and Its Kin.",
                "Work: Grinding wheat by hand; Dough under the microscope.",
                "Laboratory days with county extension, 10:00 hours, 1 August 2026 to 31 May 2027.",
            ],
            lines);
    }

    [Fact]
    public void Is_empty_where_nothing_was_logged() => Assert.Empty(CourseDraft.Of(Facts()));

    [Fact]
    public void Names_a_dozen_of_a_kind_at_most() =>
        Assert.EndsWith("; and 3 more.", CourseDraft.Of(Facts(Entry(1, Tuesday, 60)) with { Books = [.. Enumerable.Range(1, 15).Select(n => $"Volume {n}")] })[^1], StringComparison.Ordinal);
}
