using System.Net;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Today;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Week;

[Collection(PlanningServer.Name)]
public sealed class TheWeek(TestServer server)
{
    [Fact]
    public async Task Teaching_days_stand_beside_each_other_and_the_others_are_folded()
    {
        var day = await PlannedDay.MakeAsync(server);
        var page = await day.Guardian.GetAsync("/week");
        Assert.Equal(5, page.QuerySelectorAll(".week > .day").Length);
        Assert.Contains("Saturday and Sunday: nothing planned", page.QuerySelector("details.more summary")!.TextContent, StringComparison.Ordinal);
        var today = page.QuerySelector(".day.is-today")!;
        Assert.Contains("8:30", today.TextContent, StringComparison.Ordinal);
        Assert.Contains("30\u00a0min · all three", today.TextContent, StringComparison.Ordinal);
        Assert.Equal(["planned", "planned", "planned"], today.QuerySelectorAll(".state").Select(s => s.TextContent.Trim()));
    }

    [Fact]
    public async Task States_are_words()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var done = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: PlannedDay.Form(day.ReadAloud, "Done"));
        using var not = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: PlannedDay.Form(day.Sourdough, "NotToday"));
        var states = (await day.Guardian.GetAsync("/week/2026-W11")).QuerySelectorAll(".day.is-today .state").Select(s => s.TextContent.Trim());
        Assert.Equal(["done", "not done", "planned"], states);
    }

    [Fact]
    public async Task A_break_is_named_on_its_days()
    {
        var day = await PlannedDay.MakeAsync(server);
        await day.Family.WithDbAsync(async db =>
        {
            (await db.SchoolYears.Include(y => y.Breaks).SingleAsync()).AddBreak(Guid.CreateVersion7(), "Mill repair", new(new DateOnly(2026, 3, 13), new DateOnly(2026, 3, 16)));
            await db.SaveChangesAsync();
        });
        var page = await day.Guardian.GetAsync("/week/2026-W11");
        Assert.Contains("Mill repair", page.QuerySelectorAll(".week > .day")[4].TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_the_units_have_for_the_week_and_has_no_day_is_listed()
    {
        var day = await PlannedDay.MakeAsync(server);
        static IEnumerable<string> Titles(AngleSharp.Html.Dom.IHtmlDocument page) =>
            page.QuerySelectorAll("section.sheet .row-side a").Select(a => a.GetAttribute("href")!.Split('/')[^1].Split('?')[0]);
        Assert.Equal([day.Mill.ToString()], Titles(await day.Guardian.GetAsync("/week/2026-W11")));
        var next = await day.Guardian.GetAsync("/week/2026-W12");
        Assert.Equal([day.Mill.ToString(), day.Crackers.ToString()], Titles(next));
        Assert.Contains("week 1, left from earlier", next.QuerySelector("section.sheet")!.TextContent, StringComparison.Ordinal);
        Assert.Empty(Titles(await day.Guardian.GetAsync("/week/2026-W10")));
    }

    [Theory]
    [InlineData("/week/2026-W54")]
    [InlineData("/week/2026-11")]
    [InlineData("/week/9000-W01")]
    [InlineData("/week/lost/tomorrow")]
    [InlineData("/week/move/7")]
    [InlineData("/week/place/7")]
    public async Task An_address_that_means_nothing_is_answered_with_404(string path)
    {
        var family = await server.FamilyAsync();
        using var answer = await family.Guardian.OpenAsync(path);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public async Task An_activity_is_placed_for_everybody_unless_somebody_is_unticked()
    {
        var day = await PlannedDay.MakeAsync(server);
        var form = await day.Guardian.GetAsync($"/week/place/{day.Mill}?week=2026-W11");
        using var answer = await day.Guardian.SubmitAsync(form, new() { ["Input.Date"] = "2026-03-13", ["Input.Start"] = "10:15" });
        Assert.Equal("/week/2026-W11", answer.Headers.Location!.OriginalString);
        using var twice = await day.Guardian.SubmitAsync(form, new() { ["Input.Date"] = "2026-03-13", ["Input.Start"] = "10:15" });
        Assert.Equal(HttpStatusCode.Redirect, twice.StatusCode);
        var placed = Assert.Single(await day.Family.FromDbAsync(db => db.PlannedSessions.Where(s => s.ActivityId == day.Mill).ToListAsync()));
        Assert.Equal((new DateOnly(2026, 3, 13), 615), (placed.Date, placed.StartsAt));
        Assert.Equal(new[] { day.Wren, day.Linnet, day.Heron }.Order(), placed.Learners.Order());
        Assert.DoesNotContain("Grind by hand", (await day.Guardian.GetAsync("/week/2026-W11")).QuerySelector("section.sheet")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Placements_that_arrive_together_are_one()
    {
        var day = await PlannedDay.MakeAsync(server);
        var form = await day.Guardian.GetAsync($"/week/place/{day.Mill}");
        var answers = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => day.Guardian.SubmitAsync(form)));
        Assert.All(answers, a => Assert.Equal(HttpStatusCode.Redirect, a.StatusCode));
        Assert.Equal(1, await day.Family.FromDbAsync(db => db.PlannedSessions.CountAsync(s => s.ActivityId == day.Mill)));
    }

    [Theory]
    [InlineData("2026-03-14", "which is not one of your teaching days")]
    [InlineData("2027-03-12", "which lies outside every school year of yours")]
    public async Task A_day_without_teaching_is_allowed_and_said(string date, string said)
    {
        var day = await PlannedDay.MakeAsync(server);
        using var answer = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/week/place/{day.Mill}"), new() { ["Input.Date"] = date });
        var page = await day.Guardian.GetAsync(answer.Headers.Location!.OriginalString);
        Assert.Contains(said, page.QuerySelector("#said")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Grind by hand", page.QuerySelector(".week")!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Input.Date", "")]
    [InlineData("Input.Date", "1999-12-31")]
    [InlineData("Input.Date", "2201-01-01")]
    [InlineData("Input.Date", "soon")]
    [InlineData("Input.Start", "99:99")]
    [InlineData("Input.Learners", null)]
    [InlineData("Input.Learners", "wren")]
    public async Task Bad_input_is_refused_and_nothing_is_placed(string field, string? value)
    {
        var day = await PlannedDay.MakeAsync(server);
        using var answer = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/week/place/{day.Mill}"), new() { [field] = value });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.NotEmpty((await Visitor.ParseAsync(answer)).QuerySelectorAll(".field-validation-error"));
        Assert.Equal(0, await day.Family.FromDbAsync(db => db.PlannedSessions.CountAsync(s => s.ActivityId == day.Mill)));
    }

    [Fact]
    public async Task Another_familys_rows_are_not_there()
    {
        var theirs = await PlannedDay.MakeAsync(server);
        var mine = await PlannedDay.MakeAsync(server);
        foreach (var path in new[] { $"/week/place/{theirs.Mill}", $"/week/move/{theirs.Letters}" })
        {
            using var opened = await mine.Guardian.OpenAsync(path);
            Assert.Equal(HttpStatusCode.NotFound, opened.StatusCode);
        }

        using var placed = await mine.Guardian.SubmitAsync(await mine.Guardian.GetAsync($"/week/place/{mine.Mill}"), new() { ["Input.Learners"] = theirs.Wren.ToString() });
        Assert.Equal(HttpStatusCode.NotFound, placed.StatusCode);
        var token = await mine.Guardian.TokenAsync();
        foreach (var handler in new[] { "", "LetGo", "Order" })
        {
            using var moved = await mine.Guardian.PostAsync($"/week/move/{theirs.Letters}?handler={handler}", [new("__RequestVerificationToken", token), new("Input.Date", "2026-03-13"), new("place", "0")]);
            Assert.Equal(HttpStatusCode.NotFound, moved.StatusCode);
        }

        Assert.Equal((TestServer.Today, SessionState.Planned), ((await theirs.SessionAsync(theirs.Letters)).Date, (await theirs.SessionAsync(theirs.Letters)).State));
    }
}
