using System.Text.Json;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Standing;
using CsCheck;

namespace CoopLessons.Core.Tests.Requirements.Properties;

public sealed class Any_standing
{
    private const int Times = 60;

    [Fact]
    public void Measures_no_less_with_an_entry_more() => AnyLog.Logs.Where(l => l.Length > 0).Sample(log =>
    {
        var before = AnyStanding.Of(log[1..], AnyStanding.Over).Measured(_ => true);
        var after = AnyStanding.Of(log, AnyStanding.Over).Measured(_ => true);
        Assert.Equal(before.Select(b => b.Line), after.Select(a => a.Line));
        Assert.All(before.Zip(after), pair => Assert.True(pair.First.Measured <= pair.Second.Measured, $"{pair.First} became {pair.Second}"));
    }, iter: Times);

    [Fact]
    public void Measures_the_same_when_an_entry_of_one_subject_is_written_as_two() => Divided.Sample(log =>
        Assert.Equal(AnyStanding.Of(log.Whole, AnyStanding.Over).Measured(_ => true), AnyStanding.Of(log.Halves, AnyStanding.Over).Measured(_ => true)), iter: Times);

    // Over several subjects the minutes of two entries are divided apart, so a subject may gain a minute from another.
    [Fact]
    public void Measures_the_same_in_all_subjects_together_when_any_entry_is_written_as_two() => DividedOverSubjects.Sample(log =>
        Assert.Equal(AnyStanding.Of(log.Whole, AnyStanding.Over).Measured(AllSubjects), AnyStanding.Of(log.Halves, AnyStanding.Over).Measured(AllSubjects)), iter: Times);

    [Fact]
    public void Is_the_same_in_whatever_order_the_log_comes() => AnyLog.LogsTwice.Sample(both =>
        Assert.Equal(AnyStanding.Of(both.Log, AnyStanding.Running).Select(Told), AnyStanding.Of(both.Shuffled, AnyStanding.Running).Select(Told)), iter: 10);

    [Fact]
    public void Of_days_or_hours_is_met_exactly_when_one_of_them_is() =>
        Gen.Select(AnyLog.Logs, Gen.Int[1, 20], Gen.Int[1, 150]).Sample((log, days, hours) =>
        {
            var standing = AnyStanding.Under(log, AnyStanding.Own(AnyStanding.EitherOf(AnyStanding.Days(days), AnyStanding.Hours(hours))), AnyStanding.Over);
            var either = Assert.Single(standing.Lines);
            Assert.Equal(either.Parts.Any(p => p.Verdict == Verdict.Met), either.Verdict == Verdict.Met);
            Assert.All(either.Parts, p => Assert.Equal(p.Measured!.Value.Value >= p.Target!.Value.Value, p.Verdict == Verdict.Met));
        }, iter: 200);

    [Fact]
    public void Of_days_and_hours_is_met_exactly_when_both_are() =>
        Gen.Select(AnyLog.Logs, Gen.Int[1, 20], Gen.Int[1, 150]).Sample((log, days, hours) =>
        {
            var standing = AnyStanding.Under(log, AnyStanding.Own(AnyStanding.Days(days), AnyStanding.Hours(hours)), AnyStanding.Over);
            Assert.Equal(standing.Lines.All(l => l.Verdict == Verdict.Met), standing.Verdict == Verdict.Met);
        }, iter: 200);

    [Fact]
    public void Of_a_part_of_the_year_shows_no_more_than_the_full_figure_and_no_less_than_its_share() =>
        Gen.Select(Gen.Int[32, 290], Gen.Int[1, 2_000]).Sample((start, hours) =>
        {
            var from = AnyStanding.School.First.AddDays(start);
            var line = Assert.Single(AnyStanding.Under([], AnyStanding.Own(AnyStanding.Hours(hours)) with { From = from }, AnyStanding.Over).Lines);
            var (full, part) = (line.Target!.Value.Value, line.ProRated!.Value.Value);
            Assert.InRange(part, 0, full);
            var (asked, year) = ((long)line.Window.Asked!.Value.Count, (long)line.Window.Year.Count);
            Assert.True(part * year >= full * asked && (part - 1) * year < full * asked, $"{part} of {full} for {asked} of {year} days");
        }, iter: 200);

    private static bool AllSubjects(Requirement figure) => figure is not HoursRequirement { Subjects: not null };

    private static readonly Gen<(LoggedEntry[] Whole, LoggedEntry[] Halves)> DividedOverSubjects =
        from log in AnyLog.Logs
        where log.Length > 0 && MinutesOfWren(log[0]) > 1
        from first in Gen.Int[1, MinutesOfWren(log[0]) - 1]
        select (log, (LoggedEntry[])[Lasting(log[0], first), Lasting(log[0], MinutesOfWren(log[0]) - first) with { Id = AlderLog.Id(999) }, .. log[1..]]);

    private static readonly Gen<(LoggedEntry[] Whole, LoggedEntry[] Halves)> Divided =
        DividedOverSubjects.Select(d => (d.Whole.Select(InOneSubject).ToArray(), d.Halves.Select(InOneSubject).ToArray()));

    private static LoggedEntry InOneSubject(LoggedEntry entry) => entry with { Split = [entry.Split[0]] };

    private static LoggedEntry Lasting(LoggedEntry entry, int minutes) => entry with { Learners = [new LearnerTime(AlderLog.Wren, new Minutes(minutes))] };

    private static int MinutesOfWren(LoggedEntry entry) => entry.Learners.FirstOrDefault(l => l.LearnerId == AlderLog.Wren)?.Minutes.Value ?? 0;

    // Everything that a page shows, as text.
    private static string Told(PathwayStanding standing) => string.Join('\n',
        standing.All().Select(l => $"{l.Requirement.Id} {l.Part} {l.Verdict} {l.Measured} {l.ProRated} {l.Why} {JsonSerializer.Serialize(l.Forecast)}").Prepend($"{standing.Verdict} {standing.Sentence}"));
}
