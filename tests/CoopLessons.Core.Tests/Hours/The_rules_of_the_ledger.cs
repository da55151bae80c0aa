using CoopLessons.Core.Hours;
using static CoopLessons.Core.Tests.AlderLog;

namespace CoopLessons.Core.Tests.Hours;

/// <summary>One test a rule, numbered as in the ledger's own list.</summary>
public class The_rules_of_the_ledger
{
    [Fact]
    public void Rule_1_Only_entries_dated_inside_the_period_count_and_both_ends_are_inside()
    {
        var ledger = WrensLedger(
            Entry(1, Year.First.AddDays(-1), 1),
            Entry(2, Year.First, 20),
            Entry(3, Year.Last, 300),
            Entry(4, Year.Last.AddDays(1), 400));

        Assert.Equal(320, ledger.Total.Value);
        Assert.Equal([Id(2), Id(3)], ledger.Entries.Select(e => e.Id));
    }

    [Fact]
    public void Rule_2_Only_entries_in_which_the_learner_took_part_count_with_the_learners_own_minutes()
    {
        LoggedEntry[] log =
        [
            Entry(1, Tuesday, 0, learners: [new(Wren, new Minutes(40)), new(Finch, new Minutes(25))]),
            Entry(2, Tuesday, 0, learners: [new(Finch, new Minutes(90))]),
        ];

        Assert.Equal(40, HoursLedger.Of(Wren, Subjects, Year, log).Total.Value);
        Assert.Equal(115, HoursLedger.Of(Finch, Subjects, Year, log).Total.Value);
    }

    [Fact]
    public void Rule_3_Minutes_are_divided_by_weight_and_equal_remainders_go_to_the_subject_the_family_lists_first()
    {
        var ledger = WrensLedger(
            Entry(1, Tuesday, 50, split: [2.Of(Science), 1.Of(Reading)]),
            Entry(2, Tuesday.AddDays(1), 25, split: [1.Of(Art), 1.Of(Arithmetic)]));

        Assert.Equal(33, ledger.In(Science.Id).Value);
        Assert.Equal(17, ledger.In(Reading.Id).Value);
        Assert.Equal(13, ledger.In(Arithmetic.Id).Value);
        Assert.Equal(12, ledger.In(Art.Id).Value);
    }

    [Fact]
    public void Rule_4_The_parts_of_an_entry_add_up_to_its_minutes_exactly()
    {
        for (var minutes = 1; minutes <= 1440; minutes++)
        {
            var ledger = WrensLedger(Entry(1, Tuesday, minutes, split: [3.Of(Writing), 3.Of(Reading), 5.Of(Art), 1.Of(Science)]));

            Assert.Equal(minutes, ledger.Credits.Sum(c => c.Minutes.Value));
        }
    }

    [Fact]
    public void Rule_5_Waiting_time_is_no_part_of_an_entrys_minutes_and_is_never_credited()
    {
        // Thirty-five minutes of kneading at 9:00, ninety in which the dough rises, and arithmetic at 10:00 meanwhile.
        var bread = new CoopLessons.Core.Units.BundleActivity("bread", 1, 1, "Bread", CoopLessons.Core.Units.ActivityKind.Cooking,
            "Knead.", [new("science", 1)], 35, 90, CoopLessons.Core.Units.AdultNeed.Beside, "the dough rises");
        var ledger = WrensLedger(
            Entry(1, Tuesday, bread.HandsOnMinutes, Science, At(9)),
            Entry(2, Tuesday, 30, Arithmetic, At(10)));

        Assert.Equal(65, ledger.Total.Value);
        Assert.Empty(ledger.Questions());
    }

    [Fact]
    public void Rule_6_A_touch_credits_no_minutes_and_makes_its_day_a_day_on_which_the_subject_was_met()
    {
        var ledger = WrensLedger(Entry(1, Tuesday, 60, Science, touches: [Art.Id]));

        Assert.Equal(60, ledger.Total.Value);
        Assert.Equal(0, ledger.In(Art.Id).Value);
        Assert.Equal(0, ledger.StrictDays(Art.Id));
        Assert.Equal(1, ledger.BroadDays(Art.Id));
        Assert.Equal([new Touch(Id(1), Tuesday, Art.Id)], ledger.Touches);
    }

    [Fact]
    public void Rule_7_Totals_are_sums_of_whole_minutes_made_before_any_rounding()
    {
        var ledger = WrensLedger([.. Enumerable.Range(0, 30).Select(i => Entry(i + 1, Tuesday.AddDays(i), 20))]);

        Assert.Equal(600, ledger.Total.Value);
        Assert.Equal(10.00m, ledger.Total.DecimalHours);
    }

    [Fact]
    public void Rule_8_Entries_that_overlap_in_time_are_reported_as_a_question_and_counted_as_written()
    {
        var ledger = WrensLedger(
            Entry(1, Tuesday, 120, Science, At(12)),
            Entry(2, Tuesday, 90, Reading, At(13)));

        Assert.Equal([new CountedTwice(Tuesday, 13 * 60, 14 * 60, Id(1), Id(2))], ledger.Questions());
        Assert.Equal(210, ledger.Total.Value);
    }

    [Fact]
    public void Rule_9_A_day_above_sixteen_hours_is_reported_as_a_question_and_counted_as_written()
    {
        var ledger = WrensLedger(Entry(1, Tuesday, 900), Entry(2, Tuesday, 61));

        Assert.Equal([new LongDay(Tuesday, new Minutes(961))], ledger.Questions());
        Assert.Equal(961, ledger.Total.Value);
    }

    [Fact]
    public void A_share_that_comes_to_no_minutes_makes_no_day_of_its_subject()
    {
        var ledger = WrensLedger(Entry(1, Tuesday, 1, split: [1.Of(Art), 1.Of(Reading)]));

        Assert.Equal((1, 1), (ledger.StrictDays(Reading.Id), ledger.BroadDays(Reading.Id)));
        Assert.Equal((0, 0), (ledger.StrictDays(Art.Id), ledger.BroadDays(Art.Id)));
    }

    [Fact]
    public void A_day_with_minutes_and_a_touch_of_one_subject_is_one_day()
    {
        var ledger = WrensLedger(Entry(1, Tuesday, 30, Art), Entry(2, Tuesday, 30, Science, touches: [Art.Id]), Entry(3, Tuesday, 30, Art));

        Assert.Equal((1, 1), (ledger.StrictDays(Art.Id), ledger.BroadDays(Art.Id)));
    }

    [Fact]
    public void A_subject_that_the_family_does_not_have_is_refused()
    {
        var stranger = new SubjectWeight(Id(999), 1);

        Assert.Throws<ArgumentException>(() => WrensLedger(Entry(1, Tuesday, 10, split: [stranger])));
        Assert.Throws<ArgumentException>(() => WrensLedger(Entry(1, Tuesday, 10, touches: [stranger.SubjectId])));
    }

    [Fact]
    public void An_empty_log_makes_an_empty_ledger()
    {
        var ledger = WrensLedger();

        Assert.Equal(Minutes.Zero, ledger.Total);
        Assert.Empty(ledger.Entries);
        Assert.Empty(ledger.ByDate());
        Assert.Empty(ledger.Questions());
    }
}
