using System.Net;
using AngleSharp.Html.Dom;
using CoopLessons.Core.Calendar;
using CoopLessons.Data.Planning.Futures;
using CoopLessons.Data.Prepare;
using CoopLessons.Web.Planning;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Units;
using CoopLessons.Web.Tests.Week;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Prepare;

/// <summary>The flatbreads of week 4 need a sourdough: eight days until it is ready, good for fourteen more, fed every day. Today is Thursday 12 March.</summary>
[Collection(PlanningServer.Name)]
public sealed class Something_begun_ahead(TestServer server)
{
    private const string Path = "/week/ahead";
    private const string Flatbreads = "w4-01-starter-flatbreads";
    private static readonly DateOnly Planned = new(2026, 3, 30);

    [Fact]
    public async Task It_is_counted_back_from_the_day_of_its_activity()
    {
        var week = await MakeAsync();
        var line = Line(await week.Guardian.GetAsync(Path));

        Assert.Contains("Begin: A sourdough starter", line, StringComparison.Ordinal);
        Assert.Contains("Begin from Sunday 8 March to Sunday 22 March; needed on Monday 30 March. Feed every day", line, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_day_of_its_own_the_week_of_the_unit_counts()
    {
        var week = await AWeekToLayOut.MakeAsync(server, courses: false);

        Assert.Contains("needed in the week from Monday 30 March", Line(await week.Guardian.GetAsync(Path)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_unit_that_slides_four_days_slides_its_list_and_flags_what_is_begun()
    {
        var week = await MakeAsync();
        await week.PlanAsync("w2-01-grind-and-sift", new DateOnly(2026, 3, 17), 9 * 60);
        await BeginAsync(week, "2026-03-11").RedirectedAsync();
        var before = Lines(await week.Guardian.GetAsync(Path));

        const string lost = "/week/ways/2026-03-17?to=2026-03-20";
        var ways = await week.WaysAsync(lost, FamilyWork.KeyOf(new DayRange(new DateOnly(2026, 3, 17), new DateOnly(2026, 3, 20))));
        await week.Guardian.SubmitAsync(ways, within: $"section[aria-labelledby=way-{FutureKind.Shift}] form").RedirectedAsync();

        Assert.Equal(Planned.AddDays(4), (await week.SessionOfAsync(Flatbreads)).Date);
        var after = Lines(await week.Guardian.GetAsync(Path));
        var sourdough = after.Single(l => l.Contains("sourdough", StringComparison.Ordinal));
        Assert.Contains("“Flatbreads from your own starter” is 4 days later than when this was begun, and what is begun does not move with it.", sourdough, StringComparison.Ordinal);
        // Begun on the 11th, ready on the 19th, good until 2 April; needed on 3 April.
        Assert.Contains("It will be past its time by 1 day.", sourdough, StringComparison.Ordinal);
        Assert.Contains("Or begin it anew by Thursday 26 March.", sourdough, StringComparison.Ordinal);
        // The guests of the feast, asked for ten days before it, are not begun: they slide with Friday 3 April to Thursday 9 April.
        Assert.Contains("Arrange by Tuesday 24 March", before.Single(l => l.Contains("feast", StringComparison.Ordinal)), StringComparison.Ordinal);
        Assert.Contains("Arrange by Monday 30 March", after.Single(l => l.Contains("feast", StringComparison.Ordinal)), StringComparison.Ordinal);

        await week.Guardian.SubmitAsync(await week.Guardian.GetAsync(Path), within: "form[action$='handler=Leave']").RedirectedAsync();
        Assert.DoesNotContain("4 days later", Line(await week.Guardian.GetAsync(Path)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_is_seen_to_once_a_day_and_can_be_begun_anew()
    {
        var week = await MakeAsync();
        await BeginAsync(week, "2026-03-10").RedirectedAsync();
        Assert.Contains("Feed every day, next today", Line(await week.Guardian.GetAsync(Path)), StringComparison.Ordinal);

        await PressAsync(week, "Tend").RedirectedAsync();
        var seen = await week.Guardian.GetAsync(Path);
        Assert.Contains("next on Friday 13 March", Line(seen), StringComparison.Ordinal);
        Assert.Null(seen.QuerySelector("form[action$='handler=Tend']"));

        await PressAsync(week, "Anew").RedirectedAsync();
        Assert.Contains("Begin: A sourdough starter", Line(await week.Guardian.GetAsync(Path)), StringComparison.Ordinal);
        Assert.Empty(await MarksAsync(week));
    }

    [Fact]
    public async Task Today_says_what_a_later_day_asks_for()
    {
        var week = await MakeAsync();
        Assert.Null((await week.Guardian.GetAsync("/today")).QuerySelector("#ahead"));
        await BeginAsync(week, "2026-03-10").RedirectedAsync();
        var page = await week.Guardian.GetAsync("/today");
        Assert.Contains("Feed: A sourdough starter", page.Text("#ahead"), StringComparison.Ordinal);
        Assert.NotNull(page.QuerySelector("#ahead a[href^='/week/ahead#']"));
        var helper = await server.HelperAsync(week.Family);
        Assert.Null((await helper.GetAsync("/today")).QuerySelector("#ahead a"));
        Assert.Contains("Feed: A sourdough starter", (await helper.GetAsync("/today")).Text("#ahead"), StringComparison.Ordinal);

        await PressAsync(week, "Tend").RedirectedAsync();
        Assert.Null((await week.Guardian.GetAsync("/today")).QuerySelector("#ahead"));
    }

    [Fact]
    public async Task What_is_not_needed_asks_for_nothing_until_it_is_needed_after_all()
    {
        var week = await MakeAsync();
        await PressAsync(week, "NotNeeded").RedirectedAsync();
        Assert.DoesNotContain("sourdough", (await week.Guardian.GetAsync("/week/ready/2026-W12")).Text("#ahead"), StringComparison.Ordinal);
        Assert.Contains("not needed", Line(await week.Guardian.GetAsync(Path)), StringComparison.Ordinal);

        await PressAsync(week, "Anew").RedirectedAsync();
        Assert.Contains("sourdough", (await week.Guardian.GetAsync("/week/ready/2026-W12")).Text("#ahead"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2026-03-13")]
    [InlineData("2024-03-12")]
    [InlineData("")]
    [InlineData("soon")]
    public async Task A_day_that_cannot_be_is_refused_beside_the_field(string on)
    {
        var week = await MakeAsync();
        var page = await BeginAsync(week, on).AnsweredAsync(HttpStatusCode.UnprocessableEntity);

        Assert.Contains("Write a day that is not after today", page.Text(".field-validation-error"), StringComparison.Ordinal);
        Assert.Empty(await MarksAsync(week));
    }

    [Fact]
    public async Task Begun_twice_by_the_same_form_it_is_begun_once()
    {
        var week = await MakeAsync();
        var page = await week.Guardian.GetAsync(Path);
        await BeginAsync(week, "2026-03-11", page).RedirectedAsync();
        await BeginAsync(week, "2026-03-11", page).RedirectedAsync();

        Assert.Single(await MarksAsync(week));
    }

    [Fact]
    public async Task What_no_activity_asks_for_is_not_there()
    {
        var week = await MakeAsync();
        using var answer = await week.Guardian.SubmitAsync(await week.Guardian.GetAsync(Path), new() { ["what"] = "A dragon’s egg" }, within: "form[action$='handler=Begin']");

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public async Task What_is_done_is_on_no_list_any_more()
    {
        var week = await AWeekToLayOut.MakeAsync(server, a => a.Code == Flatbreads, courses: false);

        Assert.DoesNotContain(Lines(await week.Guardian.GetAsync(Path)), l => l.Contains("sourdough", StringComparison.Ordinal));
    }

    private async Task<AWeekToLayOut> MakeAsync()
    {
        var week = await AWeekToLayOut.MakeAsync(server, courses: false);
        await week.PlanAsync(Flatbreads, Planned, 9 * 60);
        await week.PlanAsync("w4-09-closing-feast", new DateOnly(2026, 4, 3), 9 * 60);
        return week;
    }

    private static async Task<HttpResponseMessage> BeginAsync(AWeekToLayOut week, string on, IHtmlDocument? page = null) =>
        await week.Guardian.SubmitAsync(page ?? await week.Guardian.GetAsync(Path), new() { ["on"] = on }, within: "li:has(h2:contains('sourdough')) form[action$='handler=Begin']");

    private static async Task<HttpResponseMessage> PressAsync(AWeekToLayOut week, string handler) =>
        await week.Guardian.SubmitAsync(await week.Guardian.GetAsync(Path), within: $"li:has(h2:contains('sourdough')) form[action$='handler={handler}']");

    private static List<string> Lines(IHtmlDocument page) => [.. page.QuerySelectorAll(".ahead-line").Select(l => l.TextContent.Squeezed())];

    private static string Line(IHtmlDocument page) => Lines(page).Single(l => l.Contains("sourdough", StringComparison.Ordinal));

    private static Task<List<AheadMark>> MarksAsync(AWeekToLayOut week) => week.Family.FromDbAsync(db => db.AheadMarks.AsNoTracking().ToListAsync());
}
