using System.Buffers.Text;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Coops;

namespace CoopLessons.Web.Tests.Notices;

/// <summary>Told as it is written, at any hour, and without the writer's own words, in which a child may be named.</summary>
public sealed class A_word_of_a_coop_on_a_lock_screen
{
    [Fact]
    public async Task Says_at_six_in_the_morning_that_there_is_no_meeting_and_says_it_once()
    {
        await using var all = await NoticeServer.StartAsync(3, 13, 6, 0);
        var coop = await CoopOfTest.FoundAsync(all.Server);
        var birch = await coop.JoinAsync("Birch");
        await TurnOnAsync(all, birch);
        var meeting = Guid.CreateVersion7();
        await coop.WithDbAsync(async db =>
        {
            db.CoopMeetings.Add(new CoopMeeting(coop.Id, meeting, TestServer.Today.AddDays(1), "the mill house"));
            await db.SaveChangesAsync();
        });
        using var off = await coop.Leader.Guardian.SubmitAsync(await coop.Leader.Guardian.GetAsync($"{coop.Home}/days/{meeting}/off"), new() { ["Input.Why"] = "snow", ["Input.Words"] = "Wren has the key." });
        var pushed = Assert.Single(await all.AfterARoundAsync());
        Assert.Equal(("Millrace", "No meeting on Friday, 13 March.", off.Headers.Location!.OriginalString), all.Read(pushed));
        Assert.Equal("high", pushed.Headers["Urgency"]);
        all.ItIs(3, 13, 6, 5);
        Assert.Empty(await all.AfterARoundAsync());
    }

    [Fact]
    public async Task Is_not_told_to_a_family_that_was_taken_out()
    {
        await using var all = await NoticeServer.StartAsync();
        var coop = await CoopOfTest.FoundAsync(all.Server);
        var birch = await coop.JoinAsync("Birch");
        await TurnOnAsync(all, birch);
        using var told = await coop.Leader.Guardian.SubmitAsync(await coop.Leader.Guardian.GetAsync(coop.Home + "/news"), new() { ["Input.Title"] = "Wren, bring boots" });
        using var left = await birch.Guardian.PostAsync(coop.Home + "?handler=Leave", [new("__RequestVerificationToken", await birch.Guardian.TokenAsync())]);
        Assert.Empty(await all.AfterARoundAsync());
    }

    private static async Task TurnOnAsync(NoticeServer all, TestFamily family)
    {
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/person/notices"), new()
        {
            ["CoopNews"] = "true",
            ["Endpoint"] = $"{all.Push.Address}/push/one",
            ["Key"] = Base64Url.EncodeToString(all.Browser.Key),
            ["Secret"] = Base64Url.EncodeToString(all.Browser.Secret),
        });
        Assert.Equal(System.Net.HttpStatusCode.Redirect, answer.StatusCode);
    }
}
