using CoopLessons.Core.Calendar;
using CsCheck;

namespace CoopLessons.Core.Tests.Calendar;

public class A_month
{
    private static readonly Gen<DateOnly> Dates = Gen.Int[0, 150_000].Select(n => new DateOnly(1900, 1, 1).AddDays(n));

    [Fact]
    public void Holds_its_own_days_and_no_others() =>
        Gen.Select(Dates, Dates).Sample((a, b) =>
        {
            var month = Month.Of(a);
            return month.Contains(a) && month.Days.Contains(a) && month.Contains(b) == month.Days.Contains(b);
        });

    [Theory]
    [InlineData(2024, 29)]
    [InlineData(2026, 28)]
    [InlineData(2000, 29)]
    [InlineData(2100, 28)]
    public void Of_February_is_as_long_as_the_year_makes_it(int year, int days) => Assert.Equal(days, new Month(year, 2).Days.Count);

    [Fact]
    public void Is_followed_by_the_next_without_gap() =>
        Dates.Sample(date => Month.Of(date).Next.Days.First == Month.Of(date).Days.Last.AddDays(1));

    [Fact]
    public void Is_walked_through_from_the_first_to_the_last_that_a_range_touches() =>
        Gen.Select(Dates, Gen.Int[0, 900]).Sample((first, length) =>
        {
            var range = new DayRange(first, first.AddDays(length));
            return Month.Through(range).SequenceEqual(range.Days().Select(Month.Of).Distinct());
        });

    [Fact]
    public void Can_be_walked_through_to_the_end_of_the_calendar() =>
        Assert.Equal([new Month(9999, 12)], Month.Through(new DayRange(new DateOnly(9999, 12, 1), DateOnly.MaxValue)));

    [Fact]
    public void Is_written_for_machines_and_for_readers()
    {
        Assert.Equal("2026-11", new Month(2026, 11).Iso);
        Assert.Equal("2026-03", new Month(2026, 3).ToString());
        Assert.Equal("Nov 2026", new Month(2026, 11).Label);
    }

    [Fact]
    public void Is_read_back_as_it_is_written() =>
        Dates.Sample(date => Month.TryParse(Month.Of(date).Iso, out var month) && month == Month.Of(date));

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("2026")]
    [InlineData("2026-13")]
    [InlineData("2026-00")]
    [InlineData("2026-1")]
    [InlineData("26-11")]
    [InlineData("2026-11-03")]
    [InlineData(" 2026-11")]
    [InlineData("2026/11")]
    public void Is_not_read_from_anything_else(string? text)
    {
        Assert.False(Month.TryParse(text, out var month));
        Assert.Equal(default, month);
    }

    [Fact]
    public void Stands_before_or_after_another_as_its_days_do() =>
        Gen.Select(Dates, Dates).Sample((a, b) =>
        {
            var (x, y) = (Month.Of(a), Month.Of(b));
            var (first, second) = (x.Days.First, y.Days.First);
            return x < y == first < second && x > y == first > second && x <= y == first <= second && x >= y == first >= second;
        });
}
