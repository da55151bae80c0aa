using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;
using CoopLessons.Web.Charts;

namespace CoopLessons.Web.Tests.Records;

public sealed class Bars_stacked_over_months
{
    private static readonly IReadOnlyList<Month> Year = Month.Through(new DayRange(new(2025, 7, 1), new(2026, 6, 30)));

    [Fact]
    public void Are_as_high_as_their_minutes()
    {
        var bars = StackedBars.Of(Year, [Series("Science", (0, 600), (1, 300)), Series("Music", (0, 150))]);
        // Twelve and a half hours need three lines five hours apart: fifteen hours are 250 units.
        Assert.Equal(["0 h", "5 h", "10 h", "15 h"], bars.Scale.Select(l => l.Text));
        Assert.Equal([166.67, 41.67, 83.33], bars.Pieces.Select(p => p.Height));
        Assert.Equal([99.33, 57.67, 182.67], bars.Pieces.Select(p => p.Y));
        Assert.Equal(["s1", "s2", "s1"], bars.Pieces.Select(p => p.Fill));
    }

    [Fact]
    public void Stand_on_each_other_without_gap_inside_the_frame()
    {
        var bars = StackedBars.Of(Year, [.. Enumerable.Range(1, 8).Select(i => Series($"{i}", [.. Enumerable.Range(0, 12).Select(m => (m, 17 * i + 5 * m))]))]);
        foreach (var bar in bars.Pieces.GroupBy(p => p.X))
        {
            var at = (double)StackedBars.Base;
            foreach (var piece in bar)
            {
                Assert.InRange(piece.Y + piece.Height, at - .02, at + .02); // Each is rounded to a hundredth.
                at = piece.Y;
            }

            Assert.InRange(at, StackedBars.Top, StackedBars.Base);
            Assert.InRange(bar.Key, StackedBars.Left, StackedBars.Right - bar.First().Width);
            Assert.True(bar.First().Width >= 20);
        }
    }

    [Fact]
    public void Draw_the_seven_largest_and_the_others_together()
    {
        var bars = StackedBars.Of(Year, [.. Enumerable.Range(1, 10).Select(i => Series($"No. {i}", (0, i), (3, 2 * i)))]);
        Assert.Equal(["No. 10", "No. 9", "No. 8", "No. 7", "No. 6", "No. 5", "No. 4", "3 others"], bars.Series.Select(s => s.Name));
        Assert.Equal(165, bars.Series.Select(s => s.Total).Sum().Value);
        Assert.Equal(12, bars.Series[^1].Values[3].Value);
    }

    [Fact]
    public void Draw_eight_each_for_itself_and_leave_out_those_without_minutes()
    {
        var bars = StackedBars.Of(Year, [.. Enumerable.Range(0, 9).Select(i => Series($"No. {i}", (0, i)))]);
        Assert.Equal(8, bars.Series.Count);
        Assert.Equal("No. 1", bars.Series[^1].Name);
    }

    [Fact]
    public void Keep_the_familys_order_where_two_are_equally_large()
    {
        var bars = StackedBars.Of(Year, [Series("First", (0, 5)), Series("Second", (1, 5))]);
        Assert.Equal(["First", "Second"], bars.Series.Select(s => s.Name));
    }

    [Theory]
    [InlineData(1, "1 h", 1)]
    [InlineData(60, "1 h", 1)]
    [InlineData(300, "1 h", 5)]
    [InlineData(301, "2 h", 3)]
    [InlineData(6000, "20 h", 5)]
    [InlineData(44640, "200 h", 4)]
    public void Have_a_scale_of_round_hours(int minutes, string first, int lines)
    {
        var bars = StackedBars.Of(Year, [Series("Science", (4, minutes))]);
        Assert.Equal(first, bars.Scale[1].Text);
        Assert.Equal(lines, bars.Scale.Count - 1);
        Assert.True(bars.Pieces.Single().Y >= StackedBars.Top);
    }

    [Fact]
    public void Leave_out_letters_that_would_touch()
    {
        var long24 = Month.Through(new DayRange(new(2024, 7, 1), new(2026, 6, 30)));
        var bars = StackedBars.Of(long24, [new BarSeries("Science", [.. long24.Select(_ => new Minutes(60))])]);
        Assert.Equal(12, bars.Letters.Count);
    }

    private static BarSeries Series(string name, params (int Month, int Minutes)[] values)
    {
        var minutes = new Minutes[12];
        foreach (var (month, value) in values)
            minutes[month] = new Minutes(value);
        return new BarSeries(name, minutes);
    }
}
