using CoopLessons.Core.Calendar;
using CsCheck;

namespace CoopLessons.Core.Tests.Calendar;

public class A_range_of_days
{
    private static readonly DateOnly Monday = new(2026, 12, 21);

    private static readonly Gen<DayRange> Ranges =
        Gen.Select(Gen.Int[0, 800], Gen.Int[0, 400], (from, length) => new DayRange(Monday.AddDays(from), Monday.AddDays(from + length)));

    /// <summary>Ranges so near to one another that many meet in a single day.</summary>
    private static readonly Gen<DayRange> Close =
        Gen.Select(Gen.Int[0, 8], Gen.Int[0, 4], (from, length) => new DayRange(Monday.AddDays(from), Monday.AddDays(from + length)));

    [Fact]
    public void From_Monday_to_Friday_holds_five_days_and_Friday_is_one()
    {
        var range = new DayRange(Monday, Monday.AddDays(4));

        Assert.Equal(5, range.Count);
        Assert.True(range.Contains(Monday));
        Assert.True(range.Contains(Monday.AddDays(4)));
        Assert.False(range.Contains(Monday.AddDays(-1)));
        Assert.False(range.Contains(Monday.AddDays(5)));
    }

    [Fact]
    public void May_be_a_single_day() => Assert.Equal([Monday], new DayRange(Monday, Monday).Days());

    [Fact]
    public void Ends_no_earlier_than_it_begins() =>
        Assert.Throws<ArgumentException>("last", () => new DayRange(Monday, Monday.AddDays(-1)));

    [Fact]
    public void Is_walked_day_by_day_without_gap_from_the_first_to_the_last() =>
        Ranges.Sample(r =>
        {
            var days = r.Days().ToList();
            return days.Count == r.Count && days[0] == r.First && days[^1] == r.Last
                && days.Zip(days.Skip(1)).All(pair => pair.First.AddDays(1) == pair.Second) && days.All(r.Contains);
        });

    [Fact]
    public void Can_be_walked_to_the_last_day_of_the_calendar() =>
        Assert.Equal([DateOnly.MaxValue], new DayRange(DateOnly.MaxValue, DateOnly.MaxValue).Days());

    [Fact]
    public void Overlaps_another_where_they_share_a_day() =>
        Gen.Select(Close, Close).Sample((a, b) => a.Overlaps(b) == a.Days().Any(b.Contains) && a.Overlaps(b) == b.Overlaps(a));

    [Fact]
    public void Overlaps_another_that_meets_it_in_its_first_or_last_day_but_not_one_beside_it()
    {
        var week = new DayRange(Monday, Monday.AddDays(4));

        Assert.False(week.Overlaps(new DayRange(Monday.AddDays(-3), Monday.AddDays(-1))));
        Assert.True(week.Overlaps(new DayRange(Monday.AddDays(-3), Monday)));
        Assert.True(week.Overlaps(new DayRange(Monday.AddDays(4), Monday.AddDays(9))));
        Assert.False(week.Overlaps(new DayRange(Monday.AddDays(5), Monday.AddDays(9))));
    }

    [Fact]
    public void Is_written_with_both_ends() =>
        Assert.Equal("21 December 2026 to 1 January 2027", new DayRange(Monday, new DateOnly(2027, 1, 1)).ToString());
}
