using CoopLessons.Core.Units;
using static CoopLessons.Core.Tests.Units.GrainToLoaf;

namespace CoopLessons.Core.Tests.Units;

public class The_rules_of_a_bundle
{
    private static void OneFault(UnitBundle bundle, string path, string rule) =>
        Assert.Equal([new BundleFault(path, rule)], BundleRules.Faults(bundle));

    [Fact]
    public void Find_no_fault_in_a_sound_bundle() => Assert.Empty(BundleRules.Faults(Bundle));

    [Fact]
    public void Find_a_subject_that_stands_twice() =>
        OneFault(Bundle with { Subjects = [.. Bundle.Subjects, new("science", "Nature")] },
            "/subjects/3/code", "The subject “science” stands twice.");

    [Fact]
    public void Find_an_activity_that_stands_twice() =>
        OneFault(Bundle with { Activities = [Bread, Sorting with { Code = "bake-bread" }] },
            "/activities/1/code", "The activity “bake-bread” stands twice.");

    [Fact]
    public void Find_an_activity_that_comes_after_one_that_is_not_there() =>
        OneFault(With(Bread with { After = ["grow-the-wheat"] }), "/activities/0/after/0", "The unit has no activity “grow-the-wheat”.");

    [Fact]
    public void Find_activities_that_come_after_each_other() =>
        Assert.Equal(
            [
                new BundleFault("/activities/0/after", $"“{Bread.Code}” would come after itself."),
                new BundleFault("/activities/1/after", $"“{Sorting.Code}” would come after itself."),
            ],
            BundleRules.Faults(Bundle with { Activities = [Bread with { After = [Sorting.Code] }, Sorting with { After = [Bread.Code] }] }));

    [Fact]
    public void Allow_one_activity_after_another() =>
        Assert.Empty(BundleRules.Faults(Bundle with { Activities = [Bread with { After = [Sorting.Code] }, Sorting] }));

    [Theory]
    [InlineData(0, 0)]
    [InlineData(75, 0)]
    [InlineData(359, 0)]
    [InlineData(360, 1)]
    [InlineData(1440, 1)]
    [InlineData(1441, 2)]
    [InlineData(10080, 7)]
    public void Count_the_days_that_a_wait_puts_between(int waiting, int days) => Assert.Equal(days, ComesAfter.DaysAfter(waiting));

    [Fact]
    public void Find_a_week_after_the_last() =>
        OneFault(With(Bread with { Week = 3 }), "/activities/0/week", "Week 3 is after the unit's last week, 2.");

    [Fact]
    public void Allow_the_last_week() => Assert.Empty(BundleRules.Faults(With(Bread with { Week = 2 })));

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("  ")]
    public void Find_a_waiting_time_that_does_not_say_what_is_waited_for(string? waitingFor) =>
        OneFault(With(Bread with { WaitingFor = waitingFor }), "/activities/0/waitingFor", "A waiting time says what is waited for.");

    [Fact]
    public void Allow_an_activity_without_waiting_to_say_nothing_of_it() =>
        Assert.Empty(BundleRules.Faults(With(Bread with { WaitingMinutes = 0, WaitingFor = null })));

    [Fact]
    public void Find_a_weighted_subject_that_the_unit_does_not_have() =>
        OneFault(With(Bread with { Subjects = [new("science", 1), new("music", 1)] }),
            "/activities/0/subjects/1/code", "The unit has no subject “music”.");

    [Fact]
    public void Find_a_subject_that_is_weighted_twice() =>
        OneFault(With(Bread with { Subjects = [new("science", 1), new("science", 3)] }),
            "/activities/0/subjects/1/code", "The subject “science” stands twice.");

    [Fact]
    public void Find_a_touched_subject_that_the_unit_does_not_have() =>
        OneFault(With(Bread with { Touches = ["music"] }), "/activities/0/touches/0", "The unit has no subject “music”.");

    [Fact]
    public void Find_a_subject_that_is_touched_twice() =>
        OneFault(With(Bread with { Touches = ["history", "history"] }), "/activities/0/touches/1", "The subject “history” stands twice.");

    [Fact]
    public void Find_a_subject_that_is_both_weighted_and_touched() =>
        OneFault(With(Bread with { Touches = ["science"] }), "/activities/0/touches/0", "The subject “science” stands twice.");

    [Fact]
    public void Find_a_variant_whose_ages_run_backwards() =>
        OneFault(With(Bread with { Variants = [new(8, 12, "Weighs."), new(7, 4, "Shapes.")] }),
            "/activities/0/variants/1/toAge", "The ages of a variant run from the younger to the older.");

    [Fact]
    public void Allow_a_variant_for_a_single_age() => Assert.Empty(BundleRules.Faults(With(Bread with { Variants = [new(7, 7, "Shapes.")] })));

    [Fact]
    public void Tell_apart_codes_that_differ_in_case() =>
        OneFault(With(Bread with { Touches = ["History"] }), "/activities/0/touches/0", "The unit has no subject “History”.");

    [Fact]
    public void Name_every_fault_and_not_the_first_alone()
    {
        var spoilt = Bundle with { Activities = [Bread with { Week = 9, WaitingFor = null }, Sorting with { Touches = ["music"] }] };

        Assert.Equal(["/activities/0/week", "/activities/0/waitingFor", "/activities/1/touches/0"], BundleRules.Faults(spoilt).Select(f => f.Path));
    }
}
