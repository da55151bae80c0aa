using CoopLessons.Core.Calendar;
using CsCheck;

namespace CoopLessons.Core.Tests.Calendar;

public sealed class Even_parts_of_a_year
{
    [Fact]
    public void Are_whole_months_where_the_year_is_made_of_them() =>
        Assert.Equal(
            ["1 July 2026 to 30 September 2026", "1 October 2026 to 31 December 2026", "1 January 2027 to 31 March 2027", "1 April 2027 to 30 June 2027"],
            Days("2026-07-01", "2027-06-30").EvenParts(4).Select(p => p.ToString()));

    [Fact]
    public void Are_days_where_months_cannot_be_divided_so() =>
        Assert.Equal([76, 76, 76, 76], Days("2026-08-01", "2027-05-31").EvenParts(4).Select(p => p.Count));

    [Fact]
    public void Begin_with_the_longer_ones() =>
        Assert.Equal([3, 3, 2, 2], Days("2026-08-17", "2026-08-26").EvenParts(4).Select(p => p.Count));

    [Fact]
    public void Are_fewer_where_there_are_not_so_many_days() =>
        Assert.Equal([1, 1, 1], Days("2026-08-17", "2026-08-19").EvenParts(4).Select(p => p.Count));

    [Fact]
    public void Follow_each_other_without_a_gap_and_make_up_the_whole() =>
        Gen.Select(Gen.Int[0, 700], Gen.Int[0, 500], Gen.Int[1, 12]).Sample((first, length, parts) =>
        {
            var range = new DayRange(new DateOnly(2026, 1, 1).AddDays(first), new DateOnly(2026, 1, 1).AddDays(first + length));
            var all = range.EvenParts(parts);
            return all[0].First == range.First && all[^1].Last == range.Last && all.Count <= parts
                && all.Zip(all.Skip(1)).All(p => p.First.Last.AddDays(1) == p.Second.First);
        });

    private static DayRange Days(string first, string last) => new(DateOnly.Parse(first, null), DateOnly.Parse(last, null));
}
