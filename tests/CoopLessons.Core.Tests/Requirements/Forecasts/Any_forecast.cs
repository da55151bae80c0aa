using CoopLessons.Core.Calendar;
using CoopLessons.Core.Requirements.Forecasts;
using CsCheck;
using static CoopLessons.Core.Tests.Requirements.Forecasts.SteadyWeeks;

namespace CoopLessons.Core.Tests.Requirements.Forecasts;

public sealed class Any_forecast
{
    private static readonly Gen<(Dictionary<DateOnly, int> Amounts, DateOnly AsOf, int Target)> Questions =
        from weeks in Gen.Int[0, 38]
        from day in Gen.Int[0, 6]
        from minutes in Gen.Int[0, 480].Array[39 * 5]
        from target in Gen.Int[1, 90_000]
        let asOf = Year.First.AddDays(7 * weeks + day)
        select (School.TeachingDays().Zip(minutes).Where(d => d.First <= asOf && d.Second > 0).ToDictionary(d => d.First, d => d.Second), asOf, target);

    private static readonly Gen<Forecast> Forecasts = Questions.Select(q => Forecast.Of(q.Amounts, Year, School, q.AsOf, q.Target));

    [Fact]
    public void Spreads_its_totals_from_the_low_to_the_high() => Forecasts.Sample(forecast =>
    {
        var spreads = forecast.Outlook is { } outlook ? outlook.Path.Select(p => p.Total).Append(outlook.YearEnd) : [];
        Assert.All(spreads, s => Assert.True(forecast.SoFar <= s.P10 && s.P10 <= s.P50 && s.P50 <= s.P90, $"{s}"));
    }, iter: 30);

    [Fact]
    public void Spreads_its_dates_from_the_early_to_the_late_where_never_is_the_last() => Forecasts.Sample(forecast =>
    {
        if (forecast.Outlook is not { } outlook)
            return;
        var dates = new[] { outlook.Reached.P10, outlook.Reached.P50, outlook.Reached.P90 }.Select(d => d ?? DateOnly.MaxValue).ToList();
        Assert.Equal(dates.Order(), dates);
        Assert.Equal(outlook.YearEnd.P90 >= forecast.Target, outlook.Reached.P10 is not null);
    }, iter: 30);

    [Fact]
    public void Grows_from_week_to_week() => Forecasts.Sample(forecast =>
    {
        var middle = (forecast.Outlook?.Path ?? []).Select(p => p.Total.P50).ToList();
        Assert.Equal(middle.Order(), middle);
    }, iter: 30);

    [Fact]
    public void Needs_on_each_day_left_just_enough() => Forecasts.Sample(forecast =>
    {
        if (forecast.NeededADay is not { } day)
        {
            Assert.True(forecast.Missing == 0 || forecast.TeachingDaysLeft == 0);
            return;
        }

        Assert.True(day * forecast.TeachingDaysLeft >= forecast.Missing);
        Assert.True((day - 1) * forecast.TeachingDaysLeft < forecast.Missing);
        var usual = Math.Min(5, forecast.TeachingDaysLeft);
        Assert.True((long)forecast.NeededAWeek!.Value * forecast.TeachingDaysLeft >= (long)forecast.Missing * usual);
        Assert.True((forecast.NeededAWeek.Value - 1L) * forecast.TeachingDaysLeft < (long)forecast.Missing * usual);
    }, iter: 50);

    [Fact]
    public void Sees_no_further_back_than_eight_weeks_but_for_the_total() => Questions.Where(q => q.AsOf > Year.First.AddDays(70)).Sample(q =>
    {
        var oldest = Week.Of(q.AsOf).Monday.AddDays(-7 * Outlook.MostWeeks);
        var recent = q.Amounts.Where(a => a.Key >= oldest).ToDictionary();
        var older = q.Amounts.Values.Sum() - recent.Values.Sum();
        var whole = Forecast.Of(q.Amounts, Year, School, q.AsOf, q.Target + older);
        var without = Forecast.Of(recent, Year, School, q.AsOf, q.Target);
        Assert.Equal(whole.Outlook?.YearEnd.P50, without.Outlook?.YearEnd.P50 + older);
        Assert.Equal(whole.Outlook?.Reached, without.Outlook?.Reached);
    }, iter: 20);

    [Fact]
    public void Of_steady_weeks_has_three_points_in_one() => Gen.Select(Gen.Int[1, 480], Gen.Int[4, 38]).Sample((minutes, weeks) =>
    {
        var sunday = Year.First.AddDays(7 * weeks - 1);
        var forecast = Forecast.Of(Amounts(sunday, minutes), Year, School, sunday, 1_000_000);
        Assert.Equal(new Spread(195 * minutes, 195 * minutes, 195 * minutes), forecast.Outlook!.YearEnd);
    }, iter: 30);
}
