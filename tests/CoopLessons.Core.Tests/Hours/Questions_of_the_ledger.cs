using CoopLessons.Core.Hours;
using static CoopLessons.Core.Tests.AlderLog;

namespace CoopLessons.Core.Tests.Hours;

public class Questions_of_the_ledger
{
    [Fact]
    public void An_hour_shared_by_two_entries_is_named_with_its_ends()
    {
        var ledger = WrensLedger(
            Entry(1, Tuesday, 120, Science, At(12)),
            Entry(2, Tuesday, 90, Reading, At(13)));

        Assert.Equal(["3 November 2026: 13:00–14:00 is counted twice. Is that right?"], ledger.Questions().Select(q => q.Sentence));
    }

    [Fact]
    public void An_entry_inside_another_is_counted_twice_for_its_own_length()
    {
        var ledger = WrensLedger(
            Entry(1, Tuesday, 180, Science, At(9)),
            Entry(2, Tuesday, 15, Reading, At(10, 30)));

        Assert.Equal([new CountedTwice(Tuesday, 630, 645, Id(1), Id(2))], ledger.Questions());
    }

    [Fact]
    public void Three_entries_at_once_make_three_questions()
    {
        var ledger = WrensLedger(
            Entry(1, Tuesday, 60, Science, At(9)),
            Entry(2, Tuesday, 60, Reading, At(9)),
            Entry(3, Tuesday, 60, Art, At(9)));

        Assert.Equal(3, ledger.Questions().OfType<CountedTwice>().Count());
    }

    [Fact]
    public void Entries_that_follow_on_one_another_do_not_overlap()
    {
        var ledger = WrensLedger(
            Entry(1, Tuesday, 60, Science, At(9)),
            Entry(2, Tuesday, 45, Reading, At(10)));

        Assert.Empty(ledger.Questions());
    }

    [Fact]
    public void An_overlap_that_runs_past_midnight_ends_above_1440_minutes()
    {
        var ledger = WrensLedger(
            Entry(1, Tuesday, 120, Science, At(23)),
            Entry(2, Tuesday, 90, Reading, At(23, 30)));

        Assert.Equal([new CountedTwice(Tuesday, 23 * 60 + 30, 25 * 60, Id(1), Id(2))], ledger.Questions());
    }

    [Fact]
    public void An_entry_that_runs_past_midnight_overlaps_with_one_of_the_next_date()
    {
        var ledger = WrensLedger(
            Entry(1, Tuesday, 120, Science, At(23)),
            Entry(2, Tuesday.AddDays(1), 90, Reading, At(0, 30)));

        Assert.Equal([new CountedTwice(Tuesday.AddDays(1), 30, 60, Id(1), Id(2))], ledger.Questions());
    }

    [Fact]
    public void An_entry_of_a_whole_day_overlaps_with_every_one_until_the_same_hour_of_the_next()
    {
        var ledger = WrensLedger(
            Entry(1, Tuesday, 1440, Science, At(10)),
            Entry(2, Tuesday, 30, Reading, At(22)),
            Entry(3, Tuesday.AddDays(1), 30, Art, At(9, 45)),
            Entry(4, Tuesday.AddDays(1), 30, Art, At(10, 15)),
            Entry(5, Tuesday.AddDays(2), 30, Art, At(0)));

        Assert.Equal(
            [
                new CountedTwice(Tuesday, 22 * 60, 22 * 60 + 30, Id(1), Id(2)),
                new CountedTwice(Tuesday.AddDays(1), 9 * 60 + 45, 10 * 60, Id(1), Id(3)),
            ],
            ledger.Questions().OfType<CountedTwice>());
    }

    [Fact]
    public void An_entry_that_ends_at_midnight_does_not_overlap_with_one_that_begins_then()
    {
        var ledger = WrensLedger(
            Entry(1, Tuesday, 60, Science, At(23)),
            Entry(2, Tuesday.AddDays(1), 90, Reading, At(0)));

        Assert.Empty(ledger.Questions());
    }

    [Fact]
    public void The_same_hour_of_two_days_does_not_overlap()
    {
        var ledger = WrensLedger(
            Entry(1, Tuesday, 60, Science, At(9)),
            Entry(2, Tuesday.AddDays(1), 60, Reading, At(9)));

        Assert.Empty(ledger.Questions());
    }

    [Fact]
    public void Entries_without_a_start_cannot_overlap()
    {
        var ledger = WrensLedger(
            Entry(1, Tuesday, 60, Science, At(9)),
            Entry(2, Tuesday, 60, Reading),
            Entry(3, Tuesday, 60, Art));

        Assert.Empty(ledger.Questions());
    }

    [Fact]
    public void Another_learners_entry_at_the_same_hour_is_no_question()
    {
        var ledger = WrensLedger(
            Entry(1, Tuesday, 60, Science, At(9)),
            Entry(2, Tuesday, 0, Reading, At(9), learners: [new(Finch, new Minutes(60))]));

        Assert.Empty(ledger.Questions());
    }

    [Fact]
    public void Each_learners_own_length_decides_whether_entries_overlap()
    {
        LoggedEntry[] log =
        [
            Entry(1, Tuesday, 0, Science, At(9), learners: [new(Wren, new Minutes(60)), new(Finch, new Minutes(61))]),
            Entry(2, Tuesday, 0, Reading, At(10), learners: [new(Wren, new Minutes(30)), new(Finch, new Minutes(30))]),
        ];

        Assert.Empty(HoursLedger.Of(Wren, Subjects, Year, log).Questions());
        Assert.Equal([new CountedTwice(Tuesday, 600, 601, Id(1), Id(2))], HoursLedger.Of(Finch, Subjects, Year, log).Questions());
    }

    [Fact]
    public void Sixteen_hours_exactly_are_no_question() =>
        Assert.Empty(WrensLedger(Entry(1, Tuesday, 480), Entry(2, Tuesday, 480)).Questions());

    [Fact]
    public void A_minute_above_sixteen_hours_is_one()
    {
        var ledger = WrensLedger(Entry(1, Tuesday, 480), Entry(2, Tuesday, 481));

        Assert.Equal(["3 November 2026 holds 16:01 hours. Is that right?"], ledger.Questions().Select(q => q.Sentence));
    }

    [Fact]
    public void Questions_come_in_the_order_of_their_dates()
    {
        var ledger = WrensLedger(
            Entry(1, Tuesday.AddDays(5), 961),
            Entry(2, Tuesday, 60, Science, At(9)),
            Entry(3, Tuesday, 60, Reading, At(9, 59)),
            Entry(4, Tuesday.AddDays(2), 961));

        Assert.Equal([Tuesday, Tuesday.AddDays(2), Tuesday.AddDays(5)], ledger.Questions().Select(q => q.Date));
    }
}
