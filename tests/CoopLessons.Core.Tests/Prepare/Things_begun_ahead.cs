using CoopLessons.Core.Prepare;
using CoopLessons.Core.Units;
using CsCheck;

namespace CoopLessons.Core.Tests.Prepare;

public class Things_begun_ahead
{
    private static readonly DateOnly Bread = new(2026, 12, 14);

    /// <summary>A sourdough takes about a week and is fed every day (common practice, no source).</summary>
    private static readonly AheadStart Sourdough = new("Sourdough", AheadKind.Sourdough, TakesDays: 7, KeepsDays: 3, TendEveryDays: 1);

    private static readonly Gen<AheadStart> AnyStart =
        from takes in Gen.Int[1, 40]
        from keeps in Gen.Int[-1, 20]
        from tend in Gen.Int[0, 9]
        select new AheadStart("Cress", AheadKind.Seeds, takes, keeps < 0 ? null : keeps, tend);

    [Fact]
    public void They_are_counted_back_from_the_day_that_needs_them()
    {
        var dates = StartAhead.Of(Sourdough, Bread);

        Assert.Equal(new DateOnly(2026, 12, 7), dates.By);
        Assert.Equal(new DateOnly(2026, 12, 4), dates.From);
        Assert.Equal(Enumerable.Range(8, 6).Select(d => new DateOnly(2026, 12, d)), dates.TendOn);
    }

    [Fact]
    public void A_hen_s_egg_set_for_21_days_is_turned_until_the_day_before()
    {
        // 21 days of incubation for a hen's egg (common practice, no source).
        var dates = StartAhead.Of(new AheadStart("Eggs", AheadKind.Eggs, 21, 0, 1), new DateOnly(2027, 4, 26));

        Assert.Equal((new DateOnly(2027, 4, 5), new DateOnly(2027, 4, 5)), (dates.By, dates.From));
        Assert.Equal(20, dates.TendOn.Count);
    }

    [Fact]
    public void What_was_begun_does_not_slide_with_the_day()
    {
        var begun = StartAhead.Underway(Sourdough, new DateOnly(2026, 12, 7), Bread, Bread);
        var slid = StartAhead.Underway(Sourdough, new DateOnly(2026, 12, 7), Bread, Bread.AddDays(4));

        Assert.False(begun.NeedsThought);
        Assert.Equal((AheadOutcome.InTime, Bread, new DateOnly(2026, 12, 17)), (begun.Outcome, begun.ReadyOn, begun.KeepsUntil));
        Assert.Equal((4, AheadOutcome.PastItsTime, 1), (slid.Slid, slid.Outcome, slid.DaysOff));
        Assert.Equal(Bread, slid.ReadyOn);
        Assert.Equal(new DateOnly(2026, 12, 17), slid.TendOn[^1]);
    }

    [Fact]
    public void A_day_that_comes_nearer_finds_it_unready()
    {
        var nearer = StartAhead.Underway(Sourdough, new DateOnly(2026, 12, 7), Bread, Bread.AddDays(-2));

        Assert.Equal((-2, AheadOutcome.NotReadyYet, 2), (nearer.Slid, nearer.Outcome, nearer.DaysOff));
        Assert.True(nearer.NeedsThought);
    }

    [Fact]
    public void All_of_it_slides_by_as_many_days_as_the_activity()
    {
        Gen.Select(AnyStart, Gen.Int[-30, 30]).Sample((start, by) =>
        {
            var (before, after) = (StartAhead.Of(start, Bread), StartAhead.Of(start, Bread.AddDays(by)));
            Assert.Equal(before.By.AddDays(by), after.By);
            Assert.Equal(before.From?.AddDays(by), after.From);
            Assert.Equal(before.TendOn.Select(d => d.AddDays(by)), after.TendOn);
        });
    }

    [Fact]
    public void Begun_between_the_first_and_the_last_day_it_is_in_time_and_on_no_other()
    {
        Gen.Select(AnyStart, Gen.Int[-60, 10]).Sample((start, days) =>
        {
            var dates = StartAhead.Of(start, Bread);
            var begun = dates.By.AddDays(days);
            var inTime = begun <= dates.By && (dates.From is null || begun >= dates.From);
            Assert.Equal(inTime, StartAhead.Underway(start, begun, Bread, Bread).Outcome == AheadOutcome.InTime);
        });
    }

    [Fact]
    public void It_is_seen_to_after_it_was_begun_and_before_it_is_needed()
    {
        AnyStart.Sample(start =>
        {
            var underway = StartAhead.Underway(start, new DateOnly(2026, 12, 1), Bread, Bread);
            Assert.All(underway.TendOn, d => Assert.InRange(d, new DateOnly(2026, 12, 2), Bread.AddDays(-1)));
            Assert.Equal(start.TendEveryDays == 0 ? 0 : 12 / start.TendEveryDays, underway.TendOn.Count);
        });
    }
}
