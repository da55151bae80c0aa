using CoopLessons.Core.Schedule;

namespace CoopLessons.Core.Tests.Schedule.Layout;

/// <summary>Common practice, no source: two to three minutes a year of age.</summary>
public class How_long_a_child_sits
{
    [Theory]
    [InlineData(0, 10)]
    [InlineData(3, 10)]
    [InlineData(5, 15)]
    [InlineData(6, 15)]
    [InlineData(7, 20)]
    [InlineData(10, 30)]
    [InlineData(12, 35)]
    [InlineData(13, 45)]
    [InlineData(15, 45)]
    [InlineData(16, 60)]
    [InlineData(18, 60)]
    public void Is_proposed_from_the_age(int age, int minutes) => Assert.Equal(minutes, Sittings.Proposed(age));

    [Theory]
    [InlineData(30, 30, new[] { 30 })]
    [InlineData(60, 20, new[] { 20, 20, 20 })]
    [InlineData(50, 20, new[] { 20, 15, 15 })]
    [InlineData(65, 60, new[] { 35, 30 })]
    [InlineData(47, 20, new[] { 20, 15, 12 })]
    [InlineData(7, 3, new[] { 3, 2, 2 })]
    public void Divides_what_is_longer(int minutes, int longest, int[] parts) => Assert.Equal(parts, Sittings.Parts(minutes, longest));

    [Fact]
    public void Loses_no_minute_and_makes_no_part_too_long()
    {
        for (var minutes = 1; minutes <= 240; minutes++)
            for (var longest = 1; longest <= 90; longest++)
            {
                var parts = Sittings.Parts(minutes, longest);
                Assert.Equal(minutes, parts.Sum());
                Assert.All(parts, p => Assert.InRange(p, 1, longest));
                var whole = parts.SkipLast(1).ToList();
                Assert.True(whole.All(p => longest < 5 || p % 5 == 0) && (whole.Count == 0 || whole.Max() - whole.Min() <= 5), $"{minutes} by {longest}: {string.Join(", ", parts)}");
            }
    }

    [Fact]
    public void Is_no_length_below_a_minute()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Sittings.Parts(0, 10));
        Assert.Throws<ArgumentOutOfRangeException>(() => Sittings.Parts(10, 0));
    }
}
