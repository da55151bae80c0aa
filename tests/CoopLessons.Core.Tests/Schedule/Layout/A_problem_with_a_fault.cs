using CoopLessons.Core.Schedule;
using CoopLessons.Core.Units;
using static CoopLessons.Core.Tests.Schedule.Layout.Desk;

namespace CoopLessons.Core.Tests.Schedule.Layout;

/// <summary>A week that cannot be laid out because it says something impossible.</summary>
public class A_problem_with_a_fault
{
    private static readonly FreeTime Morning = Free((Wednesday, 540, 720));
    private static readonly WeekSession Letters = Session("Letters", 30, AdultNeed.HandsOn, "Wren");
    private static readonly WeekProblem Good = Desk.Week([Wednesday, Thursday], [Learner("Wren", Morning)], [Adult("Iris", Morning)], Letters);

    public static TheoryData<string, WeekProblem> Faults => new()
    {
        { "A week to be laid out has 1 to 7 days, not 0.", Good with { Days = [] } },
        { "The days are to ascend; Wednesday 4 March stands after Thursday 5 March.", Good with { Days = [Thursday, Wednesday] } },
        { "At most four adults can be in a week; these are 5.", Good with { Adults = [.. Enumerable.Range(0, 5).Select(i => Adult($"Adult {i}", Morning))] } },
        { "The longest sitting of Wren is to be from 1 minute to a day.", Good with { Learners = [Learner("Wren", Morning, 0)] } },
        { "The free time of Iris on Wednesday 4 March does not lie within the day everywhere.", Good with { Adults = [Adult("Iris", Free((Wednesday, 1400, 1500)))] } },
        { "The free time of Wren on Wednesday 4 March does not ascend in stretches apart from each other.", Good with { Learners = [Learner("Wren", Free((Wednesday, 540, 600), (Wednesday, 600, 660)))] } },
        { "Two learners have the same id.", Good with { Learners = [Good.Learners[0], Good.Learners[0]] } },
        { "Two adults have the same id.", Good with { Adults = [Good.Adults[0], Good.Adults[0]] } },
        { "Two sessions have the same id.", Good with { Sessions = [Letters, Letters] } },
        { "“Letters” is to take from 1 minute to a day.", With(Letters with { Minutes = 0 }) },
        { "“Letters” has no learner.", With(Letters with { Learners = [] }) },
        { "“Letters” names a learner twice.", With(Letters with { Learners = [Id("Wren"), Id("Wren")] }) },
        { "“Letters” names a learner who is not in the week.", With(Letters with { Learners = [Id("Lark")] }) },
        { "“Letters” has a weight or a need that is not known.", With(Letters with { Weight = 0 }) },
        { "“Letters” waits less than nothing or more than a day.", With(Letters with { Wait = new WaitAndLook(10, 0, 5) }) },
        { "“Letters” is to stay where it was, and nothing says where that is.", With(Letters with { Fixed = true }) },
        { "“Letters” stood at a time that is not within a day.", With(Letters with { Was = new OldPlace(Wednesday, 1440) }) },
        { "“Letters” was with an adult who is not in the week.", With(Letters with { Was = new OldPlace(Wednesday, 540, Adult: Id("Basil")) }) },
        { "What “Letters” is bound to on Wednesday 4 March does not lie within the day everywhere.", With(Letters with { Bound = new BoundHours(Free((Wednesday, 5, 5)), "in the warm hours") }) },
        { "“Letters” comes 0 to 7 days after another, not 8.", Good with { Sessions = [Letters with { After = [new Precedence(Id("Ink"), 8)] }, Session("Ink", 10, AdultNeed.Alone, "Wren")] } },
        { "“Letters” comes after itself.", With(Letters with { After = [new Precedence(Letters.Id, 0)] }) },
        { "“Letters” comes after a session that is not in the week.", With(Letters with { After = [new Precedence(Id("Ink"), 0)] }) },
        {
            "“Letters” comes after a session that in the end comes after it.",
            Good with { Sessions = [Letters with { After = [new Precedence(Id("Ink"), 0)] }, Session("Ink", 10, AdultNeed.Alone, "Wren") with { After = [new Precedence(Letters.Id, 0)] }] }
        },
    };

    private static WeekProblem With(WeekSession session) => Good with { Sessions = [session] };

    [Fact]
    public void Has_none_at_first() => Assert.Empty(WeekFaults.Of(Good));

    [Theory]
    [MemberData(nameof(Faults), DisableDiscoveryEnumeration = true)]
    public void Is_told_so_and_not_laid_out(string fault, WeekProblem week)
    {
        Assert.Equal(fault, WeekFaults.Of(week)[0]);
        Assert.StartsWith(fault, Assert.Throws<ArgumentException>(() => WeekLayout.Solve(week, Effort.Usual)).Message, StringComparison.Ordinal);
    }
}
