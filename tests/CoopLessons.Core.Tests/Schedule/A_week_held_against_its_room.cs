using CoopLessons.Core.Schedule;
using CoopLessons.Core.Units;

namespace CoopLessons.Core.Tests.Schedule;

/// <summary>A week of the Alders: Wren with 400 minutes, Linnet with 840, and Iris whose hands have 240.</summary>
public class A_week_held_against_its_room
{
    private static readonly Guid Wren = AlderLog.Id(1);
    private static readonly Guid Linnet = AlderLog.Id(2);
    private static readonly Room[] Children = [new(Wren, "Wren", 400), new(Linnet, "Linnet", 840)];
    private static readonly Room[] Iris = [new(AlderLog.Id(3), "Iris", 240)];

    private static readonly Demand Dough = new(AlderLog.Id(11), "Knead the dough", "science", DemandOrigin.Unit, [Wren, Linnet], 60, AdultNeed.HandsOn, 10);
    private static readonly Demand Mill = new(AlderLog.Id(12), "Build a mill", "art", DemandOrigin.Unit, [Wren, Linnet], 90, AdultNeed.HandsOn);
    private static readonly Demand Map = new(AlderLog.Id(13), "Draw the river", "geography", DemandOrigin.Unit, [Linnet], 45, AdultNeed.Beside);
    private static readonly Demand Arithmetic = new(AlderLog.Id(14), "Arithmetic", "mathematics", DemandOrigin.Course, [Wren], 120, AdultNeed.HandsOn);
    private static readonly Demand Songs = new(AlderLog.Id(15), "Songs", "music", DemandOrigin.Loop, [Wren, Linnet], 40, AdultNeed.Alone);
    private static readonly Demand[] All = [Dough, Mill, Map, Arithmetic, Songs];

    private static readonly Fit Week = Fit.Of(All, Children, Iris);

    // Wren: dough 60 + look 10, mill 90, arithmetic 120, songs 40: 320.
    [Fact]
    public void Asks_each_learner_for_what_the_learner_does()
    {
        Assert.Equal((160, 120, 40), (Week.Learners[0].FromUnits, Week.Learners[0].FromCourses, Week.Learners[0].FromLoops));
        Assert.Equal((320, 80, 0), (Week.Learners[0].Demand, Week.Learners[0].Spare, Week.Learners[0].Over));
        Assert.Equal((205, 0, 40), (Week.Learners[1].FromUnits, Week.Learners[1].FromCourses, Week.Learners[1].FromLoops));
    }

    // Hands: dough 60 + look 10, mill 90, arithmetic 120; drawing has somebody beside and songs nobody.
    [Fact]
    public void Asks_the_hands_for_what_takes_hands_once_however_many_children_there_are()
    {
        Assert.Equal((160, 120, 0), (Week.Hands.FromUnits, Week.Hands.FromCourses, Week.Hands.FromLoops));
        Assert.Equal(40, Week.Hands.Over);
        Assert.False(Week.Fits);
        Assert.Same(Week.Hands, Week.Fullest);
    }

    [Fact]
    public void Is_helped_first_by_what_loses_nothing_and_then_by_what_loses_least() => Assert.Equal(
        [
            (Dough.Id, RemedyKind.Beside, 60, 0, true),
            (Mill.Id, RemedyKind.Beside, 90, 0, true),
            (Dough.Id, RemedyKind.LeaveOut, 70, 70, true),
            (Mill.Id, RemedyKind.LeaveOut, 90, 90, true),
        ],
        Week.Hands.Remedies.Select(r => (r.DemandId, r.Kind, r.Relief, r.Lost, r.IsEnough)));

    [Fact]
    public void Is_helped_by_the_greatest_relief_where_no_single_thing_is_enough()
    {
        var hands = Fit.Of(All, Children, [new Room(AlderLog.Id(3), "Iris", 120)]).Hands;
        Assert.Equal(160, hands.Over);
        Assert.Equal([90, 90, 70, 60], hands.Remedies.Select(r => r.Relief));
        Assert.DoesNotContain(hands.Remedies, r => r.IsEnough);
        Assert.Equal(RemedyKind.Beside, hands.Remedies[0].Kind);
    }

    [Fact]
    public void Offers_a_child_only_what_the_child_does()
    {
        var linnet = Fit.Of(All, [Children[0], new Room(Linnet, "Linnet", 230)], Iris).Learners[1];
        Assert.Equal(15, linnet.Over);
        Assert.Equal([(Map.Id, true), (Dough.Id, true), (Mill.Id, true)], linnet.Remedies.Select(r => (r.DemandId, r.IsEnough)));
        Assert.All(linnet.Remedies, r => Assert.Equal(RemedyKind.LeaveOut, r.Kind));
    }

    [Fact]
    public void Never_offers_to_leave_out_a_course_or_a_loop() =>
        Assert.Empty(Fit.Of([Arithmetic, Songs], [new Room(Wren, "Wren", 10)], []).Lines.SelectMany(l => l.Remedies));

    [Fact]
    public void Offers_nothing_where_it_fits()
    {
        var fit = Fit.Of(All, Children, [.. Iris, new Room(AlderLog.Id(4), "Basil", 60)]);
        Assert.True(fit.Fits);
        Assert.Equal(20, fit.Hands.Spare);
        Assert.Empty(fit.Lines.SelectMany(l => l.Remedies));
    }

    [Fact]
    public void Needs_hands_to_look_even_where_somebody_is_only_beside() =>
        Assert.Equal(10, Fit.Of([Dough with { Need = AdultNeed.Alone }], Children, Iris).Hands.Demand);

    [Fact]
    public void Without_any_room_is_fuller_than_the_fullest_other()
    {
        var (some, holiday, idle) = (Fit.Of([Map], Children, Iris), Fit.Of([Songs], [new Room(Wren, "Wren", 0)], []), Fit.Of([], [new Room(Wren, "Wren", 0)], []));
        Assert.Equal(1, Fit.FullestOf([some, holiday]));
        Assert.Equal(0, Fit.FullestOf([some, idle]));
        Assert.Equal(1, Fit.FullestOf([idle, some, some]));
    }

    [Fact]
    public void Refuses_a_demand_that_stands_twice_and_one_below_nothing()
    {
        Assert.Throws<ArgumentException>(() => Fit.Of([Map, Map], Children, Iris));
        Assert.Throws<ArgumentException>(() => Fit.Of([Map with { Minutes = -1 }], Children, Iris));
        Assert.Throws<ArgumentException>(() => Fit.Of([Map with { LookMinutes = -1 }], Children, Iris));
    }
}
