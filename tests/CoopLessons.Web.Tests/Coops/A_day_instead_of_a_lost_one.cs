using CoopLessons.Core.Coop;
using CoopLessons.Data.Coops;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Data.Coops.Off;

namespace CoopLessons.Web.Tests.Coops;

/// <summary>Thursday 12 March 2026 fell through; the co-op meets on Thursdays. What stands against each day ahead.</summary>
public sealed class A_day_instead_of_a_lost_one
{
    private static readonly DateOnly Lost = new(2026, 3, 12);
    private static readonly Guid Coop = Guid.CreateVersion7(), Alder = Guid.CreateVersion7(), Birch = Guid.CreateVersion7(), Barn = Guid.CreateVersion7(), Nine = Guid.CreateVersion7();
    private static readonly CoopAdult Iris = new(Coop, Alder, Guid.CreateVersion7(), "Iris"), Rue = new(Coop, Birch, Guid.CreateVersion7(), "Rue");

    [Fact]
    public void Is_never_one_on_which_the_coop_meets_nor_one_that_is_past()
    {
        var ask = Ask([Bread()], Meeting(19), Meeting(26));
        Assert.False(ask.IsFree(new(2026, 3, 19), Lost));
        Assert.False(ask.IsFree(Lost, Lost));
        Assert.False(ask.IsFree(new(2026, 3, 13), new(2026, 3, 13)));
        Assert.True(ask.IsFree(new(2026, 3, 13), Lost));
        Assert.DoesNotContain(ask.Propose(Lost, MakeUpDays.Ahead), d => d.On.Day is 19 or 26 && d.On.Month == 3);
    }

    [Fact]
    public void Comes_first_on_the_usual_weekday_where_nothing_stands_against_it_and_last_beside_another_meeting()
    {
        var days = Ask([Bread()], Meeting(19)).Propose(Lost, MakeUpDays.Ahead);
        Assert.Equal(new(2026, 3, 26), days[0].On);
        Assert.Empty(days[0].Against);
        var beside = days.Single(d => d.On == new DateOnly(2026, 3, 20));
        Assert.Equal(["The co-op meets on Thursday, 19 March, too."], beside.Against);
        Assert.Equal([new(2026, 3, 18), beside.On], days.Where(d => d.Against.Count > 0).Select(d => d.On));
        Assert.Equal(beside.On, days[^1].On);
    }

    [Fact]
    public void Says_which_class_is_over_by_then_or_has_not_begun()
    {
        var ask = Ask([Bread() with { Last = new(2026, 3, 20) }]);
        Assert.Empty(ask.Look(new(2026, 3, 20)).Against);
        Assert.Equal(["“Bread” ends on Friday, 20 March: its last day has to be moved."], ask.Look(new(2026, 3, 21)).Against);
    }

    [Fact]
    public void Says_who_is_away_and_what_that_leaves_in_the_room()
    {
        var on = new DateOnly(2026, 3, 26);
        var ask = Ask([Bread()]) with { Away = new HashSet<(Guid, DateOnly)> { (Rue.Id, on) } };
        Assert.Equal(["Rue Birch, who helps in “Bread”, is away.", "Iris Alder is the only adult in the barn at 9:00: a second adult of another family is needed."], ask.Look(on).Against);
        Assert.Empty(ask.Look(on.AddDays(7)).Against);
        Assert.Empty(ask.OnAnyDay());
    }

    [Fact]
    public void Says_once_what_is_wrong_on_any_day()
    {
        var gone = new CoopAdult(Coop, Birch, Rue.Id, "Rue");
        gone.Go();
        var ask = Ask([Bread()]) with { Adults = [Iris, gone] };
        Assert.Equal(["Rue Birch, named for “Bread”, is no longer there.", "Iris Alder is the only adult in the barn at 9:00: a second adult of another family is needed."], ask.OnAnyDay());
        Assert.Empty(ask.Look(new(2026, 3, 26)).Against);
    }

    [Fact]
    public void Says_which_other_class_has_the_room_by_then()
    {
        var seeds = new ClassFacts("Seeds", "", Nine, Barn, 6, 9, 8, new(2026, 3, 20), new(2026, 5, 28), false);
        var ask = Ask([Bread(), seeds]);
        Assert.Empty(ask.OnAnyDay());
        Assert.Empty(ask.Look(new(2026, 3, 18)).Against);
        Assert.Equal(["“Bread” and “Seeds” are both in the barn at 9:00."], ask.Look(new(2026, 3, 26)).Against);
    }

    [Fact]
    public void Counts_the_children_who_are_signed_up_where_that_is_known()
    {
        var ask = Ask([Bread()]);
        var bread = ask.Classes[0].Id;
        var many = Enumerable.Range(0, 11).Select(_ => new RoomChild(Guid.CreateVersion7(), "", Alder, 6, [])).ToList();
        // Common practice: five young ones to an adult, so eleven need three; two are named.
        Assert.Contains(" needs 3 adults at 9:00", Assert.Single((ask with { Takers = many.ToLookup(_ => bread) }).OnAnyDay()), StringComparison.Ordinal);
        Assert.Empty((ask with { Takers = Array.Empty<RoomChild>().ToLookup(_ => bread) }).OnAnyDay());
    }

    private static ClassFacts Bread() => new("Bread", "Bake.", Nine, Barn, 6, 12, 12, new(2026, 1, 8), new(2026, 5, 28), false);

    private static CoopMeeting Meeting(int day) => new(Coop, Guid.CreateVersion7(), new(2026, 3, day), "the mill house");

    private static MakeUpDays Ask(IReadOnlyList<ClassFacts> classes, params CoopMeeting[] others)
    {
        var lost = Meeting(Lost.Day);
        lost.CallOff("snow", new(2026, 3, 12, 11, 0, 0, DateTimeKind.Utc));
        // Only the first has adults of its own.
        return new MakeUpDays(
            lost, [lost, .. others], [.. classes.Select((c, i) => new CoopClass(Coop, Guid.CreateVersion7(), c, i == 0 ? ClassDetails.Empty with { Teachers = [Iris.Id], Helpers = [Rue.Id] } : ClassDetails.Empty))],
            [new CoopPeriod(Coop, Nine, new(9, 0), new(10, 30))], [new CoopRoom(Coop, Barn, "the barn", null)], [Iris, Rue],
            new Dictionary<Guid, string> { [Alder] = "Alder", [Birch] = "Birch" }, Array.Empty<ShownLearner>());
    }
}
