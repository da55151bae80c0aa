using System.Net;
using CoopLessons.Core.Calendar;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Families;

[Collection(SharedServer.Name)]
public sealed class TheSchoolYears(TestServer server)
{
    private static async Task<string> FirstAsync(TestFamily family) =>
        "/family/years/" + await family.FromDbAsync(db => db.SchoolYears.Select(y => y.Id).SingleAsync());

    [Fact]
    public async Task Follow_each_other()
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync("/family/years/new");
        for (var i = 0; i < 2; i++)
        {
            var answer = await family.Guardian.SubmitAsync(page);
            Assert.StartsWith("/family/years/", answer.Headers.Location!.OriginalString, StringComparison.Ordinal);
        }

        var years = await family.FromDbAsync(db => db.SchoolYears.OrderBy(y => y.First).ToListAsync());
        Assert.Equal(2, years.Count);
        Assert.Equal(("2026–27", new DateOnly(2026, 7, 1), new DateOnly(2027, 6, 30), Weekdays.MondayToFriday), (years[1].Name, years[1].First, years[1].Last, years[1].Weekdays));
    }

    [Theory]
    [InlineData("Input.Name", "")]
    [InlineData("Input.Name", "a name that is much longer than forty signs")]
    [InlineData("Input.First", "")]
    [InlineData("Input.First", "autumn")]
    [InlineData("Input.First", "0001-01-01")]
    [InlineData("Input.First", "9999-12-31")]
    [InlineData("Input.First", "2026-06-30")]
    [InlineData("Input.Last", "2026-06-01")]
    [InlineData("Input.Last", "2027-08-05")]
    [InlineData("Input.Days", null)]
    [InlineData("Input.Days", "Someday")]
    [InlineData("Input.Days", "MondayToFriday")]
    public async Task Are_refused_where_they_cannot_be(string field, string? value)
    {
        var family = await server.FamilyAsync();
        var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/family/years/new"), new() { [field] = value });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.NotEmpty((await Visitor.ParseAsync(answer)).QuerySelectorAll(".field-validation-error"));
        Assert.Equal(1, await family.FromDbAsync(db => db.SchoolYears.CountAsync()));
    }

    [Fact]
    public async Task Have_four_hundred_days_at_most()
    {
        var family = await server.FamilyAsync();
        // 1 July 2026 and 399 days more.
        var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/family/years/new"), new() { ["Input.Last"] = "2027-08-04" });
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
    }

    [Fact]
    public async Task Are_changed_unless_somebody_else_was_faster()
    {
        var family = await server.FamilyAsync();
        var path = await FirstAsync(family);
        var page = await family.Guardian.GetAsync(path);
        Assert.Equal(HttpStatusCode.Redirect, (await family.Guardian.SubmitAsync(page, new() { ["Input.Last"] = "2026-05-29", ["Input.Days"] = null }, more: [new("Input.Days", "Tuesday"), new("Input.Days", "Saturday")])).StatusCode);
        var year = await family.FromDbAsync(db => db.SchoolYears.SingleAsync());
        Assert.Equal((new DateOnly(2026, 5, 29), Weekdays.Tuesday | Weekdays.Saturday), (year.Last, year.Weekdays));
        var stale = await family.Guardian.SubmitAsync(page, new() { ["Input.Name"] = "Mine" });
        Assert.Equal(HttpStatusCode.Conflict, stale.StatusCode);
        Assert.Equal("Mine", (await Visitor.ParseAsync(stale)).QuerySelector("#Input_Name")!.GetAttribute("value"));
    }

    [Fact]
    public async Task Have_breaks_that_come_and_go()
    {
        var family = await server.FamilyAsync();
        var path = await FirstAsync(family);
        var page = await family.Guardian.GetAsync(path);
        for (var i = 0; i < 2; i++)
            await family.Guardian.SubmitAsync(page, new() { ["Away.Name"] = "Mud week", ["Away.First"] = "2026-04-06", ["Away.Last"] = "2026-04-10" }, within: "#Away_Name");
        var away = Assert.Single((await family.FromDbAsync(db => db.SchoolYears.Include(y => y.Breaks).SingleAsync())).Breaks);
        Assert.Equal((new DateOnly(2026, 4, 6), new DateOnly(2026, 4, 10)), (away.First, away.Last));
        page = await family.Guardian.GetAsync(path);
        Assert.Contains("6 April 2026 to 10 April 2026", page.Body!.TextContent, StringComparison.Ordinal);
        await family.Guardian.SubmitAsync(page, within: "input[name=breakId]");
        Assert.Empty((await family.FromDbAsync(db => db.SchoolYears.Include(y => y.Breaks).SingleAsync())).Breaks);
        Assert.Equal(HttpStatusCode.NotFound, (await family.Guardian.SubmitAsync(page, within: "input[name=breakId]")).StatusCode);
    }

    [Theory]
    [InlineData("", "2026-04-06", "2026-04-10")]
    [InlineData("Mud week", "", "2026-04-10")]
    [InlineData("Mud week", "2026-04-10", "2026-04-06")]
    [InlineData("Mud week", "2025-06-30", "2025-07-02")]
    [InlineData("Mud week", "2026-06-30", "2026-07-01")]
    [InlineData("Mud week", "x", "<script>")]
    public async Task Refuse_breaks_that_cannot_be(string name, string first, string last)
    {
        var family = await server.FamilyAsync();
        var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(await FirstAsync(family)), new() { ["Away.Name"] = name, ["Away.First"] = first, ["Away.Last"] = last }, within: "#Away_Name");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var page = await Visitor.ParseAsync(answer);
        Assert.NotEmpty(page.QuerySelectorAll("[id^=away-].field-validation-error"));
        Assert.Empty(page.QuerySelectorAll("#name-fault.field-validation-error"));
        Assert.Equal(name, page.QuerySelector("#Away_Name")!.GetAttribute("value") ?? "");
    }

    // Dates: U.S. Office of Personnel Management, federal holidays 2026: Independence Day kept on Friday 3 July;
    // Labor Day 7 September; Thanksgiving 26 November; Christmas Friday 25 December.
    [Fact]
    public async Task Offer_the_federal_holidays_on_the_days_on_which_they_are_kept()
    {
        var family = await server.FamilyAsync();
        await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/family/years/new"));
        var path = "/family/years/" + await family.FromDbAsync(db => db.SchoolYears.OrderByDescending(y => y.First).Select(y => y.Id).FirstAsync());
        var page = await family.Guardian.GetAsync(path);
        Assert.Contains("5 U.S.C. § 6103", page.Body!.TextContent, StringComparison.Ordinal);
        var offered = page.QuerySelectorAll("input[name=days]").Select(i => i.GetAttribute("value")!).ToList();
        Assert.Equal(11, offered.Count);
        Assert.All(new[] { "2026-07-03", "2026-09-07", "2026-11-26", "2026-12-25" }, day => Assert.Contains(day, offered));
        var answer = await family.Guardian.SubmitAsync(page, within: "form[action*='handler=Holidays'] fieldset", more: [new("days", "2026-07-03"), new("days", "2026-11-26"), new("days", "2026-11-27")]);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var breaks = (await family.FromDbAsync(db => db.SchoolYears.Include(y => y.Breaks).OrderByDescending(y => y.First).FirstAsync())).Breaks;
        // The day after Thanksgiving is no federal holiday, and was not offered.
        Assert.Equal([("Independence Day", new DateOnly(2026, 7, 3)), ("Thanksgiving Day", new DateOnly(2026, 11, 26))], breaks.Select(b => (b.Name, b.First)).OrderBy(b => b.First));
        Assert.Equal(9, (await family.Guardian.GetAsync(path)).QuerySelectorAll("input[name=days]").Length);
    }

    [Fact]
    public async Task Are_added_once_by_a_form_that_is_sent_eight_times_at_once()
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync("/family/years/new");
        var answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => family.Guardian.SubmitAsync(page)));
        Assert.All(answers, a => Assert.Equal(HttpStatusCode.Redirect, a.StatusCode));
        Assert.Single(answers.Select(a => a.Headers.Location!.OriginalString).Distinct());
        Assert.Equal(2, await family.FromDbAsync(db => db.SchoolYears.CountAsync()));
    }

    [Fact]
    public async Task Have_a_break_once_though_its_form_is_sent_eight_times_at_once()
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync(await FirstAsync(family));
        var answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ =>
            family.Guardian.SubmitAsync(page, new() { ["Away.Name"] = "Mud week", ["Away.First"] = "2026-04-06", ["Away.Last"] = "2026-04-10" }, within: "#Away_Name")));
        Assert.All(answers, a => Assert.Equal(HttpStatusCode.Redirect, a.StatusCode));
        Assert.Single((await family.FromDbAsync(db => db.SchoolYears.Include(y => y.Breaks).SingleAsync())).Breaks);
    }

    [Fact]
    public async Task Have_a_holiday_once_though_it_is_chosen_eight_times_at_once()
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync(await FirstAsync(family));
        var day = page.QuerySelector("input[name=days]")!.GetAttribute("value")!;
        var answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ =>
            family.Guardian.SubmitAsync(page, within: "form[action*='handler=Holidays'] fieldset", more: [new("days", day)])));
        Assert.All(answers, a => Assert.Equal(HttpStatusCode.Redirect, a.StatusCode));
        var away = Assert.Single((await family.FromDbAsync(db => db.SchoolYears.Include(y => y.Breaks).SingleAsync())).Breaks);
        Assert.Equal(day, away.First.ToString("yyyy-MM-dd"));
    }

    [Fact]
    public async Task Do_not_take_a_break_under_the_id_of_another_year_s_break()
    {
        var family = await server.FamilyAsync();
        var first = await FirstAsync(family);
        var taken = Guid.CreateVersion7().ToString();
        var fill = new Dictionary<string, string?> { ["Away.Id"] = taken, ["Away.Name"] = "Mud week", ["Away.First"] = "2026-04-06", ["Away.Last"] = "2026-04-10" };
        Assert.Equal(HttpStatusCode.Redirect, (await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(first), fill, within: "#Away_Name")).StatusCode);
        var next = (await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/family/years/new"))).Headers.Location!.OriginalString;
        var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(next), new() { ["Away.Id"] = taken, ["Away.Name"] = "Harvest", ["Away.First"] = "2026-09-07", ["Away.Last"] = "2026-09-11" }, within: "#Away_Name");
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        var shown = await Visitor.ParseAsync(answer);
        Assert.NotEmpty(shown.QuerySelector("#away-name-fault")!.TextContent);
        Assert.Equal("Harvest", shown.QuerySelector("#Away_Name")!.GetAttribute("value"));
        // With an id of its own this time.
        Assert.Equal(HttpStatusCode.Redirect, (await family.Guardian.SubmitAsync(shown, within: "#Away_Name")).StatusCode);
    }

    [Fact]
    public async Task Of_another_family_are_not_there()
    {
        var family = await server.FamilyAsync();
        var theirs = await FirstAsync(await server.FamilyAsync("Birch"));
        Assert.Equal(HttpStatusCode.NotFound, (await family.Guardian.OpenAsync(theirs)).StatusCode);
        var token = await family.Guardian.TokenAsync("/family/subjects");
        foreach (var handler in new[] { "", "AddBreak", "RemoveBreak", "Holidays" })
            Assert.Equal(HttpStatusCode.NotFound, (await family.Guardian.PostAsync($"{theirs}?handler={handler}", [new("__RequestVerificationToken", token)])).StatusCode);
    }
}
