using CoopLessons.Core.Schedule;

namespace CoopLessons.Core.Tests.Schedule.Layout;

/// <summary>Weeks of every kind, held against the rules by a checker that knows nothing of how they are laid out.</summary>
public class Any_week
{
    private static readonly Effort Short = new(0.01);

    private static WeekPlan Laid(WeekProblem week)
    {
        var plan = WeekLayout.Solve(week, Short);
        var stay = week.Sessions.Where(s => s.Fixed).ToDictionary(s => s.Id);
        // What is fixed may break anything; nothing else may.
        Assert.Empty(PlanCheck.Faults(week, plan.Places).Where(f => !stay.ContainsKey(f.SessionId)).Select(f => f.Sentence));
        Assert.Equal(PlanCheck.Cost(week, plan.Places), plan.Cost);
        Assert.True(plan.Bound <= plan.Cost.Total);
        Assert.All(plan.Places.Where(p => stay.ContainsKey(p.SessionId)), p => Assert.Equal((stay[p.SessionId].Was!.Day, stay[p.SessionId].Was!.StartsAt), (p.Day, p.StartsAt)));
        Assert.Equal(week.Sessions.Select(s => s.Id).Order(), plan.Places.Select(p => p.SessionId).Concat(plan.Misfits.Select(m => m.SessionId)).Order());
        Assert.All(plan.Misfits, m => Assert.True(m.Reason.EndsWith('.') && m.Choices.Contains(MisfitChoice.LeaveOut)));
        return plan;
    }

    [Fact]
    public void Breaks_no_rule_in_four_hundred_and_fifty_small_ones()
    {
        for (var seed = 1; seed <= 450; seed++)
            Laid(AnyWeek.Of(WeekSize.Tiny, seed));
    }

    [Fact]
    public void Breaks_no_rule_in_five_hundred_odd_ones_but_where_something_is_fixed()
    {
        for (var seed = 1; seed <= 500; seed++)
            Laid(OddWeek.Of(seed));
    }

    [Fact]
    public void Breaks_no_rule_in_twenty_five_bigger_ones_before_and_after_a_day_is_lost()
    {
        for (var seed = 1; seed <= 25; seed++)
        {
            var week = AnyWeek.Of(WeekSize.Small, seed);
            Laid(AnyWeek.WithoutTuesday(week, Laid(week)));
        }
    }

    [Fact]
    public void Breaks_no_rule_where_not_everything_fits()
    {
        var week = AnyWeek.Of(WeekSize.Large, 2);
        Assert.NotEmpty(Laid(AnyWeek.WithoutTuesday(week, Laid(week))).Misfits);
    }

    [Fact]
    public void Loses_no_more_when_a_session_is_taken_away()
    {
        var compared = 0;
        for (var seed = 1; seed <= 25; seed++)
        {
            // An hour a day, so that not everything finds a place.
            var whole = AnyWeek.Of(WeekSize.Tiny, seed);
            var week = whole with { Days = [.. whole.Days.Take(2)], Learners = [.. whole.Learners.Select(l => l with { Free = new FreeTime(whole.Days.ToDictionary(d => d, _ => (IReadOnlyList<Stretch>)[new(540, 600)])) })] };
            var before = WeekLayout.Solve(week, Effort.Usual);
            var gone = week.Sessions[seed % week.Sessions.Count].Id;
            var after = WeekLayout.Solve(week with { Sessions = [.. week.Sessions.Where(s => s.Id != gone).Select(s => s with { After = [.. s.After.Where(a => a.SessionId != gone)] })] }, Effort.Usual);
            if (before.Proof != Proof.Best || after.Proof != Proof.Best)
                continue;
            // The weights are in proportion only while the rest of the cost is below one session's.
            Assert.True(before.Cost.Total - 400 * before.Cost.LeftOut < 400 && after.Cost.Total - 400 * after.Cost.LeftOut < 400);
            Assert.True(after.Cost.LeftOut <= before.Cost.LeftOut, $"Week {seed}: {before.Cost} became {after.Cost}.");
            compared++;
        }

        Assert.True(compared >= 20, $"Only {compared} were compared.");
    }

    [Fact]
    public void Is_proven_best_at_the_usual_size_with_the_usual_effort()
    {
        var week = AnyWeek.Of(WeekSize.Usual, 3);
        var plan = WeekLayout.Solve(week, Effort.Usual);
        Assert.Equal((Proof.Best, false), (plan.Proof, plan.CutShort));
        Assert.Equal(Proof.Best, WeekLayout.Solve(AnyWeek.WithoutTuesday(week, plan), Effort.Usual).Proof);
    }

    [Fact]
    public void Stays_where_it_was_when_it_is_laid_out_again_and_nothing_has_changed()
    {
        var week = AnyWeek.Of(WeekSize.Small, 4);
        var plan = WeekLayout.Solve(week, Effort.Usual);
        Assert.Equal((Proof.Best, 0), (plan.Proof, plan.Cost.Total));
        var places = plan.Places.ToDictionary(p => p.SessionId);
        var again = WeekLayout.Solve(week with { Sessions = [.. week.Sessions.Select(s => s with { Was = new OldPlace(places[s.Id].Day, places[s.Id].StartsAt) })] }, Effort.Usual);
        Assert.Equal(plan.Places.Select(p => (p.SessionId, p.Day, p.StartsAt)), again.Places.Select(p => (p.SessionId, p.Day, p.StartsAt)));
    }

    [Fact]
    public void Tells_how_far_it_is_and_never_less_than_before()
    {
        var told = new List<LayoutProgress>();
        WeekLayout.Solve(AnyWeek.Of(WeekSize.Small, 2), Effort.Usual, told.Add);
        Assert.Equal(told.Select(t => t.Share).Order(), told.Select(t => t.Share));
        Assert.Equal((null, 1d, 0), (told[0].LeftOut, told[^1].Share, told[^1].LeftOut!.Value));
    }

    [Fact]
    public void Is_called_off_in_the_middle_of_the_work()
    {
        using var off = new CancellationTokenSource();
        Assert.Throws<OperationCanceledException>(() => WeekLayout.Solve(AnyWeek.Of(WeekSize.Small, 2), Effort.Usual, told =>
        {
            if (told.LeftOut is not null)
                off.Cancel();
        }, off.Token));
    }

    [Fact]
    public void Has_a_valid_plan_without_any_effort()
    {
        var week = AnyWeek.Of(WeekSize.Usual, 5);
        Assert.Empty(PlanCheck.Faults(week, WeekLayout.Solve(week, new Effort(0)).Places));
        Assert.Throws<ArgumentOutOfRangeException>(() => WeekLayout.Solve(week, new Effort(double.NaN)));
    }
}
