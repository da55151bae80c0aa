using CoopLessons.Core.Sharing;
using CoopLessons.Core.Units;
using static CoopLessons.Core.Tests.Sharing.WhereWaterGoes;

namespace CoopLessons.Core.Tests.Sharing;

/// <summary>The Alders wrote the unit; four families bend it, each in its way; the Alders publish twice more.</summary>
public class Five_families_and_one_unit
{
    private static readonly UnitBundle Birches = First.Without("paint-river").With("crumpled-watershed", a => a with { Subjects = [new("science", 2)] })
        with
    { Subjects = [.. First.Subjects.Where(s => s.Code != "art")] };

    private static readonly UnitBundle Cedars = First.With("mill-race-tale", a => a with { HandsOnMinutes = 30 });

    private static readonly UnitBundle Dogwoods = First.With("crumpled-watershed", a => a with { Week = 2, Order = 2 }).With("creek-walk", a => a with { Week = 2, Order = 3 });

    private static readonly UnitBundle Hazels = First.With("measure-weir", a => a with { Does = "Float a cork over the weir and time it." });

    /// <summary>The text of the weir is longer, the tale takes longer, the watershed moves, a new activity with art comes.</summary>
    private static readonly UnitBundle Second = First
        .With("measure-weir", a => a with { Does = "Read the gauge. Write the height down. Do it again tomorrow." })
        .With("mill-race-tale", a => a with { HandsOnMinutes = 75 })
        .With("crumpled-watershed", a => a with { Order = 5 })
        .Plus(new BundleActivity("map-creek", 3, 3, "Map the creek", ActivityKind.Drawing, "Draw what you saw.", [new("science", 1), new("art", 2)], 40, 0, AdultNeed.Alone, After: ["creek-walk"]));

    /// <summary>The wheel takes less time, the tale still another; the painting goes.</summary>
    private static readonly UnitBundle Third = Second.Without("paint-river")
        .With("mill-wheel", a => a with { HandsOnMinutes = 50 })
        .With("mill-race-tale", a => a with { HandsOnMinutes = 50 });

    [Fact]
    public void Who_dropped_art_gets_the_new_map_without_it_and_is_asked()
    {
        var merge = UnitMerge.Of(First, Birches, Second);

        Assert.Equal([new BundleWeight("science", 1)], merge.Merged.In("map-creek").Subjects);
        Assert.Equal(["science", "history", "reading"], merge.Merged.Subjects.Select(s => s.Code));
        Assert.False(merge.Merged.Has("paint-river"));
        Assert.Equal(75, merge.Merged.In("mill-race-tale").HandsOnMinutes);
        var asked = merge.Only();
        Assert.Equal((new UnitSpot("map-creek", "subjects", "art"), CollisionKind.NotHere), (asked.Spot, asked.Kind));
        Assert.Equal("“Map the creek” has the subject Art there, which is not in the unit here", SharingWords.Of(asked));

        // Its answer, without the unit's subject, cannot be theirs; and once answered it is not asked again.
        Assert.Equal(CollisionKind.NotHere, merge.Decided(new Decision(asked.Spot, Choice.Theirs)).Only().Kind);
        var decided = merge.Decided(new Decision(asked.Spot, Choice.Mine));
        Assert.Empty(decided.Open);
        Assert.Empty(UnitMerge.Of(Second, decided.Merged, Third, decided.Open).Collisions);
    }

    [Fact]
    public void Who_halved_the_reading_keeps_the_half_until_it_is_decided_and_is_asked_of_the_newest()
    {
        var second = UnitMerge.Of(First, Cedars, Second);
        Assert.Equal("“A tale of the mill race”: minutes 60 before, 30 here, 75 there", SharingWords.Of(second.Only()));
        Assert.Equal(30, second.Merged.In("mill-race-tale").HandsOnMinutes);
        Assert.True(second.Merged.Has("map-creek"));

        var third = UnitMerge.Of(Second, second.Merged, Third, second.Open);
        Assert.Equal("“A tale of the mill race”: minutes 60 before, 30 here, 50 there", SharingWords.Of(third.Only()));
        Assert.Equal(50, third.Merged.In("mill-wheel").HandsOnMinutes);
        Assert.False(third.Merged.Has("paint-river"));

        Assert.Equal(50, third.Decided(new Decision(third.Only().Spot, Choice.Theirs)).Merged.In("mill-race-tale").HandsOnMinutes);
        Same(third.Merged, third.Decided(new Decision(third.Only().Spot, Choice.Mine)).Merged);
    }

    [Fact]
    public void What_was_left_for_later_goes_by_itself_where_the_author_takes_it_back()
    {
        var second = UnitMerge.Of(First, Cedars, Second);
        var back = UnitMerge.Of(Second, second.Merged, Third.With("mill-race-tale", a => a with { HandsOnMinutes = 60 }), second.Open);

        Assert.Empty(back.Collisions);
        Assert.Equal(30, back.Merged.In("mill-race-tale").HandsOnMinutes);
    }

    [Fact]
    public void Who_moved_week_three_keeps_its_places_but_where_the_author_moved_too()
    {
        var merge = UnitMerge.Of(First, Dogwoods, Second);

        Assert.Equal("“A crumpled watershed”: place week 3, number 1 before, week 2, number 2 here, week 3, number 5 there", SharingWords.Of(merge.Only()));
        Assert.Equal((2, 2), (merge.Merged.In("crumpled-watershed").Week, merge.Merged.In("crumpled-watershed").Order));
        Assert.Equal((2, 3), (merge.Merged.In("creek-walk").Week, merge.Merged.In("creek-walk").Order));
        var decided = merge.Decided(new Decision(merge.Only().Spot, Choice.Theirs)).Merged.In("crumpled-watershed");
        Assert.Equal((3, 5), (decided.Week, decided.Order));
    }

    [Fact]
    public void Who_rewrote_an_activity_has_three_ways_on()
    {
        var merge = UnitMerge.Of(First, Hazels, Second);
        var asked = merge.Only();

        Assert.Equal("“Measure the weir”: what you do was changed here and there, each in another way", SharingWords.Of(asked));
        Assert.Equal("Float a cork over the weir and time it.", merge.Merged.In("measure-weir").Does);
        Assert.Equal("Read the gauge. Write the height down. Do it again tomorrow.", merge.Decided(new Decision(asked.Spot, Choice.Theirs)).Merged.In("measure-weir").Does);
        var own = merge.Decided(new Decision(asked.Spot, Choice.OwnText, "Float a cork, then read the gauge."));
        Assert.Equal("Float a cork, then read the gauge.", own.Merged.In("measure-weir").Does);
        Assert.Empty(UnitMerge.Of(Second, own.Merged, Second, own.Open).Collisions);
    }

    [Fact]
    public void What_one_of_them_changed_can_be_offered_to_the_author()
    {
        var cedars = Cedars.With("mill-race-tale", a => a with { Variants = [new(5, 8, "Hears half a chapter."), a.Variants![1]] });
        var change = UnitChange.Between(First, cedars);
        Assert.Equal(
            ["“A tale of the mill race”: minutes 60 → 30", "“A tale of the mill race”: ages 5 to 8, what you do is worded anew"],
            change.Differences.Select(SharingWords.Of));

        var young = UnitSpotOf("variants");
        var offered = change.Onto(Third, [young]);
        Assert.Empty(offered.Collisions);
        Assert.Equal("Hears half a chapter.", offered.Merged.In("mill-race-tale").Variants![0].Does);
        Same(Third.With("mill-race-tale", a => a with { Variants = [new(5, 8, "Hears half a chapter."), a.Variants![1]] }), offered.Merged);

        // The minutes were changed by the author, too.
        Assert.Equal("“A tale of the mill race”: minutes 60 before, 50 here, 30 there", SharingWords.Of(change.Onto(Third).Only()));
        Assert.Throws<ArgumentException>(() => change.Onto(Third, [new UnitSpot("mill-wheel", "does")]));

        UnitSpot UnitSpotOf(string field) => change.Differences.Single(d => d.Spot.Field == field).Spot;
    }
}
