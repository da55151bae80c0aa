using CoopLessons.Core.Calendar;
using CoopLessons.Core.Evidence;
using CoopLessons.Core.Families;
using CoopLessons.Core.Hours;
using Xunit;

namespace CoopLessons.Core.Tests.Evidence;

public class One_subject_between_two_dates
{
    private static readonly Guid Linnet = Guid.NewGuid();
    private static readonly Subject Health = new(Guid.NewGuid(), "health");
    private static readonly Subject Science = new(Guid.NewGuid(), "science");
    private static readonly DayRange Asked = new(new(2026, 9, 1), new(2026, 12, 31));
    private static readonly DateOnly Later = new(2027, 6, 20);

    [Fact]
    public void Is_counted_as_the_ledger_counts_it()
    {
        var ledger = Ledger(Entry(new(2026, 9, 7), "Teeth", 40, (Health, 1), (Science, 3)), Entry(new(2026, 10, 1), "teeth", 20, (Health, 1)), Entry(new(2026, 10, 2), "Sleep", 30, (Health, 1)), Touch(new(2026, 11, 2)));
        var facts = SubjectFacts.Of(ledger, Only(Health), Asked);
        Assert.Equal(ledger.In(Health.Id), facts.Minutes);
        Assert.Equal((3, 1), (facts.Days, facts.Touched));
        Assert.Equal((new DateOnly(2026, 9, 7), new DateOnly(2026, 11, 2)), (facts.First, facts.Last));
        Assert.Equal([new DoneThing("Teeth", 2, new(30), new(2026, 9, 7), new(2026, 10, 1)), new DoneThing("Sleep", 1, new(30), new(2026, 10, 2), new(2026, 10, 2))], facts.Things);
        Assert.Equal([10, 50, 0, 0], facts.Months.Select(m => m.Minutes.Value));
    }

    [Fact]
    public void Leaves_out_what_lies_outside_them()
    {
        var ledger = Ledger(Entry(new(2026, 8, 31), "Teeth", 40, (Health, 1)), Entry(new(2027, 1, 1), "Teeth", 40, (Health, 1)), Entry(new(2026, 12, 31), "Sleep", 25, (Health, 1)));
        Assert.Equal(25, SubjectFacts.Of(ledger, Only(Health), Asked).Minutes.Value);
    }

    [Fact]
    public void Says_that_nothing_is_there() => Assert.Equal(
        ["Nothing is logged under health from 1 September 2026 to 31 December 2026.", "No photo, paper or recording shows health."],
        Missing(Ledger(Entry(new(2026, 9, 7), "Seeds", 30, (Science, 1)))));

    [Fact]
    public void Says_which_months_went_by_without_it_and_which_part_has_no_sample() => Assert.Equal(
        ["No minutes of health in November and December.", "Nothing since 2 October 2026.", "No sample from the middle or the end of these days.", "One sample has no caption."],
        Missing(Ledger(Entry(new(2026, 9, 7), "Teeth", 40, (Health, 1)), Entry(new(2026, 10, 2), "Sleep", 30, (Health, 1))), untold: 1, samples: [new(2026, 9, 7), new(2026, 9, 8)]));

    [Fact]
    public void Misses_nothing_of_days_that_are_breaks_or_to_come()
    {
        var ledger = Ledger(Entry(new(2026, 9, 7), "Teeth", 40, (Health, 1)), Entry(new(2026, 10, 2), "Sleep", 30, (Health, 1)));
        Assert.Empty(Missing(ledger, today: new(2026, 10, 9), samples: [new(2026, 9, 7), new(2026, 10, 12)]));
        Assert.DoesNotContain(Missing(ledger, samples: [new(2026, 9, 7)], teaching: d => d.Month != 12), s => s.Contains("December", StringComparison.Ordinal));
    }

    [Fact]
    public void That_was_only_met_in_passing_is_said_to_be() => Assert.Contains(
        "No minutes are logged under health; it was met in passing on one day.", Missing(Ledger(Touch(new(2026, 11, 2)))));

    [Fact]
    public void Is_told_in_sentences_that_the_log_vouches_for()
    {
        var facts = SubjectFacts.Of(Ledger(Entry(new(2026, 9, 7), "Teeth", 70, (Health, 1)), Entry(new(2026, 9, 8), "Teeth", 20, (Health, 1)), Touch(new(2026, 11, 2))), Only(Health), Asked);
        Assert.Equal(
            ["1 hour 30 min on 2 days, from 7 September 2026 to 8 September 2026.", "Met in passing on one day more.", "Most time went to: Teeth (1:30, 2 days)."],
            NarrativeFacts.Of(facts));
        Assert.StartsWith("20 min on one day,", NarrativeFacts.Of(SubjectFacts.Of(Ledger(Entry(new(2026, 9, 7), "Teeth", 20, (Health, 1))), Only(Health), Asked))[0], StringComparison.Ordinal);
        Assert.Equal(["Nothing is logged under this subject."], NarrativeFacts.Of(SubjectFacts.Of(Ledger(), Only(Health), Asked)));
    }

    private static IReadOnlyList<string> Missing(HoursLedger ledger, int untold = 0, DateOnly? today = null, IReadOnlyList<DateOnly>? samples = null, Func<DateOnly, bool>? teaching = null) =>
        WhatIsMissing.Of("health", SubjectFacts.Of(ledger, Only(Health), Asked), samples ?? [], untold, today ?? Later, teaching ?? (_ => true));

    private static HashSet<Guid> Only(Subject subject) => [subject.Id];

    private static HoursLedger Ledger(params LoggedEntry[] log) => HoursLedger.Of(Linnet, [Health, Science], new DayRange(new(2026, 7, 1), new(2027, 6, 30)), log);

    private static LoggedEntry Entry(DateOnly date, string what, int minutes, params (Subject Subject, int Weight)[] split) => new(
        Guid.NewGuid(), 1, date, null, what, Place.Home, [new LearnerTime(Linnet, new Minutes(minutes))], [.. split.Select(s => new SubjectWeight(s.Subject.Id, s.Weight))], []);

    private static LoggedEntry Touch(DateOnly date) => Entry(date, "Bread", 30, (Science, 1)) with { Touches = [Health.Id] };
}
