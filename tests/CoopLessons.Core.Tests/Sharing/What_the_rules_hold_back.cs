using CoopLessons.Core.Sharing;
using CoopLessons.Core.Units;
using static CoopLessons.Core.Tests.Sharing.WhereWaterGoes;

namespace CoopLessons.Core.Tests.Sharing;

/// <summary>What a bundle's rules forbid beside what is here stays out and is asked, as narrowly as can be.</summary>
public class What_the_rules_hold_back
{
    private static readonly BundleActivity Boat = new("paper-boat", 2, 2, "A paper boat", ActivityKind.Making, "Fold.", [new("art", 1)], 20, 0, AdultNeed.Alone);

    private static readonly UnitBundle WithoutArt = First.Without("paint-river").With("crumpled-watershed", a => a with { Subjects = [new("science", 2)] })
        with
    { Subjects = [.. First.Subjects.Where(s => s.Code != "art")] };

    private static UnitMerge Asked(string line, UnitBundle mine, UnitBundle theirs)
    {
        var merge = UnitMerge.Of(First, mine, theirs);
        Assert.Equal(line, SharingWords.Of(merge.Only()));
        Assert.Empty(BundleRules.Faults(merge.Merged));
        return merge;
    }

    [Fact]
    public void A_subject_stays_while_an_activity_here_names_it()
    {
        var merge = Asked("The unit: subject Art was taken out there, and here “A paper boat” still has it", First.Plus(Boat), WithoutArt);
        Assert.Contains(merge.Merged.Subjects, s => s.Code == "art");
        Assert.Equal([new BundleWeight("science", 2)], merge.Merged.In("crumpled-watershed").Subjects);
        // Theirs cannot be taken while the boat has art.
        Assert.Equal(CollisionKind.StillNamedHere, merge.Decided(new Decision(merge.Only().Spot, Choice.Theirs)).Only().Kind);
    }

    [Fact]
    public void An_activity_whose_only_subject_is_not_here_stays_out() =>
        Assert.False(Asked("“A paper boat” is new there and has no subject that is in the unit here", WithoutArt, First.Plus(Boat)).Merged.Has("paper-boat"));

    [Fact]
    public void A_unit_stays_as_long_as_what_stands_in_it_here()
    {
        var three = First.With("mill-wheel", a => a with { Week = 3 }) with { Weeks = 3 };
        var merge = Asked("The unit has 3 weeks there, and here “A paper boat” stands after them", First.Plus(Boat with { Week = 4 }), three);
        Assert.Equal((4, 3), (merge.Merged.Weeks, merge.Merged.In("mill-wheel").Week));
    }

    [Fact]
    public void An_activity_for_a_week_that_was_cut_off_here_stays_out_or_where_it_was()
    {
        var three = First.With("mill-wheel", a => a with { Week = 3 }) with { Weeks = 3 };
        Asked("“A paper boat” is new there and stands in week 4, after the last week here", three, First.Plus(Boat with { Week = 4 }));
        var merge = Asked("“Creek walk” moved there to week 4, number 2, after the last week here", three, First.With("creek-walk", a => a with { Week = 4 }));
        Assert.Equal(3, merge.Merged.In("creek-walk").Week);
        // With the weeks back, it can move.
        Assert.Empty(UnitMerge.Of(First, three with { Weeks = 4 }, First.With("creek-walk", a => a with { Week = 4 }), merge.Open).Collisions);
    }

    [Fact]
    public void An_activity_stays_while_one_here_comes_after_it()
    {
        var merge = Asked("“Paint the river” was taken out there, and here “A paper boat” still comes after it", First.Plus(Boat with { After = ["paint-river"] }), First.Without("paint-river"));
        Assert.True(merge.Merged.Has("paint-river"));
    }

    [Fact]
    public void What_comes_after_an_activity_that_is_gone_here_comes_in_without_that()
    {
        var merge = Asked("“A paper boat” comes after “Paint the river” there, which is not in the unit here", First.Without("paint-river"), First.Plus(Boat with { After = ["paint-river", "mill-race-tale"] }));
        Assert.Equal(["mill-race-tale"], merge.Merged.In("paper-boat").After);
    }

    [Fact]
    public void Two_activities_never_wait_for_each_other()
    {
        var mine = First.With("measure-weir", a => a with { After = ["mill-wheel"] });
        var merge = Asked("“A mill wheel” comes after “Creek walk” there, and here it comes before it", mine, First.With("mill-wheel", a => a with { After = ["crumpled-watershed", "creek-walk"] }));
        Assert.Equal(["crumpled-watershed"], merge.Merged.In("mill-wheel").After);
    }

    [Fact]
    public void An_activity_keeps_its_last_subject()
    {
        var merge = Asked("“A crumpled watershed”: subject Science went there, and without it the activity would have no subject",
            First.With("crumpled-watershed", a => a with { Subjects = [new("science", 2)] }), First.With("crumpled-watershed", a => a with { Subjects = [new("art", 1)] }));
        Assert.Equal([new BundleWeight("science", 2)], merge.Merged.In("crumpled-watershed").Subjects);
    }

    [Fact]
    public void A_unit_keeps_its_last_activity()
    {
        var two = First with { Activities = [Weir, Painting] };
        var merge = UnitMerge.Of(two, two with { Activities = [Weir] }, two with { Activities = [Painting] });
        Assert.Equal("“Measure the weir” was taken out there, and without it the unit would be empty", SharingWords.Of(merge.Only()));
    }

    [Fact]
    public void A_list_takes_no_more_than_it_holds()
    {
        static UnitBundle Five(string name, int count) => First.With("measure-weir", a => a with { Printables = [.. Enumerable.Range(1, count).Select(i => new Printable($"{name} {i}", 1))] });
        var merge = UnitMerge.Of(First, Five("Chart", 9), Five("Drawing", 2));
        Assert.Equal(10, merge.Merged.In("measure-weir").Printables!.Count);
        Assert.Equal("“Measure the weir”: print Drawing 2 is new there, and there is no room for more here", SharingWords.Of(merge.Only()));
    }

    [Fact]
    public void A_decision_at_a_spot_that_was_not_asked_is_refused()
    {
        var merge = UnitMerge.Of(First, First with { Title = "Mine" }, First with { Title = "Theirs" });
        Assert.Throws<ArgumentException>(() => merge.Decided(new Decision(new UnitSpot(null, "summary"), Choice.Mine)));
        Assert.Throws<ArgumentException>(() => merge.Decided(new Decision(merge.Only().Spot, Choice.Mine), new Decision(merge.Only().Spot, Choice.Theirs)));
        Assert.Throws<ArgumentException>(() => merge.Decided(new Decision(merge.Only().Spot, Choice.OwnText, "")));
        Assert.Equal("The text has 121 characters; at most 120 have room here.", OwnText.Fault(merge.Only().Spot, new string('a', 121)));
        Assert.Equal("Only a text can be replaced by one of your own.", OwnText.Fault(new UnitSpot(null, "weeks"), "4"));
    }
}
