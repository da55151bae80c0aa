using System.Globalization;
using System.Text.RegularExpressions;
using AngleSharp.Dom;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Requirements;
using CoopLessons.Data.Requirements;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Law;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Records;

[Collection(SharedServer.Name)]
public sealed partial class A_year_that_runs_under_a_pathway(TestServer server)
{
    [Fact]
    public async Task Is_foretold_in_a_picture_with_the_numbers_of_its_tables()
    {
        var log = await RunningAsync();
        var page = await log.Guardian.GetAsync(log.StandingPath());
        var forecast = Assert.Single(page.QuerySelectorAll("main details.forecast"));
        var total = forecast.QuerySelectorAll("table")[0].QuerySelectorAll("tbody td:nth-child(2)").Select(Plain).ToList();
        var weeks = forecast.QuerySelectorAll("table")[1].QuerySelectorAll("tbody tr").Select(r => r.QuerySelectorAll("th, td").Select(Plain).ToList()).ToList();
        var said = Said().Match(forecast.QuerySelector("svg desc")!.Plain());

        Assert.True(said.Success, forecast.QuerySelector("svg desc")!.Plain());
        Assert.Equal(weeks.Last(w => w[1].Length > 0)[1], said.Groups["now"].Value);
        Assert.Equal([said.Groups["low"].Value, said.Groups["middle"].Value, said.Groups["high"].Value], total);
        Assert.Equal([said.Groups["day"].Value, "", .. total], weeks[^1]);
        Assert.Equal("1,000", said.Groups["goal"].Value);
        Assert.NotEqual(total[0], total[2]);
        Assert.Equal("The way to 1,000 hours", forecast.QuerySelector("svg title")!.Plain());
    }

    [Fact]
    public async Task Is_drawn_where_its_numbers_lie_on_the_scale()
    {
        var log = await RunningAsync();
        var forecast = (await log.Guardian.GetAsync(log.StandingPath())).QuerySelector("main details.forecast")!;
        var scale = forecast.QuerySelectorAll("svg g:has(line.grid)")
            .Select(g => (Value: Number(g.QuerySelector("text")!.Plain()), Y: Number(g.QuerySelector("line")!.GetAttribute("y1")!))).ToList();
        var unit = (scale[0].Y - scale[^1].Y) / (scale[^1].Value - scale[0].Value);
        double At(double y) => scale[0].Value + (scale[0].Y - y) / unit;
        double End(string path) => Number(forecast.QuerySelector(path)!.GetAttribute("d")!.Split(' ')[^1]);
        var weeks = forecast.QuerySelectorAll("table")[1].QuerySelectorAll("tbody tr").Select(r => r.QuerySelectorAll("td").Select(Plain).ToList()).ToList();

        Assert.Equal(1000, At(Number(forecast.QuerySelector("svg line.goal")!.GetAttribute("y1")!)), 0.1);
        Assert.Equal(Hours(weeks.Last(w => w[0].Length > 0)[0]), At(End("svg path.line:not(.ahead)")), 0.1);
        Assert.Equal(Hours(weeks[^1][2]), At(End("svg path.ahead")), 0.1);
    }

    [Fact]
    public async Task Counts_the_teaching_days_that_are_left()
    {
        var log = await RunningAsync();
        await log.Family.WithDbAsync(async db =>
        {
            (await db.SchoolYears.Include(y => y.Breaks).SingleAsync()).AddBreak(Guid.CreateVersion7(), "Spring break", new(new(2026, 3, 16), new(2026, 3, 20)));
            await db.SaveChangesAsync();
        });
        var page = await log.Guardian.GetAsync(log.StandingPath());
        // Thursday, 12 March, to Tuesday, 30 June 2026: 79 weekdays by any wall calendar, less the five of the break.
        Assert.Contains("74 in your calendar", page.QuerySelector("main details.forecast dl")!.Plain(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Has_only_the_arithmetic_before_its_third_whole_week()
    {
        var log = await KeptLog.OfAsync(server, "Linnet");
        var own = new OwnPathway(Guid.CreateVersion7(), OwnPathways.Small("Our year"));
        await log.AddAsync(own);
        await log.AddAsync(new LearnerPathway(Guid.CreateVersion7(), log.Linnet, own, new(2026, 2, 23), SpanReason.Begins));
        await log.Family.WithDbAsync(async db =>
        {
            (await db.SchoolYears.SingleAsync()).Describe("2026", new(new(2026, 2, 23), new(2026, 12, 31)), Weekdays.MondayToFriday);
            await db.SaveChangesAsync();
        });
        await log.FillWeekdaysAsync(new(2026, 2, 23), new(2026, 3, 11), _ => 300, "reading");
        var page = await log.Guardian.GetAsync(log.StandingPath());
        var forecasts = page.QuerySelectorAll("main details.forecast");

        Assert.Equal(2, forecasts.Length);
        Assert.Empty(page.QuerySelectorAll("main svg[role=img], main details.forecast table"));
        Assert.All(forecasts, f => Assert.Contains("A forecast needs three whole weeks of log", f.Plain(), StringComparison.Ordinal));
        // 600 − 13 · 5 = 535 hours over the 211 weekdays from 12 March to 31 December 2026: 2:33 a day, rounded up.
        var facts = forecasts[1].Texts("dd");
        Assert.Equal(["535 hours", "211 in your calendar"], facts.Take(2));
        Assert.StartsWith("2:33 hours a day, ", facts[2], StringComparison.Ordinal);
        Assert.All(page.Texts("main section.sheet > ul.rows > li .state"), s => Assert.Equal("cannot tell yet", s));
    }

    private async Task<KeptLog> RunningAsync()
    {
        var log = await KeptLog.OfAsync(server, "Linnet").StandsAsync("US-MO", "home-school");
        await log.FillWeekdaysAsync(new(2025, 9, 1), new(2026, 3, 11), d => 240 + d.DayNumber / 7 % 3 * 60);
        return log;
    }

    private static string Plain(IElement cell) => cell.Plain();

    private static double Number(string text) => double.Parse(text, NumberStyles.Number, CultureInfo.InvariantCulture);

    private static double Hours(string figure) => figure.Split(':') is [var hours, var minutes] ? Number(hours) + Number(minutes) / 60 : Number(figure);

    [GeneratedRegex("^So far (?<now>[0-9,:]+) hours\\. By (?<day>.+) the total lies between (?<low>[0-9,:]+) and (?<high>[0-9,:]+) hours in eight of ten cases, in the middle at (?<middle>[0-9,:]+); (?<goal>[0-9,:]+) are asked")]
    private static partial Regex Said();
}
