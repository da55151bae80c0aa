using CoopLessons.Core.Coop;
using CoopLessons.Core.Schedule;
using static CoopLessons.Core.Tests.Coop.Millrace;

namespace CoopLessons.Core.Tests.Coop;

/// <summary>The Millrace co-op gives the turns of a term.</summary>
public class A_fair_rota
{
    private static readonly (string Name, string Family)[] Eight =
        [("Iris", "Alder"), ("Basil", "Alder"), ("Rue", "Birch"), ("Sage", "Birch"), ("Linden", "Cedar"), ("Fern", "Cedar"), ("Hazel", "Dogwood"), ("Rowan", "Dogwood")];

    internal static RotaRole[] Roles(int teaching = 1) =>
        [new(Id("Teaching"), "Teaching", teaching, 1), new(Id("Hosting"), "Hosting", 1, 1), new(Id("Minding"), "Minding", 1, 1), new(Id("Helping"), "Helping", 1, 1)];

    internal static RotaProblem Term(int meetings, RotaRole[] roles, IEnumerable<(string Name, string Family)>? adults = null)
    {
        var who = (adults ?? Eight).ToList();
        return new RotaProblem(Thursdays(meetings), roles,
            [.. who.Select(a => a.Family).Distinct().Select(f => new RotaFamily(Id(f), f))], [.. who.Select(a => new RotaAdult(Id(a.Name), a.Name, Id(a.Family)))]);
    }

    private static Rota Solved(RotaProblem problem)
    {
        var rota = RotaPlanning.Solve(problem, Effort.Longer);
        Assert.Empty(RotaCheck.Faults(problem, rota.Turns));
        Assert.Equal(RotaCheck.Cost(problem, rota.Turns), rota.Cost);
        return rota;
    }

    // Derived: 12 meetings of 4 roles are 48 turns, 48/4 = 12 for each family, 12/4 = 3 of each role.
    [Theory]
    [InlineData(1, true)]
    [InlineData(1, false)]
    [InlineData(3, false)]
    public void Gives_four_families_twelve_turns_each_and_every_role_three_times(int teaching, bool onlyOneAdultEach)
    {
        var rota = Solved(Term(12, Roles(teaching), onlyOneAdultEach ? Eight.Where((_, i) => i % 2 == 0) : null));
        Assert.Equal(48, rota.Turns.Count);
        Assert.All(rota.Balances, b => Assert.Equal(12, b.Turns));
        Assert.All(rota.Balances, b => Assert.Equal([3, 3, 3, 3], b.ByRole));
        Assert.All(rota.Balances, b => Assert.Equal((0, 100 * b.Weighted), (b.DistanceHundredths, b.FairHundredths)));
        Assert.Equal(new RotaCost(0, 0, 0, 0, 0), rota.Cost);
        Assert.True(rota.IsBest);
        Assert.Equal("No rota is better under these rules and wishes.", CoopWords.Proof(rota));
    }

    [Fact]
    public void Is_proven_fair_also_where_the_shares_do_not_come_out_whole()
    {
        // Five families: 48/5 = 9.6, so three do 10 and two do 9; 12/5 = 2.4 of each role, so 2 or 3.
        var rota = Solved(Term(12, Roles(), [.. Eight, ("Clover", "Elm")]));
        Assert.Equal([9, 9, 10, 10, 10], rota.Balances.Select(b => b.Turns).Order());
        Assert.All(rota.Balances.SelectMany(b => b.ByRole), n => Assert.InRange(n, 2, 3));
        Assert.Contains(RotaPart.Turns, rota.Proven);
        Assert.Contains(RotaPart.Roles, rota.Proven);
        Assert.Equal(48_00, rota.Balances.Sum(b => b.FairHundredths));
    }

    [Fact]
    public void Makes_good_what_was_done_before()
    {
        var term = Term(4, [Roles()[0]], [("Iris", "Alder"), ("Rue", "Birch")]);
        term = term with { Families = [term.Families[0] with { PastHundredths = 100 }, term.Families[1] with { PastHundredths = -100 }] };
        var rota = Solved(term);
        Assert.Equal([1, 3], rota.Balances.Select(b => b.Turns));
        Assert.Equal("Alder: one turn that counts 1 and 1.00 from before; a fair share is 2.00, so it is even.", CoopWords.Balance(term, rota.Balances[0]));
    }

    [Fact]
    public void Asks_twice_as_much_of_a_double_share()
    {
        var term = Term(6, [Roles()[0]], [("Iris", "Alder"), ("Rue", "Birch")]);
        Assert.Equal([4, 2], Solved(term with { Families = [term.Families[0] with { Share = 2 }, term.Families[1]] }).Balances.Select(b => b.Turns));
    }

    [Fact]
    public void Prices_the_first_turn_of_a_distance_once_and_the_second_twice()
    {
        Assert.Equal([0L, 5, 10, 30, 60, 30], new[] { 0L, 5, 10, 20, 30, -20 }.Select(d => FairPrice.Of(d, 10)));
        // Two families, one meeting, one turn of weight 3, by hand: the pool is 300, each is 150 away, in halves of a
        // hundredth 300 of steps of 200: 300 + 100 each. In the role each is half a turn away: 1 each in halves.
        var term = Term(1, [new(Id("Teaching"), "Teaching", 3, 1)], [("Iris", "Alder"), ("Rue", "Birch")]);
        Assert.Equal(new RotaCost(0, 800, 2, 0, 0), Solved(term).Cost);
    }

    [Fact]
    public void Heeds_wishes_where_fairness_leaves_room()
    {
        var term = Term(4, Roles()[..2], [("Iris", "Alder"), ("Basil", "Alder"), ("Rue", "Birch")]);
        var rota = Solved(term with { Wishes = [new RotaWish(Id("Basil"), -2, Id("Teaching")), new RotaWish(Id("Iris"), 1, Id("Teaching")), new RotaWish(Id("Rue"), 3, Id("Hosting"), Thursdays(4)[1])] });
        Assert.DoesNotContain(rota.Turns, t => t.Adult == Id("Basil") && t.Role == Id("Teaching"));
        Assert.Contains(new RotaTurn(Thursdays(4)[1], Id("Hosting"), Id("Rue")), rota.Turns);
        Assert.Equal(TurnReasonKind.Liked, rota.Assignments.Single(a => a.Turn == new RotaTurn(Thursdays(4)[1], Id("Hosting"), Id("Rue"))).Reason.Kind);
        Assert.Equal([4, 4], rota.Balances.Select(b => b.Turns));
        Assert.True(rota.IsBest);
    }

    [Fact]
    public void Keeps_an_even_pace()
    {
        // One turn at each of eight meetings for two families with two adults: neither has three in a row.
        var rota = Solved(Term(8, [Roles()[0]], Eight.Take(4)));
        Assert.Equal(0, rota.Cost.Pace);
        var families = rota.Turns.OrderBy(t => t.Meeting).Select(t => t.Adult == Id("Iris") || t.Adult == Id("Basil")).ToList();
        Assert.All(Enumerable.Range(0, 8), m => Assert.InRange(2 * families.Take(m + 1).Count(a => a) - (m + 1), -2, 2));
    }

    [Fact]
    public void Puts_no_couple_alone_into_a_room()
    {
        var term = Term(6, Roles(), Eight.Take(4)) with { Rooms = [new RotaRoom(Id("barn"), "the barn", [Id("Teaching"), Id("Helping")])] };
        var rota = Solved(term);
        Assert.Empty(rota.Gaps);
        foreach (var meeting in rota.Turns.GroupBy(t => t.Meeting))
            Assert.Equal(2, meeting.Where(t => t.Role == Id("Teaching") || t.Role == Id("Helping")).Select(t => term.Adults.Single(a => a.Id == t.Adult).Family).Distinct().Count());
    }

    [Fact]
    public void Says_why_each_has_a_turn()
    {
        var rota = Solved(Term(2, [Roles()[0] with { Only = [Id("Iris")] }, Roles()[1]], [("Iris", "Alder"), ("Rue", "Birch")]));
        var problem = Term(2, Roles()[..2], [("Iris", "Alder"), ("Rue", "Birch")]);
        Assert.Equal("Iris has “Teaching”: nobody else who is there may have it.", CoopWords.Turn(problem, rota.Assignments[0]));
        Assert.Equal("Rue has “Hosting”: of the 2 who could, none is of a family that had done less of its share than Birch.", CoopWords.Turn(problem, rota.Assignments[1]));
    }

    [Fact]
    public void Is_the_same_again()
    {
        var term = Term(9, Roles(2), [.. Eight, ("Clover", "Elm")]);
        Assert.Equal(RotaPlanning.Solve(term, Effort.Usual).Turns, RotaPlanning.Solve(term, Effort.Usual).Turns);
    }

    [Fact]
    public void Is_called_off()
    {
        using var off = new CancellationTokenSource();
        off.Cancel();
        Assert.Throws<OperationCanceledException>(() => RotaPlanning.Solve(Term(9, Roles(2)), Effort.Usual, off.Token));
    }
}
