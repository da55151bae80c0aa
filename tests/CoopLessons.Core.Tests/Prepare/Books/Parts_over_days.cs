using CoopLessons.Core.Prepare.Books;
using CsCheck;

namespace CoopLessons.Core.Tests.Prepare.Books;

public class Parts_over_days
{
    private static readonly Gen<(int[] Weights, int Days)> Small = Gen.Select(Gen.Int[1, 40].Array[1, 9], Gen.Int[1, 6]);

    // S. S. Skiena, The Algorithm Design Manual, the section on the linear partition problem: 1 to 9 over three is
    // 1 2 3 4 5 | 6 7 | 8 9, the longest being 17.
    [Fact]
    public void Of_one_to_nine_over_three_the_longest_is_seventeen()
    {
        int[] weights = [1, 2, 3, 4, 5, 6, 7, 8, 9];
        var sizes = LinearPartition.Of(weights, 3);
        Assert.Equal([5, 2, 2], sizes);
        Assert.Equal([15, 13, 17], Sums(weights, sizes));
        Assert.Equal(17, LinearPartition.ShortestLongest(weights, 3));
    }

    // The same section's other picture: nine ones over three.
    [Fact]
    public void Of_nine_alike_over_three_are_three_a_day() => Assert.Equal([3, 3, 3], LinearPartition.Of([1, 1, 1, 1, 1, 1, 1, 1, 1], 3));

    [Fact]
    public void Of_one_long_chapter_among_short_ones_stay_even_beside_it() =>
        // 50 cannot be shortened; 6 sixes beside it are two, two and two, not one, one and four.
        Assert.Equal([1, 2, 2, 2], LinearPartition.Of([50, 6, 6, 6, 6, 6, 6], 4));

    [Fact]
    public void Lie_early_where_it_makes_no_difference() => Assert.Equal([2, 1, 1], LinearPartition.Of([5, 5, 5, 5], 3));

    [Fact]
    public void Fewer_than_the_days_leave_the_last_days_free() => Assert.Equal([1, 1, 0, 0], LinearPartition.Of([3, 9], 4));

    [Fact]
    public void Of_nothing_leave_every_day_free() => Assert.Equal([0, 0], LinearPartition.Of([], 2));

    [Fact]
    public void Must_have_a_length_and_a_day()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => LinearPartition.Of([3, 0], 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => LinearPartition.Of([3], 0));
    }

    [Fact]
    public void Have_the_shortest_longest_day_of_all_ways_and_the_most_even_of_those() => Small.Sample(book =>
    {
        var (weights, days) = book;
        var sizes = LinearPartition.Of(weights, days);
        Assert.Equal(days, sizes.Count);
        Assert.Equal(weights.Length, sizes.Sum());
        if (weights.Length < days)
            return;
        var ways = AllWays(weights.Length, days).ToList();
        var longest = ways.Min(w => Sums(weights, w).Max());
        var shortest = ways.Where(w => Sums(weights, w).Max() == longest).ToList();
        var even = shortest.Min(w => Sums(weights, w).Sum(s => s * s));
        var best = shortest.Where(w => Sums(weights, w).Sum(s => s * s) == even).OrderByDescending(w => string.Concat(w.Select(n => (char)('a' + n))), StringComparer.Ordinal).First();
        Assert.Equal(best, sizes);
        Assert.Equal(longest, LinearPartition.ShortestLongest(weights, days));
    }, iter: 400);

    [Fact]
    public void Fill_no_fewer_days_under_a_limit_than_the_best_of_all_ways() => Small.Sample(book =>
    {
        var (weights, more) = book;
        var limit = weights.Max() + more;
        var fewest = Enumerable.Range(1, weights.Length).First(d => AllWays(weights.Length, d).Any(w => Sums(weights, w).Max() <= limit));
        Assert.Equal(fewest, LinearPartition.DaysUnder(weights, limit));
    }, iter: 200);

    [Fact]
    public void Are_laid_out_for_the_longest_book_that_there_may_be()
    {
        int[] weights = [.. Enumerable.Range(0, ChapterText.MostChapters).Select(i => 1 + i * 7919 % ChapterText.MostTenths)];
        var sizes = LinearPartition.Of(weights, 90);
        Assert.Equal(LinearPartition.ShortestLongest(weights, 90), Sums(weights, sizes).Max());
        Assert.All(sizes, s => Assert.True(s > 0));
    }

    internal static IReadOnlyList<int> Sums(IReadOnlyList<int> weights, IReadOnlyList<int> sizes)
    {
        var from = 0;
        return [.. sizes.Select(s => weights.Skip((from += s) - s).Take(s).Sum())];
    }

    /// <summary>Every way to cut so many parts into so many days, none of them empty.</summary>
    internal static IEnumerable<IReadOnlyList<int>> AllWays(int parts, int days)
    {
        if (days == 1)
            return parts > 0 ? [[parts]] : [];
        return Enumerable.Range(1, Math.Max(0, parts - 1)).SelectMany(first => AllWays(parts - first, days - 1).Select(rest => (IReadOnlyList<int>)[first, .. rest]));
    }
}
