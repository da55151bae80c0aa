using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Duties;
using CsCheck;
using static CoopLessons.Core.Tests.Requirements.Duties.SmallLaw;

namespace CoopLessons.Core.Tests.Requirements.Duties;

public class The_later_or_the_earlier_of_dates
{
    // 8 NYCRR § 100.10(c)(2): the plan within four weeks of receiving the form or by August 15, whichever is later.
    private static readonly Duty Plan = Paper(new LaterOf([On("08-15"), After(LegalEvent.FormReceived, 4, DueUnit.Weeks)]), id: "plan") with { Lead = 30 };

    [Fact]
    public void Is_the_fixed_date_when_the_form_came_early()
    {
        var plan = Only(Plan, dates: Events(Told(LegalEvent.FormReceived, "2026-07-09")));

        Assert.Equal((Day("2026-08-15"), Day("2026-07-16")), (plan.Due, plan.BeginBy));
        Assert.Equal("By 15 August or 4 weeks after the office's form reached you on 9 July (6 August), whichever is later.", plan.Why);
    }

    [Fact]
    public void Is_counted_from_the_form_when_it_came_late() =>
        Assert.Equal(Day("2026-08-26"), Only(Plan, dates: Events(Told(LegalEvent.FormReceived, "2026-07-29"))).Due);

    [Fact]
    public void Is_unknown_while_one_part_is_but_tells_the_known_one()
    {
        var plan = Only(Plan);

        Assert.Equal((null, null, LegalEvent.FormReceived, DueOrigin.None), (plan.Due, plan.BeginBy, plan.Missing, plan.Origin));
        Assert.Equal("Tell the day on which the office's form reaches you: due by 15 August or 4 weeks after the office's form reaches you, whichever is later.", plan.Why);
    }

    [Fact]
    public void Does_not_take_the_form_of_another_year() =>
        Assert.Null(Only(Plan, dates: Events(Told(LegalEvent.FormReceived, "2025-07-29"))).Due);

    [Fact]
    public void Takes_the_form_that_comes_after_a_start_in_mid_year() =>
        Assert.Equal(
            Day("2026-12-18"),
            Only(Plan, Under(Pathway(), "2026-11-02"), dates: Events(Told(LegalEvent.FormReceived, "2026-11-20"))).Due);

    // 8 NYCRR § 100.10(c)(4): a revised plan within 15 days of the notice or by September 15, whichever is later.
    [Theory]
    [InlineData("2026-08-28", "2026-09-15")]
    [InlineData("2026-09-10", "2026-09-25")]
    public void Answers_a_notice_when_there_is_one(string notice, string due)
    {
        var revised = Paper(new LaterOf([On("09-15"), After(LegalEvent.NoticeReceived, 15)]), Repeats.Event);

        Assert.Equal(("US-NY/home/paper/1/" + notice, Day(due)), (Only(revised, dates: Events(Told(LegalEvent.NoticeReceived, notice))).Key, Only(revised, dates: Events(Told(LegalEvent.NoticeReceived, notice))).Due));
        Assert.Empty(List(Under(Pathway(revised))));
    }

    // LAC 28:CXV.3305(B): renewal by October 1 or 12 months after the first approval, whichever is later.
    [Theory]
    [InlineData("2024-09-20", "2026-10-01", "By 1 October or 12 months after the program was first approved on 20 September 2024 (20 September 2025), whichever is later.")]
    [InlineData("2025-11-12", "2026-11-12", "By 1 October or 12 months after the program was first approved on 12 November 2025 (12 November), whichever is later.")]
    public void Remembers_an_approval_of_an_earlier_year(string approved, string due, string why)
    {
        var renewal = Only(
            Paper(new LaterOf([On("10-01"), After(LegalEvent.FirstApproval, 12, DueUnit.Months)])),
            Under(Pathway(), "2024-09-02"),
            dates: Events(Told(LegalEvent.FirstApproval, approved)));

        Assert.Equal((Day(due), why), (renewal.Due, renewal.Why));
    }

    [Fact]
    public void Leaves_an_approval_to_the_place_that_gave_it()
    {
        var renewal = Only(
            Paper(new LaterOf([On("10-01"), After(LegalEvent.FirstApproval, 12, DueUnit.Months)])),
            Under(Pathway(), "2025-09-02", because: SpanReason.Moves),
            dates: Events(Told(LegalEvent.FirstApproval, "2025-11-12"), Told(LegalEvent.FirstApproval, "2021-11-30")));

        Assert.Equal(Day("2026-11-12"), renewal.Due);
    }

    [Fact]
    public void Takes_the_earlier_where_the_law_does() =>
        Assert.Equal(
            Day("2026-09-10"),
            Only(Paper(new EarlierOf([On("09-15"), After(LegalEvent.YearStart, 10)]))).Due);

    [Fact]
    public void Never_lies_before_any_part_and_is_one_of_them() =>
        Gen.Select(Gen.Int[0, 364], Gen.Int[0, 300], Gen.Int[1, 200], Gen.Enum<DueUnit>().Where(u => u != DueUnit.SchoolDays)).Sample((monthDay, form, count, unit) =>
        {
            var date = Day("2025-01-01").AddDays(monthDay);
            DueRule[] parts = [On($"{date:MM-dd}"), After(LegalEvent.FormReceived, count, unit)];
            var told = Events(new RecordedEvent(LegalEvent.FormReceived, Day("2026-07-01").AddDays(form)));
            var alone = parts.Select(p => Only(Paper(p), dates: told).Due!.Value).ToList();
            var later = Only(Paper(new LaterOf(parts)), dates: told).Due!.Value;
            var earlier = Only(Paper(new EarlierOf(parts)), dates: told).Due!.Value;
            return alone.TrueForAll(d => earlier <= d && d <= later) && alone.Contains(later) && alone.Contains(earlier);
        });
}
