using CoopLessons.Core.Schedule;

namespace CoopLessons.Core.Tests.Schedule;

/// <summary>16 CFR 1501.2(a): articles "intended for use by children under 3 years of age".</summary>
public class Small_parts_and_small_children
{
    private static readonly DateOnly Born = new(2023, 3, 12);

    [Theory]
    [InlineData("2023-03-11", false)]
    [InlineData("2023-03-12", true)]
    [InlineData("2026-03-11", true)]
    [InlineData("2026-03-12", false)]
    public void Matter_from_birth_to_the_day_before_the_third_birthday(string date, bool matter) =>
        Assert.Equal(matter, SmallPartsInTheRoom.Matter([new DateOnly(2012, 1, 1), Born], DateOnly.Parse(date, System.Globalization.CultureInfo.InvariantCulture)));

    [Fact]
    public void Matter_nowhere_where_there_is_no_child() => Assert.False(SmallPartsInTheRoom.Matter([], Born));
}
