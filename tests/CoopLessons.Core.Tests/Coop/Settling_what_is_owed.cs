using CoopLessons.Core.Coop;
using CsCheck;
using static CoopLessons.Core.Tests.Coop.Millrace;

namespace CoopLessons.Core.Tests.Coop;

/// <summary>Families laid money out for each other, and pay each other few times.</summary>
public class Settling_what_is_owed
{
    private static AccountLine[] Lines(IEnumerable<int> net) => [.. net.Select((n, i) => new AccountLine(Id(1, i), Math.Max(0, n), Math.Max(0, -n)))];

    /// <summary>Nets that add up to nothing; small numbers, so that groups that are even among themselves are common.</summary>
    private static Gen<int[]> Nets(int most, int cents) =>
        Gen.Int[-cents, cents].Array[1, most - 1].Select(n => (int[])[.. n, -n.Sum()]);

    private static void Holds(int[] net, Settled settled)
    {
        foreach (var payment in settled.Payments)
            Assert.True(payment.Cents > 0 && payment.From != payment.To);
        for (var i = 0; i < net.Length; i++)
            Assert.Equal(net[i], settled.Payments.Sum(p => (p.To == Id(1, i) ? p.Cents : 0) - (p.From == Id(1, i) ? p.Cents : 0)));
        Assert.Empty(settled.Payments.Select(p => p.From).Intersect(settled.Payments.Select(p => p.To)));
        Assert.True(settled.Payments.Count <= Math.Max(0, net.Count(n => n != 0) - 1));
        Assert.True(settled.Least <= settled.Payments.Count);
    }

    [Fact]
    public void Takes_fewer_payments_where_some_are_even_among_themselves()
    {
        // Our own example: the largest debt to the largest credit would take four.
        var settled = Settlement.Of(Lines([700, -500, 500, -300, -400]));
        Assert.Equal((3, true), (settled.Payments.Count, settled.IsLeast));
        Assert.Contains(new Payment(Id(1, 1), Id(1, 2), 500), settled.Payments);
        settled = Settlement.Of(Lines([600, 500, -600, -500]));
        Assert.Equal([(600, Id(1, 2)), (500, Id(1, 3))], settled.Payments.Select(p => (p.Cents, p.From)).OrderByDescending(p => p.Cents));
    }

    [Fact]
    public void Leaves_everybody_even_and_nobody_pays_and_receives() => Nets(12, 6).Sample(net =>
    {
        var settled = Settlement.Of(Lines(net));
        Holds(net, settled);
        Assert.True(settled.IsLeast);
    }, iter: 300);

    [Fact]
    public void Holds_also_where_there_are_too_many_families_to_try_all()
    {
        var greedy = Gen.Int[-900, 900].Array[20, 40].Select(n => (int[])[.. n, -n.Sum()]);
        greedy.Sample(net => Holds(net, Settlement.Of(Lines(net))), iter: 200);
        // Twenty who each owe one, and one who is owed all: even then the least is known.
        Assert.True(Settlement.Of(Lines([.. Enumerable.Repeat(-100, 20), 2000])).IsLeast);
    }

    [Fact]
    public void Takes_as_few_payments_as_the_best_of_all_ways() => Nets(6, 4).Sample(net =>
        Assert.Equal(Fewest([.. net.Where(n => n != 0)]), Settlement.Of(Lines(net)).Payments.Count), iter: 200);

    /// <summary>Every debtor in turn pays every creditor the most that either needs, which is enough to find the fewest payments.</summary>
    private static int Fewest(int[] net)
    {
        var first = Array.FindIndex(net, n => n != 0);
        if (first < 0)
            return 0;
        var best = int.MaxValue;
        for (var other = first + 1; other < net.Length; other++)
            if ((long)net[first] * net[other] < 0)
            {
                // The first is made even by the other, whatever becomes of that.
                var after = net.ToArray();
                (after[first], after[other]) = (0, net[first] + net[other]);
                best = Math.Min(best, 1 + Fewest(after));
            }

        return best;
    }

    [Fact]
    public void Is_the_same_in_whatever_order_the_lines_stand() => Nets(9, 9).Sample(net =>
        Assert.Equal(Settlement.Of(Lines(net)).Payments, Settlement.Of([.. Lines(net).Reverse()]).Payments), iter: 100);

    [Fact]
    public void Is_refused_in_words()
    {
        Assert.Equal("What was paid is 5.00 and what is owed is 4.99; they are to be the same.", Settlement.Fault([new(Id(1, 1), 500, 0), new(Id(1, 2), 0, 499)]));
        Assert.Equal("A family stands twice in the account.", Settlement.Fault([new(Id(1, 1), 5, 0), new(Id(1, 1), 0, 5)]));
        Assert.Equal("What is paid and what is owed is 0 or more.", Settlement.Fault([new(Id(1, 1), -5, -5)]));
        Assert.Throws<ArgumentException>(() => Settlement.Of([new(Id(1, 1), 5, 0)]));
        Assert.Empty(Settlement.Of([new(Id(1, 1), 5, 5)]).Payments);
    }
}
