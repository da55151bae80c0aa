using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;
using CsCheck;
using static CoopLessons.Core.Tests.AlderLog;

namespace CoopLessons.Core.Tests.Hours;

/// <summary>What holds of every ledger, whatever a family writes.</summary>
public class Any_ledger
{
    private static HoursLedger Wrens(IEnumerable<LoggedEntry> log) => HoursLedger.Of(Wren, Subjects, Year, log);

    [Fact]
    public void Credits_every_minute_of_its_entries_and_no_other() =>
        AnyLog.Logs.Sample(log => Wrens(log).Total.Value == log
            .Where(e => Year.Contains(e.Date))
            .Sum(e => e.Learners.Where(l => l.LearnerId == Wren).Sum(l => l.Minutes.Value)));

    [Fact]
    public void Has_subjects_and_months_that_add_up_to_its_total() =>
        AnyLog.Logs.Sample(log =>
        {
            var ledger = Wrens(log);
            var months = Month.Through(Year);
            return Subjects.Sum(s => months.Sum(m => ledger.In(s.Id, m).Value)) == ledger.Total.Value
                && Subjects.All(s => months.Sum(m => ledger.In(s.Id, m).Value) == ledger.In(s.Id).Value)
                && months.All(m => Subjects.Sum(s => ledger.In(s.Id, m).Value) == ledger.In(m).Value);
        });

    [Fact]
    public void Has_places_that_add_up_to_its_total() =>
        AnyLog.Logs.Sample(log =>
        {
            var ledger = Wrens(log);
            return Enum.GetValues<Place>().Sum(p => ledger.At(p).Value) == ledger.Total.Value;
        });

    [Fact]
    public void Has_dates_that_add_up_to_its_total() =>
        AnyLog.Logs.Sample(log =>
        {
            var ledger = Wrens(log);
            var dates = ledger.ByDate();
            return dates.Values.Sum() == ledger.Total && dates.All(d => ledger.SumOf(c => c.Date == d.Key) == d.Value && d.Value > Minutes.Zero);
        });

    [Fact]
    public void Is_the_same_whatever_the_order_of_the_log() =>
        AnyLog.LogsTwice.Sample(twice =>
        {
            var (a, b) = (Wrens(twice.Log), Wrens(twice.Shuffled));
            return a.Credits.SequenceEqual(b.Credits)
                && a.Touches.SequenceEqual(b.Touches)
                && a.Entries.SequenceEqual(b.Entries)
                && a.Questions().SequenceEqual(b.Questions())
                && LogFingerprint.Of(a) == LogFingerprint.Of(b);
        });

    [Fact]
    public void Is_the_same_whatever_the_order_of_subjects_inside_an_entry() =>
        AnyLog.Logs.Sample(log =>
        {
            var turned = log.Select(e => e with { Split = [.. e.Split.Reverse()] });
            return Wrens(log).Credits.SequenceEqual(Wrens(turned).Credits)
                && LogFingerprint.Of(Wrens(log)) == LogFingerprint.Of(Wrens(turned));
        });

    [Fact]
    public void Has_no_more_minutes_for_its_touches() =>
        AnyLog.Logs.Sample(log =>
        {
            var without = Wrens(log.Select(e => e with { Touches = [] }));
            return Wrens(log).Credits.SequenceEqual(without.Credits) && without.Touches.Count == 0;
        });

    [Fact]
    public void Has_no_more_strict_days_than_broad_days() =>
        AnyLog.Logs.Sample(log =>
        {
            var ledger = Wrens(log);
            return Subjects.All(s => ledger.StrictDays(s.Id) <= ledger.BroadDays(s.Id) && ledger.BroadDays(s.Id) <= ledger.Entries.Count);
        });

    [Fact]
    public void Gives_each_part_of_an_entry_within_a_minute_of_its_exact_share() =>
        AnyLog.Logs.Sample(log =>
        {
            var ledger = Wrens(log);
            return ledger.Entries.All(e =>
            {
                var sum = e.Split.Sum(s => s.Weight);
                var whole = e.Learners.Single(l => l.LearnerId == Wren).Minutes.Value;
                return e.Split.All(s => Math.Abs(
                    ledger.Credits.Single(c => c.EntryId == e.Id && c.SubjectId == s.SubjectId).Minutes.Value * sum - whole * s.Weight) < sum);
            });
        });

    [Fact]
    public void Gives_the_odd_minutes_of_equal_weights_to_the_subjects_listed_first() =>
        AnyLog.Logs.Sample(log =>
        {
            var ledger = Wrens(log.Select(e => e with { Split = [.. e.Split.Select(s => new SubjectWeight(s.SubjectId, 1))] }));
            return ledger.Credits.GroupBy(c => c.EntryId).All(parts =>
            {
                var inOrder = parts.OrderBy(c => Subjects.ToList().FindIndex(s => s.Id == c.SubjectId)).Select(c => c.Minutes.Value).ToList();
                return inOrder.SequenceEqual(inOrder.OrderDescending());
            });
        });

    [Fact]
    public void Asks_about_just_those_minutes_in_which_two_entries_run_at_once() =>
        AnyLog.Logs.Sample(log =>
        {
            static int Midnight(DateOnly date) => date.DayNumber * 1440;
            static IEnumerable<int> Run(LoggedEntry e) => Enumerable.Range(
                Midnight(e.Date) + (int)e.Start!.Value.ToTimeSpan().TotalMinutes, e.Learners.Single(l => l.LearnerId == Wren).Minutes.Value);
            var ledger = Wrens(log);
            var timed = ledger.Entries.Where(e => e.Start is not null).ToList();
            var shared = timed.SelectMany((a, i) => timed.Skip(i + 1).Select(b => (a.Id, b.Id, Minutes: Run(a).Intersect(Run(b)).ToHashSet())))
                .Where(pair => pair.Minutes.Count > 0).ToList();
            var asked = ledger.Questions().OfType<CountedTwice>().ToDictionary(q => (q.FirstEntryId, q.SecondEntryId));
            return asked.Count == shared.Count && shared.All(pair => asked.TryGetValue((pair.Item1, pair.Item2), out var q)
                && pair.Minutes.SetEquals(Enumerable.Range(Midnight(q.Date) + q.From, q.To - q.From)));
        });

    [Fact]
    public void Is_the_sum_of_its_halves()
    {
        var summer = new DayRange(Year.First, new DateOnly(2026, 12, 15));
        var spring = new DayRange(new DateOnly(2026, 12, 16), Year.Last);

        AnyLog.Logs.Sample(log => HoursLedger.Of(Wren, Subjects, summer, log).Total + HoursLedger.Of(Wren, Subjects, spring, log).Total
            == Wrens(log).Total);
    }

    [Fact]
    public void Has_no_fewer_broad_school_days_than_strict_ones() =>
        Gen.Select(AnyLog.Logs, Gen.Int[1, 600]).Sample((log, minimum) =>
        {
            var ledger = Wrens(log);
            var days = ledger.WithoutMarks(minimum);
            return days.Strict <= days.Broad
                && days.Strict == ledger.ByDate().Values.Count(m => m.Value >= minimum)
                && days.Broad == ledger.ByDate().Count
                && Month.Through(Year).Sum(days.StrictIn) == days.Strict;
        });
}
