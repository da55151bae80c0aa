using CoopLessons.Core.Coop;
using static CoopLessons.Core.Tests.Coop.Millrace;

namespace CoopLessons.Core.Tests.Coop;

/// <summary>The co-op goes to the stone fort. Our own example, worked by hand.</summary>
public class An_outing_of_the_co_op
{
    private static readonly Outing Fort = new(Id("fort"), "the fort", First, 3, 450, 700, 5);

    private static OutingParty Party(string family, int adults, int[] ages, DateOnly? no = null) => new(Id(family),
        [.. Enumerable.Range(0, adults).Select(i => Adult($"{family} adult {i}", family))], [.. ages.Select((a, i) => Child($"{family} child {i}", family, a))], no);

    [Fact]
    public void Counts_heads_and_the_adults_that_the_rules_ask_for()
    {
        var count = OutingCount.Of(Fort, [Party("Alder", 1, [4, 6, 9]), Party("Birch", 1, [10, 11]), Party("Cedar", 0, [9, 12])], CoverRules.Usual);
        // 2/5 + 5/8 = 1.025, so two.
        Assert.Equal((7, 2, 2), (count.Children, count.Adults, count.AdultsNeeded));
        Assert.Empty(count.Faults);
        Assert.Equal(First.AddDays(-3), count.CancelBy);
    }

    [Fact]
    public void Says_what_is_missing() =>
        Assert.Equal([CoverFaultKind.TooFewUnrelated, CoverFaultKind.TooFewAdults], OutingCount.Of(Fort, [Party("Alder", 1, [4, 6, 7, 5, 7, 9])], CoverRules.Usual).Faults.Select(f => f.Kind));

    [Fact]
    public void Lets_those_who_said_no_in_time_off_and_not_those_who_said_it_later()
    {
        OutingParty[] parties = [Party("Alder", 1, [4, 6, 9]), Party("Birch", 1, [10, 11]), Party("Cedar", 1, [9], First.AddDays(-3)), Party("Dogwood", 1, [9], First.AddDays(-2))];
        var count = OutingCount.Of(Fort, parties, CoverRules.Usual);
        // Six children pay, so one of three adults is free: 14.00 over three adults is 4.67, 4.67 and 4.66.
        Assert.Equal((5, 2, 1), (count.Children, count.Adults, count.FreeAdults));
        Assert.Equal([true, true, false], count.Due.Select(d => d.Comes));
        Assert.Equal(6 * 450 + 2 * 700, count.TotalCents);
        Assert.All(count.Due.Zip([3, 2, 1]), d => Assert.InRange(d.First.Cents - 450 * d.Second, 466, 467));
    }

    [Fact]
    public void Is_refused_in_words() => Assert.StartsWith("A family stands twice", Assert.Throws<ArgumentException>(() =>
        OutingCount.Of(Fort, [Party("Alder", 1, []), Party("Alder", 1, [])], CoverRules.Usual)).Message, StringComparison.Ordinal);
}
