using System.Globalization;
using System.Net;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Notices;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Today;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace CoopLessons.Web.Tests.Notices;

/// <summary>The sourdough is planned for 9:00 to 9:15 and rises for 90 minutes: somebody looks at 10:45.</summary>
public sealed class Something_that_waits
{
    [Fact]
    public async Task Is_told_at_its_minute_sealed_signed_and_without_a_name()
    {
        await using var all = await NoticeServer.StartAsync();
        var day = await PlannedDay.MakeAsync(all.Server);
        await all.TurnOnAsync(day.Guardian);
        all.ItIs(3, 12, 10, 44);
        Assert.Empty(await all.AfterARoundAsync());

        all.ItIs(3, 12, 10, 45);
        var pushed = Assert.Single(await all.AfterARoundAsync());
        Assert.Empty(await all.AfterARoundAsync());

        var (title, body, to) = all.Read(pushed);
        Assert.Equal(("Look", "The starter rises: see whether it is ready.", "/today"), (title, body, to));
        Assert.DoesNotContain("Wren", body, StringComparison.Ordinal);
        Assert.Equal("/push/one", pushed.Path);
        Assert.Equal("aes128gcm", pushed.Headers["Content-Encoding"]);
        Assert.Equal(900, int.Parse(pushed.Headers["TTL"], CultureInfo.InvariantCulture));
        Assert.Equal("high", pushed.Headers["Urgency"]);
        // RFC 8030 § 5.4: at most 32 signs of base64url.
        Assert.Matches("^[A-Za-z0-9_-]{1,32}$", pushed.Headers["Topic"]);

        var token = SignedToken.Read(pushed.Headers["Authorization"]);
        Assert.True(token.Holds);
        Assert.Equal(all.Push.Address, token.Audience);
        // RFC 8292 § 2: not more than a day ahead.
        var now = all.Server.Clock.GetUtcNow().ToUnixTimeSeconds();
        Assert.InRange(token.Expires, now + 1, now + (24 * 60 * 60));
        Assert.Equal(all.Server.Services.GetRequiredService<NoticeKeys>().Public, token.Key);
    }

    [Fact]
    public async Task Is_told_once_by_two_servers_that_go_round_at_once()
    {
        await using var all = await NoticeServer.StartAsync();
        var day = await PlannedDay.MakeAsync(all.Server);
        await all.TurnOnAsync(day.Guardian);
        all.ItIs(3, 12, 10, 45);
        var (one, other) = (ActivatorUtilities.CreateInstance<NoticeRound>(all.Server.Services), ActivatorUtilities.CreateInstance<NoticeRound>(all.Server.Services));
        await Task.WhenAll(one.RunAsync(default), other.RunAsync(default));
        Assert.Single(await all.AfterARoundAsync());
        all.ItIs(3, 12, 10, 50);
        Assert.Empty(await all.AfterARoundAsync());
        one.Dispose();
        other.Dispose();
    }

    [Fact]
    public async Task Is_told_on_each_device_and_to_a_helper_too()
    {
        await using var all = await NoticeServer.StartAsync();
        var day = await PlannedDay.MakeAsync(all.Server);
        await all.TurnOnAsync(day.Guardian);
        await all.TurnOnAsync(day.Guardian, device: "two");
        await all.TurnOnAsync(await all.Server.HelperAsync(day.Family), device: "three");
        all.ItIs(3, 12, 10, 45);
        Assert.Equal(["/push/one", "/push/three", "/push/two"], (await all.AfterARoundAsync()).Select(p => p.Path).Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData(10, 59, 1)]
    [InlineData(11, 0, 0)]
    public async Task Is_told_late_for_a_quarter_of_an_hour_and_no_more_after_that(int hour, int minute, int told)
    {
        await using var all = await NoticeServer.StartAsync();
        var day = await PlannedDay.MakeAsync(all.Server);
        await all.TurnOnAsync(day.Guardian);
        all.ItIs(3, 12, hour, minute);
        Assert.Equal(told, (await all.AfterARoundAsync()).Count);
    }

    [Theory]
    [InlineData("LetGo")]
    [InlineData("NotToday")]
    [InlineData("Moved")]
    public async Task Is_not_told_once_its_line_has_left_the_day(string how)
    {
        await using var all = await NoticeServer.StartAsync();
        var day = await PlannedDay.MakeAsync(all.Server);
        await all.TurnOnAsync(day.Guardian);
        await day.Family.WithDbAsync(async db =>
        {
            var session = await db.PlannedSessions.SingleAsync(s => s.Id == day.Sourdough);
            if (how == "LetGo")
                session.LetGo();
            else if (how == "NotToday")
                session.NotToday();
            else
                session.MoveTo(TestServer.Today.AddDays(1));
            await db.SaveChangesAsync();
        });
        all.ItIs(3, 12, 10, 45);
        Assert.Empty(await all.AfterARoundAsync());
    }

    [Fact]
    public async Task Is_not_told_once_what_comes_after_it_is_done()
    {
        await using var all = await NoticeServer.StartAsync();
        var day = await PlannedDay.MakeAsync(all.Server);
        await all.TurnOnAsync(day.Guardian);
        await day.Family.WithDbAsync(async db =>
        {
            var letters = await db.Activities.SingleAsync(a => a.Code == "letters" && a.UnitId == day.Unit);
            letters.Describe(
                new(letters.Week, letters.Order, letters.Title, letters.Kind, letters.Does, letters.AdultNeed, letters.HandsOnMinutes, 0, ""), letters.Details with { After = ["sourdough"] });
            await db.SaveChangesAsync();
        });
        using var done = await day.Guardian.SubmitAsync(await day.TodayAsync(), within: PlannedDay.Form(day.Letters, "Done"));
        all.ItIs(3, 12, 10, 45);
        Assert.Empty(await all.AfterARoundAsync());
    }

    [Fact]
    public async Task Is_told_in_plain_words_where_a_parent_s_own_name_a_child()
    {
        await using var all = await NoticeServer.StartAsync();
        var day = await PlannedDay.MakeAsync(all.Server);
        await all.TurnOnAsync(day.Guardian);
        await day.Family.WithDbAsync(async db =>
        {
            var sourdough = await db.Activities.SingleAsync(a => a.Code == "sourdough" && a.UnitId == day.Unit);
            sourdough.Describe(new(1, 2, sourdough.Title, sourdough.Kind, sourdough.Does, sourdough.AdultNeed, 15, 90, "Wren's jar rises"), sourdough.Details);
            await db.SaveChangesAsync();
        });
        all.ItIs(3, 12, 10, 45);
        Assert.Equal("Something that waits wants to be looked at.", all.Read(Assert.Single(await all.AfterARoundAsync())).Body);
    }

    [Theory]
    [InlineData(404)]
    [InlineData(410)]
    public async Task A_browser_that_is_gone_is_forgotten(int status)
    {
        await using var all = await NoticeServer.StartAsync();
        var day = await PlannedDay.MakeAsync(all.Server);
        await all.TurnOnAsync(day.Guardian);
        all.Push.Answers = status;
        all.ItIs(3, 12, 10, 45);
        Assert.Single(await all.AfterARoundAsync());
        Assert.Equal(0, await all.Server.FromDbAsync(null, db => db.NoticeDevices.CountAsync()));
    }

    [Fact]
    public async Task A_push_service_that_is_busy_is_asked_again()
    {
        await using var all = await NoticeServer.StartAsync();
        var day = await PlannedDay.MakeAsync(all.Server);
        await all.TurnOnAsync(day.Guardian);
        all.Push.Answers = 503;
        all.ItIs(3, 12, 10, 45);
        var first = Assert.Single(await all.AfterARoundAsync());
        all.Push.Answers = 201;
        all.ItIs(3, 12, 10, 46);
        Assert.Equal(first.Headers["Topic"], Assert.Single(await all.AfterARoundAsync()).Headers["Topic"]);
        Assert.Empty(await all.AfterARoundAsync());
    }

    [Fact]
    public async Task A_push_service_that_sends_elsewhere_is_not_followed()
    {
        await using var all = await NoticeServer.StartAsync();
        var day = await PlannedDay.MakeAsync(all.Server);
        await all.TurnOnAsync(day.Guardian);
        all.Push.Answers = 307;
        all.ItIs(3, 12, 10, 45);
        Assert.Equal("/push/one", Assert.Single(await all.AfterARoundAsync()).Path);
        Assert.Empty(await all.AfterARoundAsync());
    }

    [Fact]
    public async Task Is_told_to_nobody_who_did_not_ask_for_it()
    {
        await using var all = await NoticeServer.StartAsync();
        var day = await PlannedDay.MakeAsync(all.Server);
        await all.TurnOnAsync(day.Guardian, waits: false);
        all.ItIs(3, 12, 10, 45);
        Assert.Empty(await all.AfterARoundAsync());
    }

    [Fact]
    public async Task Is_told_to_nobody_who_left_the_family()
    {
        await using var all = await NoticeServer.StartAsync();
        var day = await PlannedDay.MakeAsync(all.Server);
        await all.TurnOnAsync(await all.Server.HelperAsync(day.Family));
        await day.Family.WithDbAsync(async db =>
        {
            db.Memberships.Remove(await db.Memberships.SingleAsync(m => m.Name == "Basil"));
            await db.SaveChangesAsync();
        });
        all.ItIs(3, 12, 10, 45);
        Assert.Empty(await all.AfterARoundAsync());
    }

    [Fact]
    public async Task The_server_s_keys_outlast_a_start_and_lie_sealed()
    {
        await using var all = await NoticeServer.StartAsync();
        var key = all.Server.Services.GetRequiredService<NoticeKeys>().Public;
        using var started = ActivatorUtilities.CreateInstance<NoticeKeys>(all.Server.Services);
        Assert.Equal(key, started.Public);
        var kept = await File.ReadAllBytesAsync(Path.Combine(all.Server.Database.Folder, "keys", "notices.sealed"));
        using var pair = System.Security.Cryptography.ECDsa.Create();
        Assert.ThrowsAny<System.Security.Cryptography.CryptographicException>(() => pair.ImportPkcs8PrivateKey(kept, out _));
    }
}
