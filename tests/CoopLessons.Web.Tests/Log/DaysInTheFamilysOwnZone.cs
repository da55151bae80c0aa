using System.Net;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Today;

namespace CoopLessons.Web.Tests.Log;

/// <summary>Each test has a server of its own, since it sets the clock.</summary>
public sealed class DaysInTheFamilysOwnZone
{
    [Fact]
    public async Task Half_past_three_in_the_night_at_Greenwich_is_still_the_evening_before_in_Chicago()
    {
        using var server = new TestServer();
        var day = await PlannedDay.MakeAsync(server);
        server.Clock.SetUtcNow(new DateTimeOffset(2026, 3, 13, 3, 30, 0, TimeSpan.Zero));
        Assert.Equal("Thursday 12 March", (await day.TodayAsync()).QuerySelector("h1")!.TextContent);
        using var refused = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync("/log/new"), new() { ["Input.What"] = "Stars", ["Input.Date"] = "2026-03-13" });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        using var logged = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync("/log/new"), new() { ["Input.What"] = "Stars" });
        Assert.Equal("/today/2026-03-12", logged.Headers.Location!.OriginalString);
        Assert.DoesNotContain("written on", (await day.Guardian.GetAsync("/log")).QuerySelector("section.sheet")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_entry_made_days_later_says_on_which_day_it_was_written()
    {
        using var server = new TestServer();
        var day = await PlannedDay.MakeAsync(server);
        // Sunday evening in Chicago, Monday already at Greenwich.
        server.Clock.SetUtcNow(new DateTimeOffset(2026, 3, 16, 2, 0, 0, TimeSpan.Zero));
        using var logged = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync("/log/new?date=2026-03-12"), new() { ["Input.What"] = "Stars" });
        var entry = (await day.Guardian.GetAsync("/today/2026-03-12")).QuerySelector("section.sheet a")!.GetAttribute("href")!;
        Assert.Contains("Written on Sunday 15 March", (await day.Guardian.GetAsync(entry)).Body!.TextContent, StringComparison.Ordinal);
    }

    // Clocks in the United States went forward on 8 March 2026, the second Sunday of March: 15 U.S.C. § 260a.
    [Theory]
    [InlineData(8, 7, 59, "Sunday 8 March")]
    [InlineData(9, 4, 59, "Sunday 8 March")]
    [InlineData(9, 5, 0, "Monday 9 March")]
    [InlineData(8, 5, 59, "Saturday 7 March")]
    [InlineData(8, 6, 0, "Sunday 8 March")]
    public async Task The_day_of_23_hours_ends_an_hour_earlier_by_Greenwich(int utcDay, int hour, int minute, string today)
    {
        using var server = new TestServer();
        server.Clock.AdjustTime(new DateTimeOffset(2026, 3, utcDay, hour, minute, 0, TimeSpan.Zero));
        var family = await server.FamilyAsync();
        Assert.Equal(today, (await family.Guardian.GetAsync("/today")).QuerySelector("h1")!.TextContent);
    }
}
