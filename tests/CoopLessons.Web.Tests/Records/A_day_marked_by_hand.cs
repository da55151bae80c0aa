using System.Net;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Records;

[Collection(SharedServer.Name)]
public sealed class A_day_marked_by_hand(TestServer server)
{
    private const string Date = "2026-03-02";
    private static readonly DateOnly Day = new(2026, 3, 2);

    [Fact]
    public async Task Counts_although_its_minutes_are_few_and_says_who_marked_it()
    {
        var log = await WithMinutesAsync(40);
        var page = await log.Guardian.GetAsync(log.DayPath(Date));
        Assert.Equal("Linnet, Monday, 2 March 2026", page.QuerySelector("h1")!.TextContent);
        Assert.Equal("Not counted: 0:40 hours are under the minimum day of 1:00.", Standing(page));

        var answer = await log.Guardian.SubmitAsync(page, new() { ["Input.Wish"] = "Count" });
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var after = await log.Guardian.GetAsync(answer.Headers.Location!.OriginalString);
        Assert.Equal("Counted: marked as a school day by hand.", Standing(after));
        var at = TimeZoneInfo.ConvertTime(server.Clock.GetUtcNow(), TimeZoneInfo.FindSystemTimeZoneById("America/Chicago"));
        Assert.Equal(
            $"Marked by Iris Alder on {at:d MMMM yyyy} at {at:H:mm}. By its 0:40 hours alone the day would not count; the minimum day is 1:00.",
            after.QuerySelector("#mark")!.TextContent);
        Assert.Contains("counts as a school day for Linnet", after.QuerySelector("#said")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("1", (await log.Guardian.GetAsync(log.RecordsPath())).QuerySelector("#days")!.TextContent);
    }

    [Fact]
    public async Task Does_not_count_although_its_minutes_are_many()
    {
        var log = await WithMinutesAsync(300);
        await MarkAsync(log, "DoNotCount");
        var page = await log.Guardian.GetAsync(log.RecordsPath());
        Assert.Equal("0", page.QuerySelector("#days")!.TextContent);
        Assert.Equal("5:00", page.QuerySelector("#hours")!.TextContent);
    }

    [Fact]
    public async Task Is_left_to_its_minutes_again()
    {
        var log = await WithMinutesAsync(60);
        await MarkAsync(log, "DoNotCount");
        await MarkAsync(log, "LetTheMinutesDecide");
        Assert.Equal("Counted: 1:00 hours reach the minimum day of 1:00.", Standing(await log.Guardian.GetAsync(log.DayPath(Date))));
        Assert.Equal(0, await log.Family.FromDbAsync(db => db.DayMarks.CountAsync()));
    }

    [Fact]
    public async Task Sent_twice_is_marked_once()
    {
        var log = await WithMinutesAsync(40);
        var page = await log.Guardian.GetAsync(log.DayPath(Date));
        Assert.Equal(HttpStatusCode.Redirect, (await log.Guardian.SubmitAsync(page, new() { ["Input.Wish"] = "Count" })).StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await log.Guardian.SubmitAsync(page, new() { ["Input.Wish"] = "Count" })).StatusCode);
        Assert.Equal(0, (await log.Family.FromDbAsync(db => db.DayMarks.SingleAsync())).Version);
    }

    [Theory]
    [InlineData("DoNotCount")]
    [InlineData("LetTheMinutesDecide")]
    public async Task Is_not_overwritten_from_an_old_page(string wish)
    {
        var log = await WithMinutesAsync(40);
        await MarkAsync(log, "DoNotCount");
        var old = await log.Guardian.GetAsync(log.DayPath(Date));
        await MarkAsync(log, "Count");

        var answer = await log.Guardian.SubmitAsync(old, new() { ["Input.Wish"] = wish });
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        var page = await Visitor.ParseAsync(answer);
        Assert.Equal("Counted: marked as a school day by hand.", Standing(page));
        Assert.Contains("Somebody marked this day", page.QuerySelector(".validation-summary-errors")!.TextContent, StringComparison.Ordinal);

        Assert.Equal(HttpStatusCode.Redirect, (await log.Guardian.SubmitAsync(page, new() { ["Input.Wish"] = wish })).StatusCode);
        Assert.StartsWith("Not counted", Standing(await log.Guardian.GetAsync(log.DayPath(Date))), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_not_overwritten_from_a_page_that_knew_no_mark()
    {
        var log = await WithMinutesAsync(40);
        var old = await log.Guardian.GetAsync(log.DayPath(Date));
        await MarkAsync(log, "Count");
        Assert.Equal(HttpStatusCode.Conflict, (await log.Guardian.SubmitAsync(old, new() { ["Input.Wish"] = "DoNotCount" })).StatusCode);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("Perhaps")]
    [InlineData("7")]
    public async Task Is_asked_for_again_when_the_wish_is_not_understood(string? wish)
    {
        var log = await WithMinutesAsync(40);
        var page = await log.Guardian.GetAsync(log.DayPath(Date));
        var answer = await log.Guardian.SubmitAsync(page, new() { ["Input.Wish"] = wish });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.NotEmpty((await Visitor.ParseAsync(answer)).QuerySelector("span.field-validation-error")!.TextContent);
        Assert.Equal(0, await log.Family.FromDbAsync(db => db.DayMarks.CountAsync()));
    }

    [Fact]
    public async Task Is_not_counted_before_it_has_come()
    {
        var log = await WithMinutesAsync(40);
        var page = await log.Guardian.GetAsync(log.DayPath("2199-03-13"));
        var answer = await log.Guardian.SubmitAsync(page, new() { ["Input.Wish"] = "Count" });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("has not come yet", (await Visitor.ParseAsync(answer)).QuerySelector("span.field-validation-error")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Of_another_family_is_not_there()
    {
        var log = await WithMinutesAsync(40);
        var other = await KeptLog.OfAsync(server, "Linnet");
        var page = await other.Guardian.GetAsync(other.DayPath(Date));
        var token = page.QuerySelector("input[name=__RequestVerificationToken]")!.GetAttribute("value")!;
        var answer = await other.Guardian.PostAsync(log.DayPath(Date), [new("__RequestVerificationToken", token), new("Input.Wish", "Count")]);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Equal(0, await log.Family.FromDbAsync(db => db.DayMarks.CountAsync()));
    }

    [Theory]
    [InlineData("2026-02-30")]
    [InlineData("2026-3-2")]
    [InlineData("today")]
    [InlineData("0001-01-01")]
    [InlineData("9999-12-31")]
    public async Task Needs_a_date(string date)
    {
        var log = await WithMinutesAsync(40);
        Assert.Equal(HttpStatusCode.NotFound, (await log.Guardian.OpenAsync(log.DayPath(date))).StatusCode);
    }

    [Fact]
    public async Task Shows_its_entries_and_why_it_is_a_day_off()
    {
        var log = await WithMinutesAsync(40);
        var page = await log.Guardian.GetAsync(log.DayPath(Date));
        Assert.Equal(["0:40"], page.QuerySelectorAll("#entries .row-side").Select(e => e.TextContent.Trim()));
        Assert.Equal("Weekend, Sunday", (await log.Guardian.GetAsync(log.DayPath("2026-03-01"))).QuerySelector(".sub")!.TextContent);
        Assert.Equal("Outside your school years", (await log.Guardian.GetAsync(log.DayPath("2024-03-01"))).QuerySelector(".sub")!.TextContent);
    }

    private async Task<KeptLog> WithMinutesAsync(int minutes)
    {
        var log = await KeptLog.OfAsync(server, "Linnet");
        await log.WriteAsync(Day, minutes, [("science", 1)]);
        return log;
    }

    private static async Task MarkAsync(KeptLog log, string wish)
    {
        var page = await log.Guardian.GetAsync(log.DayPath(Date));
        Assert.Equal(HttpStatusCode.Redirect, (await log.Guardian.SubmitAsync(page, new() { ["Input.Wish"] = wish })).StatusCode);
    }

    private static string Standing(AngleSharp.Dom.IDocument page) => page.QuerySelector("#standing")!.TextContent;
}
