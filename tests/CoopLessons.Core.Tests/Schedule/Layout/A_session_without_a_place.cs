using CoopLessons.Core.Schedule;
using CoopLessons.Core.Units;
using static CoopLessons.Core.Tests.Schedule.Layout.Desk;

namespace CoopLessons.Core.Tests.Schedule.Layout;

/// <summary>Something finds no place, and a parent asks why.</summary>
public class A_session_without_a_place
{
    private static readonly DateOnly[] Days = [Wednesday, Thursday];

    private static Misfit Only(WeekProblem week)
    {
        var plan = WeekLayout.Solve(week, Effort.Usual);
        Assert.DoesNotContain(PlanCheck.Faults(week, plan.Places), f => week.Sessions.All(s => s.Id != f.SessionId || !s.Fixed));
        return Assert.Single(plan.Misfits);
    }

    private static FreeTime Both(int from, int to, int fromThursday, int toThursday) => Free((Wednesday, from, to), (Thursday, fromThursday, toThursday));

    [Fact]
    public void Had_never_enough_time_shared()
    {
        var misfit = Only(Desk.Week(Days, [Learner("Wren", Both(540, 600, 540, 580)), Learner("Lark", Both(570, 700, 540, 600))], [], Session("Mill song", 45, AdultNeed.Alone, "Wren", "Lark")));
        Assert.Equal("Needs 45 minutes with Wren and Lark; their longest shared free time is 40 on Thursday.", misfit.Reason);
        Assert.Equal([MisfitChoice.LeaveOut, MisfitChoice.Shorten, MisfitChoice.NextWeek], misfit.Choices);
        Assert.True(misfit.FoundOut);
    }

    [Fact]
    public void Had_never_an_adult_for_long_enough()
    {
        var week = Desk.Week(Days, [Learner("Wren", Both(540, 720, 540, 720))], [Adult("Iris", Both(540, 570, 540, 600))], Session("Bake", 90, AdultNeed.HandsOn, "Wren"));
        var misfit = Only(week);
        Assert.Equal("Needs 90 minutes with an adult; the longest time that an adult shares with Wren is 60 on Thursday.", misfit.Reason);
        Assert.Contains(MisfitChoice.AskAHelper, misfit.Choices);
        Assert.Equal("Needs 90 minutes with an adult, and no adult is there when Wren is free.", Only(week with { Adults = [] }).Reason);
    }

    [Fact]
    public void Waits_for_something_that_has_none()
    {
        var plan = WeekLayout.Solve(Desk.Week(Days, [Learner("Wren", Both(540, 600, 540, 600))], [],
            Session("Mix", 90, AdultNeed.Alone, "Wren"), Session("Taste", 10, AdultNeed.Alone, "Wren") with { After = [new Precedence(Id("Mix"), 0)] }), Effort.Usual);
        Assert.Equal("Comes after “Mix”, which found no place.", plan.Misfits.Single(m => m.SessionId == Id("Taste")).Reason);
    }

    [Fact]
    public void Waits_for_something_that_stands_too_late() => Assert.Equal(
        "Comes a day after “Sow”, which is on Thursday; no time is left behind it.",
        Only(Desk.Week(Days, [Learner("Wren", Both(540, 720, 540, 720))], [],
            Session("Sow", 20, AdultNeed.Alone, "Wren") with { OnlyOn = [Thursday] }, Session("Count the shoots", 20, AdultNeed.Alone, "Wren") with { After = [new Precedence(Id("Sow"), 1)] })).Reason);

    [Fact]
    public void Belongs_to_a_day_that_the_week_does_not_have() => Assert.Equal(
        "May stand only on Monday 2 March, which is not among these days.",
        Only(Desk.Week(Days, [Learner("Wren", Both(540, 720, 540, 720))], [], Session("Market", 20, AdultNeed.Alone, "Wren") with { OnlyOn = [Monday] })).Reason);

    [Fact]
    public void Is_one_too_many_for_a_child()
    {
        var plan = WeekLayout.Solve(Desk.Week([Thursday], [Learner("Wren", Free((Thursday, 540, 600)))], [],
            [.. Enumerable.Range(1, 3).Select(i => Session($"Page {i}", 25, AdultNeed.Alone, "Wren"))]), Effort.Usual);
        Assert.Equal("What is planned for Wren takes 75 minutes; the free time is 60 minutes.", Assert.Single(plan.Misfits).Reason);
    }

    [Fact]
    public void Is_one_too_many_for_the_adults_hands()
    {
        var plan = WeekLayout.Solve(Desk.Week([Thursday], [Learner("Wren", Free((Thursday, 480, 720))), Learner("Lark", Free((Thursday, 480, 720)))], [Adult("Iris", Free((Thursday, 540, 600)))],
            Session("Saw", 40, AdultNeed.HandsOn, "Wren"), Session("Drill", 40, AdultNeed.HandsOn, "Lark")), Effort.Usual);
        var misfit = Assert.Single(plan.Misfits);
        Assert.Equal("What needs an adult’s hands takes 80 minutes; the adults have 60 minutes.", misfit.Reason);
        Assert.Equal([MisfitChoice.LeaveOut, MisfitChoice.Shorten, MisfitChoice.NextWeek, MisfitChoice.AskAHelper], misfit.Choices);
    }

    [Fact]
    public void Finds_only_shorter_gaps()
    {
        var week = Desk.Week(Days, [Learner("Wren", Both(540, 660, 540, 660)), Learner("Lark", Both(540, 660, 540, 660))], [Adult("Iris", Both(540, 660, 540, 660))],
            Session("Letters", 25, AdultNeed.Alone, "Wren") with { Was = new OldPlace(Wednesday, 590), Fixed = true },
            Session("Numbers", 25, AdultNeed.Alone, "Wren") with { Was = new OldPlace(Thursday, 540), Fixed = true },
            Session("Loaf", 60, AdultNeed.HandsOn, "Lark") with { OnlyOn = [Thursday], Weight = Weight.AboveAll },
            Session("Bake", 90, AdultNeed.HandsOn, "Wren"));
        // Thursday leaves 90 minutes to Wren, of which the loaf takes Iris.
        Assert.Equal("Needs 90 minutes with an adult; the longest gap left is 60 on Thursday.", Only(week with { Learners = [week.Learners[0], week.Learners[1] with { Free = Free((Thursday, 540, 600)) }] }).Reason);
    }

    [Fact]
    public void Fits_in_a_gap_but_for_its_look_and_is_told_with_what_it_clashes()
    {
        // The time before is long enough; at the time of the look Iris has the oven in hand.
        var week = Desk.Week([Thursday], [Learner("Wren", Free((Thursday, 540, 640))), Learner("Lark", Free((Thursday, 600, 650)))], [Adult("Iris", Free((Thursday, 540, 650)))],
            Session("Oven", 45, AdultNeed.HandsOn, "Lark") with { Weight = Weight.AboveAll },
            Session("Dough", 40, AdultNeed.Alone, "Wren") with { Wait = new WaitAndLook(30, 10, 5), Weight = Weight.IfThereIsRoom, Bound = new BoundHours(Free((Thursday, 540, 640)), "in the warm hours") });
        Assert.Equal("Does not go together with what is planned: on Thursday, for example, it clashes with “Oven”.", Only(week).Reason);
    }

    [Fact]
    public void Has_no_time_for_its_look() => Assert.Equal(
        "Needs a look by an adult 3 hours after its end; on no day is there time for both.",
        Only(Desk.Week(Days, [Learner("Wren", Both(540, 720, 540, 720))], [Adult("Iris", Both(540, 720, 540, 720))], Session("Dough", 30, AdultNeed.Alone, "Wren") with { Wait = new WaitAndLook(180, 5, 0) })).Reason);

    [Fact]
    public void Is_bound_to_a_nap_that_is_too_short()
    {
        var nap = new BoundHours(Both(780, 800, 780, 810), "while Robin sleeps");
        var week = Desk.Week(Days, [Learner("Wren", Both(540, 900, 540, 900))], [Adult("Iris", Both(540, 900, 540, 900))], Session("Paint", 40, AdultNeed.HandsOn, "Wren") with { Bound = nap });
        Assert.Equal("Needs 40 minutes while Robin sleeps; the longest stretch for it is 30 on Thursday.", Only(week).Reason);
        Assert.Equal("Needs 40 minutes while Robin sleeps; there is no such time on these days.", Only(week with { Sessions = [week.Sessions[0] with { Bound = nap with { Hours = FreeTime.None } }] }).Reason);
    }

    [Fact]
    public void Lands_in_the_nap_where_that_is_long_enough()
    {
        var week = Desk.Week(Days, [Learner("Wren", Both(540, 900, 540, 900))], [Adult("Iris", Both(540, 900, 540, 900))],
            Session("Paint", 40, AdultNeed.HandsOn, "Wren") with { Bound = new BoundHours(Both(780, 810, 780, 840), "while Robin sleeps") });
        var place = Assert.Single(WeekLayout.Solve(week, Effort.Usual).Places);
        Assert.Equal(Thursday, place.Day);
        Assert.InRange(place.StartsAt, 780, 800);
    }

    [Fact]
    public void Is_left_by_something_fixed_that_should_have_come_after_it() => Assert.Equal(
        "Belongs before or after “Bake”, which is fixed on Wednesday; no time is left for it there.",
        Only(Desk.Week([Wednesday, Thursday], [Learner("Wren", Both(540, 600, 540, 600))], [],
            Session("Bake", 20, AdultNeed.Alone, "Wren") with { Was = new OldPlace(Wednesday, 580), Fixed = true },
            Session("Eat", 20, AdultNeed.Alone, "Wren") with { After = [new Precedence(Id("Bake"), 2)] })).Reason);
}
