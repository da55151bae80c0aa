using System.Globalization;
using CoopLessons.Core.Families;
using CsCheck;

namespace CoopLessons.Core.Tests.Families;

public class An_age
{
    private static DateOnly Date(string iso) => DateOnly.ParseExact(iso, "yyyy-MM-dd", CultureInfo.InvariantCulture);

    [Theory]
    [InlineData("2018-11-03", "2026-11-02", 7)]
    [InlineData("2018-11-03", "2026-11-03", 8)]
    [InlineData("2018-11-03", "2026-11-04", 8)]
    [InlineData("2018-11-03", "2018-11-03", 0)]
    [InlineData("2018-12-31", "2026-01-01", 7)]
    public void Is_counted_in_completed_years(string birth, string date, int years) => Assert.Equal(years, Age.On(Date(date), Date(birth)));

    // The same rule stands in Maryland's law on the computation of age, § 1-303(b): born on 29 February, a specified age is
    // attained on 1 March of a year that is no leap year; https://getpocketlaw.com/law/state_maryland/section-1-303-computation-of-age_13498a91cbd6 (read).
    [Theory]
    [InlineData("2024-02-28", 3)]
    [InlineData("2024-02-29", 4)]
    [InlineData("2025-02-28", 4)]
    [InlineData("2025-03-01", 5)]
    [InlineData("2028-02-28", 7)]
    [InlineData("2028-02-29", 8)]
    public void Of_a_child_born_on_29_February_rises_on_1_March_of_a_common_year(string date, int years) =>
        Assert.Equal(years, Age.On(Date(date), Date("2020-02-29")));

    [Theory]
    [InlineData("2024-02-29", 3)]
    [InlineData("2024-03-01", 4)]
    public void Of_a_child_born_on_1_March_does_not_rise_on_29_February(string date, int years) =>
        Assert.Equal(years, Age.On(Date(date), Date("2020-03-01")));

    [Fact]
    public void Is_zero_before_birth() => Assert.Equal(0, Age.On(Date("2020-01-01"), Date("2026-01-01")));

    [Fact]
    public void Rises_by_one_at_most_from_day_to_day_and_never_falls() =>
        Gen.Select(Gen.Int[0, 4_000], Gen.Int[0, 8_000]).Sample((born, later) =>
        {
            var birth = new DateOnly(2012, 1, 1).AddDays(born);
            var day = birth.AddDays(later);
            return Age.On(day.AddDays(1), birth) - Age.On(day, birth) is 0 or 1;
        });
}
