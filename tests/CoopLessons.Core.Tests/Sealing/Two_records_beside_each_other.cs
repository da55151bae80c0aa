using CoopLessons.Core.Hours;
using CoopLessons.Core.Sealing;
using static CoopLessons.Core.Tests.AlderLog;

namespace CoopLessons.Core.Tests.Sealing;

public class Two_records_beside_each_other
{
    private static readonly LoggedEntry Bread = AlderYear.Bread;
    private static readonly LoggedEntry Reading = AlderYear.Reading;

    private static string[] Between(YearRecord was, YearRecord now) => [.. RecordDifferences.Between(was, now).Select(d => d.Sentence)];

    private static LoggedEntry Lasting(LoggedEntry entry, int minutes) => entry with { Learners = [new LearnerTime(Wren, new Minutes(minutes))] };

    [Fact]
    public void Say_nothing_where_they_are_alike() => Assert.Empty(Between(AlderYear.Record(), AlderYear.Record()));

    [Fact]
    public void Name_one_minute_and_the_sums_that_follow() => Assert.Equal(
        [
            "3 November 2026, Baked bread: 40 minutes in the sealed record, 41 in the log now",
            "In all: 95 minutes in the sealed record, 96 in the log now",
            "Science in all: 13 minutes in the sealed record, 14 in the log now",
        ],
        Between(AlderYear.Record(), AlderYear.Record(Lasting(Bread, 41), Reading)));

    [Fact]
    public void Name_what_is_missing_and_what_came() => Assert.Equal(
        [
            "3 November 2026, Baked bread: nothing in the sealed record, 40 minutes, counted as Arithmetic 27, Science 13 in the log now",
            "4 November 2026, Read by the brook: 55 minutes, counted as Reading 55 in the sealed record, nothing in the log now",
        ],
        RecordDifferences.Between(AlderYear.Record(Reading), AlderYear.Record(Bread)).Where(d => !d.Follows && d.About.Contains(',', StringComparison.Ordinal)).Select(d => d.Sentence));

    [Fact]
    public void Name_each_field_of_an_entry()
    {
        (LoggedEntry Changed, string Was, string Now)[] all =
        [
            (Bread with { Date = Tuesday.AddDays(2) }, "3 November 2026", "5 November 2026"),
            (Bread with { What = "Baked rolls" }, "“Baked bread”", "“Baked rolls”"),
            (Bread with { Start = null }, "began 09:00", "began at no time"),
            (Bread with { Place = Place.Coop }, "at home", "at the co-op"),
            (Bread with { Split = [1.Of(Arithmetic), 1.Of(Science)] }, "counted as Arithmetic 27, Science 13", "counted as Arithmetic 20, Science 20"),
            (Bread with { Touches = [] }, "met in passing: Art", "met in passing: none"),
            (Bread with { Revision = 2 }, "writing 1", "writing 2"),
        ];
        foreach (var (changed, was, now) in all)
        {
            var found = RecordDifferences.Between(AlderYear.Record(), AlderYear.Record(changed, Reading));
            Assert.Contains(found, d => (d.About, d.Was, d.Now) == ("3 November 2026, Baked bread", was, now));
        }
    }

    [Fact]
    public void Name_marks_books_pieces_names_and_choices()
    {
        var was = AlderYear.Record();
        var now = was with
        {
            DayMarks = [new RecordDayMark(Tuesday, false)],
            Reading = [was.Reading[0] with { Ended = Tuesday }],
            Pieces = [was.Pieces[0] with { Caption = "Our loaf" }],
            Learner = "Finch",
            MinimumDay = 90,
            Pathways = [],
        };
        Assert.Equal(
            [
                "Learner: Wren in the sealed record, Finch in the log now",
                "Minimum day: 60 minutes in the sealed record, 90 minutes in the log now",
                "3 November 2026: marked as a school day in the sealed record, marked as no school day in the log now",
                "The Miller’s Year, begun 3 November 2026: went on after the year in the sealed record, ended 3 November 2026 in the log now",
                "3 November 2026, a piece with the caption “My loaf”: content aaaaaaaaaaaa, “My loaf” in the sealed record, content aaaaaaaaaaaa, “Our loaf” in the log now",
                "Pathway 1: Missouri: Home school, The whole year. Hours: 1:35 hours of 1,000 hours, not met in the sealed record, nothing in the log now",
            ],
            Between(was, now));
    }

    [Fact]
    public void Say_nothing_of_a_book_that_ended_after_the_year()
    {
        var facts = AlderYear.Facts(Bread);
        var later = facts with { Reading = [facts.Reading[0] with { EndedOn = Year.Last.AddDays(20), Unfinished = true }] };
        Assert.Empty(Between(facts.Record(AlderYear.Heading), later.Record(AlderYear.Heading)));
    }
}
