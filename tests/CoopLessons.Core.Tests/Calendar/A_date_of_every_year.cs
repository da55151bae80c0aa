using System.Text.Json;
using CoopLessons.Core.Calendar;

namespace CoopLessons.Core.Tests.Calendar;

public sealed class A_date_of_every_year
{
    [Theory]
    [InlineData("08-15", 8, 15)]
    [InlineData("02-29", 2, 29)]
    [InlineData("12-31", 12, 31)]
    public void Is_read_as_month_and_day(string text, int month, int day)
    {
        Assert.True(MonthDay.TryParse(text, out var value));
        Assert.Equal((new MonthDay(month, day), text), (value, value.ToString()));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("02-30")]
    [InlineData("13-01")]
    [InlineData("8-15")]
    [InlineData("08/15")]
    [InlineData("08-15 ")]
    public void Is_not_read_from_anything_else(string? text) => Assert.False(MonthDay.TryParse(text, out _));

    [Fact]
    public void On_29_February_is_1_March_of_a_common_year()
    {
        var leap = new MonthDay(2, 29);
        Assert.Equal([new DateOnly(2027, 3, 1), new DateOnly(2028, 2, 29)], new[] { 2027, 2028 }.Select(leap.In));
    }

    [Theory]
    [InlineData("2026-06-30", "2026-07-01")]
    [InlineData("2026-07-01", "2026-07-01")]
    [InlineData("2026-07-02", "2027-07-01")]
    public void Comes_next_on_the_day_itself_or_after_it(string from, string next) =>
        Assert.Equal(Date(next), new MonthDay(7, 1).OnOrAfter(Date(from)));

    [Fact]
    public void Is_told_to_people_with_the_months_name() => Assert.Equal("29 February", new MonthDay(2, 29).Words);

    [Fact]
    public void Stands_in_a_file_as_text_and_a_fault_in_it_is_the_files()
    {
        Assert.Equal("\"07-01\"", JsonSerializer.Serialize(new MonthDay(7, 1)));
        Assert.Equal(new MonthDay(7, 1), JsonSerializer.Deserialize<MonthDay>("\"07-01\""));
        Assert.Throws<JsonException>(() => JsonSerializer.Deserialize<MonthDay>("\"07-32\""));
    }

    private static DateOnly Date(string iso) => DateOnly.ParseExact(iso, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
