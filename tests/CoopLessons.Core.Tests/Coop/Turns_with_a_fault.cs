using CoopLessons.Core.Coop;
using CoopLessons.Core.Schedule;
using static CoopLessons.Core.Tests.Coop.A_fair_rota;
using static CoopLessons.Core.Tests.Coop.Millrace;

namespace CoopLessons.Core.Tests.Coop;

/// <summary>Turns that were given by hand and break a rule, and rotas that ask for something impossible.</summary>
public class Turns_with_a_fault
{
    private static readonly RotaProblem Term = A_fair_rota.Term(2, [Roles()[0] with { Only = [Id("Iris"), Id("Rue")] }, Roles()[3] with { Places = 2 }]) with
    {
        Absences = [new RotaAbsence(Id("Fern"), First)],
        Rooms = [new RotaRoom(Id("barn"), "the barn", [Id("Teaching"), Id("Helping")]) { LeastAdults = 2 }],
    };

    private static RotaTurn At(string role, string adult) => new(First, Id(role), Id(adult));

    public static TheoryData<string, string[]> Faults => new()
    {
        { "On Thursday 7 January Iris would have “Teaching” and “Helping” at once.", ["Teaching Iris", "Helping Iris", "Helping Rue"] },
        { "On Thursday 7 January Fern is away and cannot have “Helping”.", ["Teaching Iris", "Helping Fern"] },
        { "Basil is not among those who have “Teaching”, on Thursday 7 January.", ["Teaching Basil", "Helping Rue"] },
        { "On Thursday 7 January “Teaching” has 2 adults for 1 places.", ["Teaching Iris", "Teaching Rue"] },
        { "On Thursday 7 January Iris and Basil are alone in the barn, where 2 unrelated adults are needed.", ["Teaching Iris", "Helping Basil"] },
        { "On Thursday 7 January Iris is alone in the barn, where 2 unrelated adults are needed.", ["Teaching Iris"] },
        { "On Thursday 7 January stands a turn that is not of this rota.", ["Teaching Iris", "Helping Rue", "Singing Rue"] },
    };

    [Theory]
    [MemberData(nameof(Faults))]
    public void Are_told_so(string fault, string[] turns)
    {
        RotaTurn[] given = [.. turns.Select(t => At(t.Split(' ')[0], t.Split(' ')[1]))];
        Assert.Contains(fault, RotaCheck.Faults(Term, given).Select(f => f.Sentence));
    }

    [Fact]
    public void Are_none_where_all_is_well() => Assert.Empty(RotaCheck.Faults(Term, [At("Teaching", "Iris"), At("Helping", "Rue"), At("Helping", "Basil")]));

    public static TheoryData<string, RotaProblem> Problems => new()
    {
        { "A rota has 1 to 60 meetings, not 0.", Term with { Meetings = [] } },
        { "The meetings are to ascend; Thursday 7 January stands after Thursday 14 January.", Term with { Meetings = [First.AddDays(7), First] } },
        { "A rota has 1 to 12 roles, not 0.", Term with { Roles = [], Rooms = [] } },
        { "“Teaching” is to weigh 1 to 20, not 0.", Term with { Roles = [Term.Roles[0] with { Weight = 0 }, Term.Roles[1]] } },
        { "“Teaching” names an adult who is not in the rota.", Term with { Roles = [Term.Roles[0] with { Only = [Id("Clover")] }, Term.Roles[1]] } },
        { "The share of Alder is to be 1 to 100, not 0.", Term with { Families = [Term.Families[0] with { Share = 0 }, .. Term.Families.Skip(1)] } },
        { "Clover belongs to a family that is not in the rota.", Term with { Adults = [.. Term.Adults, new RotaAdult(Id("Clover"), "Clover", Id("Elm"))] } },
        { "Somebody is away who is not in the rota.", Term with { Absences = [new RotaAbsence(Id("Clover"), First)] } },
        { "A wish weighs -100 to 100 and not 0; one weighs 0.", Term with { Wishes = [new RotaWish(Id("Iris"), 0)] } },
        { "A role is done in one room, and once in it.", Term with { Rooms = [.. Term.Rooms, new RotaRoom(Id("loft"), "the loft", [Id("Teaching")])] } },
        { "In the loft a role is done that is not in the rota.", Term with { Rooms = [new RotaRoom(Id("loft"), "the loft", [Id("Singing")])] } },
    };

    [Theory]
    [MemberData(nameof(Problems), DisableDiscoveryEnumeration = true)]
    public void Are_not_given_where_the_problem_has_one(string fault, RotaProblem problem)
    {
        Assert.Equal(fault, RotaProblemFaults.Of(problem)[0]);
        Assert.StartsWith(fault, Assert.Throws<ArgumentException>(() => RotaPlanning.Solve(problem, Effort.Usual)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Are_not_given_with_an_effort_that_is_no_number() => Assert.Throws<ArgumentOutOfRangeException>(() => RotaPlanning.Solve(Term, new Effort(double.NaN)));
}
