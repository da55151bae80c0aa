using System.Net;
using CoopLessons.Core.Families;
using CoopLessons.Data.Prepare.Supplies;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Units;
using CoopLessons.Web.Tests.Week;

namespace CoopLessons.Web.Tests.Prepare;

/// <summary>Week 2 of “From Grain to Loaf”, from Monday 16 March, made ready on Thursday 12 March.</summary>
[Collection(PlanningServer.Name)]
public sealed class A_week_made_ready(TestServer server)
{
    private const string Ready = "/week/ready/2026-W12";

    [Fact]
    public async Task What_a_moving_week_asks_for_stands_in_its_parts()
    {
        var week = await AWeekToLayOut.MakeAsync(server, courses: false);
        var page = await week.Guardian.GetAsync(Ready);

        Assert.Equal(["Print", "Gather", "Borrow and return", "Read aloud", "Start ahead", "Take care"], page.QuerySelectorAll("main h2").Select(h => h.TextContent));
        // The flatbreads are in the week from 30 March: their starter takes eight days.
        Assert.Contains("Begin: A sourdough starterby Sunday 22 March · Flatbreads from your own starter", page.Text("#ahead"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Hazards_meet_ages_and_allergies_of_all_who_are_in_the_house()
    {
        var week = await AWeekToLayOut.MakeAsync(server, courses: false);
        await week.Family.LearnerAsync("Dove", new DateOnly(2017, 3, 1), [Allergen.Wheat]);
        await week.Family.LearnerAsync("Pipit", new DateOnly(2024, 1, 5));
        await week.PlanAsync("w2-01-grind-and-sift", new DateOnly(2026, 3, 17), 9 * 60, learners: [week.Heron, week.Wren]);
        var care = (await week.Guardian.GetAsync(Ready)).Text("#care");

        // Dove takes no part in grinding, and the flour is in the air of the house.
        Assert.Contains("Wheat berries and flours holds wheat, and Dove is allergic to it", care, StringComparison.Ordinal);
        Assert.Contains("There are small parts in this, and Pipit is 2. Small parts can choke a child under 3 (16 CFR Part 1501)", care, StringComparison.Ordinal);
        Assert.Contains("Pipit is 2 and takes no part. This involves tools", care, StringComparison.Ordinal);
        Assert.Contains("These cautions do not replace your own judgement", care, StringComparison.Ordinal);
        // “Safe” stands in nothing but the name of the published chart.
        Assert.DoesNotContain(" safe", care.Replace("safety advice", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Food_that_is_kept_hot_or_cold_brings_the_published_temperatures()
    {
        var week = await AWeekToLayOut.MakeAsync(server, courses: false);
        await week.PlanAsync("w4-05-soup-from-old-bread", new DateOnly(2026, 3, 17), 9 * 60);
        var page = await week.Guardian.GetAsync(Ready);

        Assert.Contains("Leftovers and casseroles 165 74", page.QuerySelectorAll("#care tbody tr").Select(r => string.Join(' ', r.Children.Select(c => c.TextContent))));
        Assert.Contains("foodsafety.gov", page.Text("#care"), StringComparison.Ordinal);
        Assert.Null((await week.Guardian.GetAsync("/week/ready/2026-W16")).QuerySelector("#care table"));
    }

    [Fact]
    public async Task The_sheet_for_the_fridge_has_a_box_for_each_thing_by_day()
    {
        var week = await AWeekToLayOut.MakeAsync(server, courses: false);
        await week.PlanAsync("w2-03-cork-water-wheel", new DateOnly(2026, 3, 18), 9 * 60);
        var page = await week.Guardian.GetAsync("/week/fridge/2026-W12");

        Assert.Contains("Wednesday 18 March", page.QuerySelectorAll("h2").Select(h => h.TextContent));
        var wheel = page.QuerySelectorAll(".boxes > li").Single(l => l.TextContent.Contains("Build a cork water wheel", StringComparison.Ordinal));
        Assert.Contains("Heron, Linnet and Wren: Large cork, ", wheel.TextContent.Squeezed(), StringComparison.Ordinal);
        Assert.NotNull(wheel.QuerySelector(".box"));
        Assert.Contains("Draw wheat's journey across the world", page.Text("section[aria-labelledby=whenever]"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_used_instead_lies_out_and_is_looked_at_for_allergies()
    {
        var week = await AWeekToLayOut.MakeAsync(server, courses: false);
        await week.Family.LearnerAsync("Dove", new DateOnly(2017, 3, 1), [Allergen.TreeNuts]);
        await week.PlanAsync("w2-05-salt-dough-tiles", new DateOnly(2026, 3, 17), 9 * 60);
        var flour = new Good(week.Family.Id, "Plain wheat flour");
        await week.AddAsync(flour);
        await week.AddAsync(new Swap(Guid.CreateVersion7(), flour.Id, null, new SwapFacts("Almond flour", 1, null)));

        Assert.Contains("Almond flour holds tree nuts, and Dove is allergic to it", (await week.Guardian.GetAsync(Ready)).Text("#care"), StringComparison.Ordinal);
        var tiles = (await week.Guardian.GetAsync("/week/fridge/2026-W12")).QuerySelectorAll(".boxes > li").Single(l => l.TextContent.Contains("tiles of the grain story, Heron, Linnet and Wren: ", StringComparison.Ordinal)).TextContent;
        Assert.Contains("Almond flour", tiles, StringComparison.Ordinal);
        Assert.DoesNotContain("wheat flour", tiles, StringComparison.Ordinal);
    }

    [Fact]
    public async Task From_Saturday_on_the_next_week_is_shown()
    {
        var week = await AWeekToLayOut.MakeAsync(server, courses: false);
        // Today is a Thursday.
        Assert.Contains("week of Monday 9 March", (await week.Guardian.GetAsync("/week/ready")).Text("h1"), StringComparison.Ordinal);
        Assert.Equal(
            [11, 11, 12, 12],
            new[] { 12, 13, 14, 15 }.Select(d => CoopLessons.Web.Pages.Week.Ready.IndexModel.AtHand(new DateOnly(2026, 3, d))).Select(w => int.Parse(w.Iso[^2..], System.Globalization.CultureInfo.InvariantCulture)));
    }

    [Theory]
    [InlineData("/week/ready/2026-W60")]
    [InlineData("/week/ready/next")]
    [InlineData("/week/fridge/2026-13")]
    public async Task A_week_that_is_none_is_not_there(string path)
    {
        var week = await AWeekToLayOut.MakeAsync(server, courses: false);
        using var answer = await week.Guardian.OpenAsync(path);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }
}
