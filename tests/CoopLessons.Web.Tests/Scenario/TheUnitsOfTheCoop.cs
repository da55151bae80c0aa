using CoopLessons.Data.Scenario;
using CoopLessons.Data.Units;
using Xunit;

namespace CoopLessons.Web.Tests.Scenario;

public sealed class TheUnitsOfTheCoop
{
    public static TheoryData<string> Files => [.. ScenarioFiles.Units.Keys];

    [Theory]
    [MemberData(nameof(Files))]
    public void Each_file_can_be_taken_in(string file)
    {
        var reading = BundleFile.Read(ScenarioFiles.Bytes($"scenario/units/{file}.json"));
        Assert.Empty(reading.Faults);
        Assert.NotNull(reading.Bundle);
    }

    /// <summary>Common practice, no source: a unit lasts about a month.</summary>
    [Theory]
    [MemberData(nameof(Files))]
    public void A_unit_lasts_about_a_month(string file) => Assert.InRange(ScenarioFiles.Units[file].Weeks, 3, 5);

    /// <summary>Common practice, no source: 25 to 40 activities make a unit.</summary>
    [Theory]
    [MemberData(nameof(Files))]
    public void A_unit_holds_a_month_of_activities(string file) => Assert.InRange(ScenarioFiles.Units[file].Activities.Count, 25, 40);

    /// <summary>Common practice, no source: a parent prepares one week at a time.</summary>
    [Theory]
    [MemberData(nameof(Files))]
    public void Activities_are_grouped_by_week_and_each_week_has_some(string file)
    {
        var unit = ScenarioFiles.Units[file];
        var byWeek = unit.Activities.GroupBy(a => a.Week).ToDictionary(g => g.Key, g => g.Count());
        Assert.Equal(Enumerable.Range(1, unit.Weeks), byWeek.Keys.Order());
        Assert.All(byWeek.Values, count => Assert.True(count >= 5));
    }

    [Fact]
    public void Three_units_come_with_the_program() => Assert.Equal(3, ScenarioFiles.Units.Count);
}
