using System.Text;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Duties;
using CoopLessons.Documents.Calendars;
using Xunit;
using static CoopLessons.Web.Tests.Documents.SampleDuties;

namespace CoopLessons.Web.Tests.Documents;

public class Due_dates_in_a_calendar
{
    private static readonly Guid Wren = Guid.Parse("00000000-0000-0000-0000-00000000000a");
    private static readonly Guid ThisYear = Guid.Parse("00000000-0000-0000-0000-00000000000b");

    [Fact]
    public void Are_whole_days_that_block_nobodys_time()
    {
        var file = DutyCalendar.Write(Content(Notice with { Due = new DateOnly(2027, 12, 31) }));

        Assert.Equal("20271231", Assert.Single(CalendarLines.Values(file, "DTSTART;VALUE=DATE")));
        Assert.Equal("20280101", Assert.Single(CalendarLines.Values(file, "DTEND;VALUE=DATE")));
        Assert.Equal("TRANSPARENT", Assert.Single(CalendarLines.Values(file, "TRANSP")));
        Assert.Equal("CONFIRMED", Assert.Single(CalendarLines.Values(file, "STATUS")));
        Assert.Equal("20261125T153015Z", Assert.Single(CalendarLines.Values(file, "DTSTAMP")));
        Assert.Equal("-//CoopLessons//Duties//EN", Assert.Single(CalendarLines.Values(file, "PRODID")));
        Assert.Equal("2.0", Assert.Single(CalendarLines.Values(file, "VERSION")));
        Assert.Equal("Alder, due dates", CalendarLines.Text(Assert.Single(CalendarLines.Values(file, "X-WR-CALNAME"))));
    }

    [Fact]
    public void Say_when_why_by_which_source_and_that_law_changes()
    {
        var file = DutyCalendar.Write(Content(Notice with { Source = Rule with { Confirm = true } }));

        Assert.Equal(
            """
            When: by 1 July each school year
            Why this date: By 1 July.
            Source: § 100.10(b)(1); the co-op's own copy (statute text; 2026-11-25). Confirm this.
            Law changes: confirm with the state's own text or office. This is no legal advice.
            """.ReplaceLineEndings("\n"),
            CalendarLines.Text(CalendarLines.Values(file, "DESCRIPTION").First()));
        Assert.Equal("Notice, to the office (W)", CalendarLines.Text(Assert.Single(CalendarLines.Values(file, "SUMMARY"))));
    }

    [Theory]
    [InlineData(7, "-P7D")]
    [InlineData(60, "-P60D")]
    public void Remind_when_it_is_time_to_begin(int lead, string trigger)
    {
        var file = DutyCalendar.Write(Content(Notice with { Lead = lead }));

        Assert.Equal(trigger, Assert.Single(CalendarLines.Values(file, "TRIGGER")));
        Assert.Equal("DISPLAY", Assert.Single(CalendarLines.Values(file, "ACTION")));
    }

    [Theory]
    [InlineData(null)]
    [InlineData(0)]
    public void Do_not_remind_without_a_time_to_begin(int? lead) =>
        Assert.DoesNotContain("VALARM", Encoding.UTF8.GetString(DutyCalendar.Write(Content(Notice with { Lead = lead }))), StringComparison.Ordinal);

    [Fact]
    public void That_are_proposed_are_tentative() =>
        Assert.Equal("TENTATIVE", Assert.Single(CalendarLines.Values(DutyCalendar.Write(Content(Notice with { Tentative = true })), "STATUS")));

    [Fact]
    public void That_are_done_are_left_out()
    {
        var file = DutyCalendar.Write(Content(Notice with { Key = "done", Title = "done", Done = true }, Notice));

        Assert.Equal("Notice\\, to the office (W)", Assert.Single(CalendarLines.Values(file, "SUMMARY")));
    }

    [Fact]
    public void Are_the_same_bytes_whenever_and_in_whatever_order_they_are_given()
    {
        var other = Notice with { Key = "lark/notice", Title = "Notice (L)" };
        var file = DutyCalendar.Write(Content(Notice, other));

        Assert.Equal(file, DutyCalendar.Write(Content(other, Notice)));
        Assert.Equal(2, CalendarLines.Values(file, "UID").Distinct().Count());
    }

    [Fact]
    public void Keep_their_name_for_other_programs_when_date_and_words_change()
    {
        string Uid(CalendarDuty duty) => Assert.Single(CalendarLines.Values(DutyCalendar.Write(Content(duty)), "UID"));

        Assert.Equal(Uid(Notice), Uid(Notice with { Due = new DateOnly(2027, 6, 20), Title = "Something else", Lead = null }));
        Assert.NotEqual(Uid(Notice), Uid(Notice with { Key = "wren/plan" }));
        Assert.Matches("^[0-9a-f]{40}@cooplessons$", Uid(Notice));
    }

    // RFC 5545 § 3.1: lines end with CRLF and hold at most 75 octets; a fold may not cut a character of UTF-8.
    [Fact]
    public void Stand_in_lines_of_at_most_75_octets_that_cut_no_character()
    {
        var file = DutyCalendar.Write(Hostile());

        Assert.All(CalendarLines.Physical(file), line => Assert.InRange(line.Length, 1, 75));
        Assert.NotEmpty(CalendarLines.Characters(file));
        Assert.NotEqual(0xEF, file[0]);
    }

    // RFC 5545 § 3.3.11: backslash, comma, semicolon and line end are escaped, and nothing else is.
    [Fact]
    public void Give_every_text_back_once_unfolded_and_unescaped()
    {
        var content = Hostile();
        var file = DutyCalendar.Write(content);
        var titles = CalendarLines.Values(file, "SUMMARY").Select(CalendarLines.Text).ToList();
        // The reminder repeats the title; what belongs to the event ends with the caution.
        var texts = CalendarLines.Values(file, "DESCRIPTION").Select(CalendarLines.Text).Where(t => t.EndsWith(DutyCalendar.Caution, StringComparison.Ordinal)).ToList();

        Assert.Equal(content.Duties.Select(d => d.Title.Replace('\n', ' ')), titles);
        Assert.Equal(content.Duties.Select(d => d.Lines[0]), texts.Select(t => t[..t.IndexOf("\nSource: ", StringComparison.Ordinal)]));
        Assert.Equal(content.Name, CalendarLines.Text(Assert.Single(CalendarLines.Values(file, "X-WR-CALNAME"))));
    }

    [Fact]
    public void Let_no_text_begin_an_event_of_its_own()
    {
        var file = DutyCalendar.Write(Hostile());

        Assert.Equal(Hostile().Duties.Count, CalendarLines.Properties(file).Count(p => p is { Name: "BEGIN", Value: "VEVENT" }));
    }

    [Fact]
    public void Hold_nothing_invisible_that_turns_or_breaks_the_text()
    {
        var file = DutyCalendar.Write(Content(Notice with { Title = "a\u202Eb\u0007c\r\nd\uD800", Lines = ["e\u2066f\0g\r\nh"] }));

        Assert.Equal("abc d\uFFFD", CalendarLines.Text(CalendarLines.Values(file, "SUMMARY").Single()));
        Assert.StartsWith("efg\nh\nSource: ", CalendarLines.Text(CalendarLines.Values(file, "DESCRIPTION").First()), StringComparison.Ordinal);
    }

    [Fact]
    public void Name_the_child_only_as_the_family_asked()
    {
        var dated = Dated(new InTerms(4));

        Assert.Equal("Quarterly report, 1 of 4", CalendarDuty.Of(Wren, ThisYear, null, dated, false)!.Title);
        var named = CalendarDuty.Of(Wren, ThisYear, "W", dated, false)!;
        Assert.Equal("Quarterly report, 1 of 4 (W)", named.Title);
        Assert.True(named.Tentative);
        Assert.DoesNotContain("Wren", Encoding.UTF8.GetString(DutyCalendar.Write(Content(named))), StringComparison.Ordinal);
    }

    [Fact]
    public void Are_two_for_two_children_and_for_two_school_years()
    {
        var dated = Dated(new InTerms(4));
        string Key(Guid learner, Guid year) => CalendarDuty.Of(learner, year, null, dated, false)!.Key;

        Assert.Equal(3, new[] { Key(Wren, ThisYear), Key(ThisYear, ThisYear), Key(Wren, Wren) }.Distinct().Count());
    }

    [Fact]
    public void Say_nothing_from_which_a_birthday_could_be_read()
    {
        var birthday = Dated(new OnBirthday(11));
        var text = Encoding.UTF8.GetString(DutyCalendar.Write(Content(CalendarDuty.Of(Wren, ThisYear, "W", birthday, false)!)));

        Assert.Equal(new DateOnly(2027, 4, 9), birthday.Due);
        Assert.DoesNotContain("turns", text, StringComparison.Ordinal);
        Assert.DoesNotContain("in words", text, StringComparison.Ordinal);
        Assert.Contains("in words", Encoding.UTF8.GetString(DutyCalendar.Write(Content(CalendarDuty.Of(Wren, ThisYear, "W", Dated(new InTerms(2)), false)!))), StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_date_do_not_stand_in_it() =>
        Assert.Null(CalendarDuty.Of(Wren, ThisYear, "W", Dated(new InYear()), false));

    private static DatedDuty Dated(DueRule rule)
    {
        var duty = new Duty("report", DutyKind.Report, "Quarterly report", "in words", rule, Repeats.Yearly, FigureStatus.Required, Rule);
        var pathway = new Pathway("home", "Home instruction", "A paper.", Rule, new DutyAges(Rule), [], [], [duty], [], []);
        var span = new PathwaySpan("US-NY", "New York", pathway, new DateOnly(2024, 9, 2), null, SpanReason.Begins, null, PathwayChoices.None);
        var year = new TeachingCalendar(new DayRange(new DateOnly(2026, 8, 31), new DateOnly(2027, 6, 4)), Weekdays.MondayToFriday, []);
        return DutyList.Of(new LearnerFacts(Wren, "Wren", new DateOnly(2016, 4, 9), 5), [span], year, DutyDates.None)[0];
    }
}
