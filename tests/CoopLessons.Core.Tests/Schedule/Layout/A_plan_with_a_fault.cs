using CoopLessons.Core.Schedule;
using CoopLessons.Core.Units;
using static CoopLessons.Core.Tests.Schedule.Layout.Desk;

namespace CoopLessons.Core.Tests.Schedule.Layout;

/// <summary>A good plan, broken in one way at a time.</summary>
public class A_plan_with_a_fault
{
    private static readonly FreeTime Mornings = Free((Wednesday, 540, 720), (Thursday, 540, 720));

    private static readonly WeekProblem Week = Desk.Week(
        [Wednesday, Thursday],
        [Learner("Wren", Mornings, sitting: 20), Learner("Lark", Mornings)],
        [Adult("Iris", Mornings)],
        Session("Letters", 30, AdultNeed.HandsOn, "Wren"),
        Session("Knead the dough", 20, AdultNeed.HandsOn, "Wren", "Lark") with { Wait = new WaitAndLook(60, 5, 15) },
        Session("Rivers", 25, AdultNeed.Beside, "Lark"),
        Session("Nap story", 10, AdultNeed.Alone, "Lark") with { Bound = new BoundHours(Free((Thursday, 600, 640)), "while Robin sleeps") },
        Session("Draw the mill", 20, AdultNeed.Alone, "Wren") with { OnlyOn = [Thursday], After = [new Precedence(Id("Letters"), 1)] });

    private static readonly Placing[] Good =
    [
        At("Letters", Wednesday, 540, adult: "Iris"),
        At("Knead the dough", Wednesday, 585, look: 665, adult: "Iris", looker: "Iris"),
        At("Rivers", Wednesday, 620),
        At("Nap story", Thursday, 605),
        At("Draw the mill", Thursday, 560),
    ];

    private static IReadOnlyList<PlanFault> With(Placing changed) => PlanCheck.Faults(Week, [.. Good.Select(p => p.SessionId == changed.SessionId ? changed : p)]);

    [Fact]
    public void Was_good_before() => Assert.Empty(PlanCheck.Faults(Week, Good));

    [Fact]
    public void Has_a_child_in_two_places()
    {
        var fault = With(At("Letters", Wednesday, 600, adult: "Iris")).First(f => f.Kind == FaultKind.TwoPlaces);
        Assert.Equal("On Wednesday at 10:00 Wren would be in two places: “Letters” and “Knead the dough”.", fault.Sentence);
        Assert.Equal([Id("Knead the dough")], fault.With);
    }

    [Fact]
    public void Leaves_no_time_to_change_over() => Assert.Equal(
        "On Wednesday Lark changes over from “Knead the dough” until 10:10, before “Rivers”.",
        Assert.Single(With(At("Rivers", Wednesday, 605)), f => f.Kind == FaultKind.TwoPlaces).Sentence);

    [Fact]
    public void Gives_no_rest_after_a_long_sitting() => Assert.Equal(
        "On Wednesday at 9:10 “Letters” is longer than Wren sits at a time; a rest until 9:55 comes before “Knead the dough”.",
        Assert.Single(With(At("Letters", Wednesday, 550, adult: "Iris")), f => f.Kind == FaultKind.TooLong).Sentence);

    [Fact]
    public void Puts_an_adult_in_two_places()
    {
        var faults = With(At("Rivers", Wednesday, 655));
        Assert.Contains(faults, f => f is { Kind: FaultKind.NoAdult, Sentence: "On Wednesday at 11:05 nobody is free to be near “Rivers”: Iris is at “Knead the dough”." });
        faults = With(At("Letters", Wednesday, 560, adult: "Iris"));
        Assert.Contains(faults, f => f is { Kind: FaultKind.NoAdult, Sentence: "On Wednesday at 9:45 Iris would have “Letters” and “Knead the dough” in hand at once." });
    }

    [Fact]
    public void Takes_hands_that_are_not_there() => Assert.Equal(
        "On Wednesday at 8:50 Iris is not there for “Letters”.", Assert.Single(With(At("Letters", Wednesday, 530, adult: "Iris")), f => f.Kind == FaultKind.NoAdult).Sentence);

    [Fact]
    public void Takes_the_first_free_hands_where_none_are_named()
    {
        Assert.Empty(With(At("Letters", Wednesday, 540)));
        Assert.Equal("On Wednesday at 9:20 no adult has hands free for “Letters”.", Assert.Single(With(At("Letters", Wednesday, 560)), f => f.Kind == FaultKind.NoAdult).Sentence);
    }

    [Fact]
    public void Lies_outside_somebodys_hours() => Assert.Equal(
        "On Wednesday at 11:50 Lark is not free for the 25 minutes of “Rivers”.", Assert.Single(With(At("Rivers", Wednesday, 710)), f => f.Kind == FaultKind.OutsideHours).Sentence);

    [Fact]
    public void Lies_on_a_day_that_is_not_one_of_the_weeks()
    {
        Assert.Equal("“Rivers” stands on Monday 2 March, which is not one of these days.", Assert.Single(With(At("Rivers", Monday, 600)), f => f.Kind == FaultKind.OutsideDays).Sentence);
        Assert.Equal("“Draw the mill” may stand only on Thursday, not on Wednesday.", Assert.Single(With(At("Draw the mill", Wednesday, 700)), f => f.Kind == FaultKind.OutsideDays).Sentence);
    }

    [Fact]
    public void Comes_too_early() => Assert.Equal(
        "“Draw the mill” comes a day after “Letters”, which is on Thursday; it cannot be on Thursday.",
        Assert.Single(With(At("Letters", Thursday, 600, adult: "Iris")), f => f.Kind == FaultKind.TooEarlyAfter).Sentence);

    [Fact]
    public void Comes_after_something_that_has_no_place() => Assert.Equal(
        "“Draw the mill” comes after “Letters”, which has no place.",
        Assert.Single(PlanCheck.Faults(Week, Good[1..]), f => f.Kind == FaultKind.TooEarlyAfter).Sentence);

    [Fact]
    public void Looks_too_early_too_late_or_never()
    {
        Assert.Equal("“Knead the dough” is to be looked after between 11:05 and 11:20 on Wednesday, not at 11:00.",
            Assert.Single(With(Good[1] with { LooksAt = 660 }), f => f.Kind == FaultKind.LookAtWrongTime).Sentence);
        Assert.Single(With(Good[1] with { LooksAt = 681 }), f => f.Kind == FaultKind.LookAtWrongTime);
        Assert.Equal("“Knead the dough” waits 60 minutes, and nobody looks after it.", Assert.Single(With(Good[1] with { LooksAt = null }), f => f.Kind == FaultKind.LookMissing).Sentence);
    }

    [Fact]
    public void Leaves_the_hours_to_which_it_is_bound() => Assert.Equal(
        "On Thursday at 10:35 “Nap story” would not be while Robin sleeps.", Assert.Single(With(At("Nap story", Thursday, 635)), f => f.Kind == FaultKind.BoundHours).Sentence);

    [Fact]
    public void Names_what_is_not_in_the_week()
    {
        Assert.Contains(PlanCheck.Faults(Week, [.. Good, At("A walk", Wednesday, 700)]), f => f is { Kind: FaultKind.Unknown, Sentence: "On Wednesday at 11:40 stands a session that is not in this week." });
        Assert.Contains(With(At("Letters", Wednesday, 540, adult: "Basil")), f => f is { Kind: FaultKind.Unknown, Sentence: "“Letters” names an adult who is not in this week." });
    }

    [Fact]
    public void Has_something_twice() => Assert.Contains(PlanCheck.Faults(Week, [.. Good, At("Rivers", Thursday, 660)]),
        f => f is { Kind: FaultKind.Twice, Sentence: "“Rivers” has two places, one of them on Thursday at 11:00." });

    [Fact]
    public void Is_found_wherever_two_things_of_a_child_are_put_at_one_time()
    {
        for (var seed = 1; seed <= 20; seed++)
        {
            var week = AnyWeek.Of(WeekSize.Small, seed);
            var plan = WeekLayout.Solve(week, new Effort(0)).Places;
            var one = week.Sessions.First(s => plan.Any(p => p.SessionId == s.Id));
            var other = week.Sessions.Last(s => s.Id != one.Id && s.Learners.Intersect(one.Learners).Any() && plan.Any(p => p.SessionId == s.Id));
            var there = plan.First(p => p.SessionId == one.Id);
            Assert.Contains(PlanCheck.Faults(week, [.. plan.Select(p => p.SessionId == other.Id ? p with { Day = there.Day, StartsAt = there.StartsAt } : p)]),
                f => f.Kind == FaultKind.TwoPlaces && f.With.Append(f.SessionId).Order().SequenceEqual(new[] { one.Id, other.Id }.Order()));
        }
    }
}
