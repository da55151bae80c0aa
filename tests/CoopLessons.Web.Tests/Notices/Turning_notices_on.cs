using System.Buffers.Text;
using System.Net;
using CoopLessons.Web.Hosting;
using CoopLessons.Web.Notices;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;

namespace CoopLessons.Web.Tests.Notices;

public sealed class Turning_notices_on : IClassFixture<HostWithNotices>
{
    private readonly NoticeServer _all;

    public Turning_notices_on(HostWithNotices host) => _all = host.All;

    [Fact]
    public async Task Is_not_offered_where_the_host_has_not_turned_them_on()
    {
        await using var server = new OwnServer();
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync("/person/notices");
        Assert.Contains("Your host has not turned this on.", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Null(page.QuerySelector("main form"));
        using var answer = await family.Guardian.PostAsync("/person/notices?handler=Choose", [new("Waits", "true"), new("__RequestVerificationToken", await family.Guardian.TokenAsync("/person"))]);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        // No key is made before anybody needs one.
        Assert.False(File.Exists(Path.Combine(server.Database.Folder, "keys", "notices.sealed")));
    }

    [Fact]
    public async Task Without_a_device_keeps_the_choice_and_says_what_is_missing()
    {
        var family = await _all.Server.FamilyAsync();
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/person/notices"), new() { ["Waits"] = "true" });
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var page = await family.Guardian.GetAsync("/person/notices");
        Assert.Contains("No device takes notices yet", page.QuerySelector("#said")!.TextContent, StringComparison.Ordinal);
        Assert.True(page.QuerySelector("input[name=Waits]")!.HasAttribute("checked"));
        Assert.False(page.QuerySelector("input[name=LawDates]")!.HasAttribute("checked"));
    }

    [Fact]
    public async Task Sent_twice_is_one_device_and_it_can_be_taken_out()
    {
        var family = await _all.Server.FamilyAsync();
        await _all.TurnOnAsync(family.Guardian);
        await _all.TurnOnAsync(family.Guardian);
        Assert.Equal(1, await _all.Server.FromDbAsync(null, db => db.NoticeDevices.CountAsync(d => d.PersonId == family.GuardianId)));
        using var removed = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/person/notices"), within: "form[action$='handler=Remove']");
        Assert.Equal(0, await _all.Server.FromDbAsync(null, db => db.NoticeDevices.CountAsync(d => d.PersonId == family.GuardianId)));
    }

    [Fact]
    public async Task A_browser_shows_the_notices_of_whoever_asked_last()
    {
        var (first, second) = (await _all.Server.FamilyAsync("Alder"), await _all.Server.FamilyAsync("Birch"));
        await _all.TurnOnAsync(first.Guardian, device: "shared");
        await _all.TurnOnAsync(second.Guardian, device: "shared");
        Assert.Equal(second.GuardianId, await _all.Server.FromDbAsync(null, db => db.NoticeDevices.Where(d => d.Endpoint.EndsWith("/shared")).Select(d => d.PersonId).SingleAsync()));
    }

    [Theory]
    [InlineData("https://push.apple.com.millrace.example/x")]
    [InlineData("https://millrace.example/x")]
    [InlineData("http://updates.push.services.mozilla.com/x")]
    [InlineData("not an address")]
    public async Task An_address_that_is_no_push_service_s_is_refused_beside_the_switches(string endpoint)
    {
        var family = await _all.Server.FamilyAsync();
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/person/notices"), new()
        {
            ["Waits"] = "true",
            ["Endpoint"] = endpoint,
            ["Key"] = Base64Url.EncodeToString(_all.Browser.Key),
            ["Secret"] = Base64Url.EncodeToString(_all.Browser.Secret),
        });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("does not send to your browser", (await Visitor.ParseAsync(answer)).QuerySelector(".fault")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(0, await _all.Server.FromDbAsync(null, db => db.NoticeDevices.CountAsync(d => d.PersonId == family.GuardianId)));
    }

    [Theory]
    [InlineData("", "AAAAAAAAAAAAAAAAAAAAAA")]
    [InlineData("BAAA", "AAAAAAAAAAAAAAAAAAAAAA")]
    [InlineData("own", "AAAA")]
    [InlineData("own", "%%%")]
    public async Task Keys_that_are_none_are_refused(string key, string secret)
    {
        var family = await _all.Server.FamilyAsync();
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/person/notices"), new()
        {
            ["Endpoint"] = $"{_all.Push.Address}/push",
            ["Key"] = key == "own" ? Base64Url.EncodeToString(_all.Browser.Key) : key,
            ["Secret"] = secret,
        });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
    }
}

/// <summary>Where a server sends, and where it never does.</summary>
public sealed class Addresses_of_notices
{
    [Theory]
    [InlineData("https://fcm.googleapis.com/fcm/send/abc", true)]
    [InlineData("https://updates.push.services.mozilla.com/wpush/v2/abc", true)]
    [InlineData("https://web.push.apple.com/abc", true)]
    [InlineData("https://wns2-par02p.notify.windows.com/w/?token=abc", true)]
    [InlineData("http://fcm.googleapis.com/fcm/send/abc", false)]
    [InlineData("https://fcm.googleapis.com:8443/abc", false)]
    [InlineData("https://someone@fcm.googleapis.com/abc", false)]
    [InlineData("https://notfcm.googleapis.com/abc", false)]
    [InlineData("https://fcm.googleapis.com.millrace.example/abc", false)]
    [InlineData("https://127.0.0.1/abc", false)]
    [InlineData("https://localhost/abc", false)]
    [InlineData("https://[::1]/abc", false)]
    [InlineData("https://10.0.0.1/abc", false)]
    [InlineData("file:///etc/passwd", false)]
    public void Are_push_services_on_the_host_s_list(string endpoint, bool allowed) =>
        Assert.Equal(allowed, new NoticeAddresses(new ServerSettings()).Allows(endpoint, out _));

    [Theory]
    [InlineData("9.9.9.9", true)]
    [InlineData("2606:4700::1111", true)]
    [InlineData("127.0.0.1", false)]
    [InlineData("10.1.2.3", false)]
    [InlineData("172.31.0.1", false)]
    [InlineData("172.32.0.1", true)]
    [InlineData("192.168.0.1", false)]
    [InlineData("169.254.169.254", false)]
    [InlineData("100.64.0.1", false)]
    [InlineData("0.0.0.0", false)]
    [InlineData("224.0.0.1", false)]
    [InlineData("::1", false)]
    [InlineData("fe80::1", false)]
    [InlineData("fd00::1", false)]
    [InlineData("::ffff:10.0.0.1", false)]
    [InlineData("::ffff:9.9.9.9", true)]
    [InlineData("2002:a00:1::1", false)]
    [InlineData("64:ff9b::a00:1", false)]
    public void A_connection_goes_to_the_open_network_alone(string address, bool allowed) =>
        Assert.Equal(allowed, new NoticeAddresses(new ServerSettings()).Allows(IPAddress.Parse(address)));

    [Fact]
    public void A_setting_that_is_neither_on_nor_off_stops_the_start() =>
        Assert.Throws<SettingUnfitException>(() => ServerSettings.From(new ConfigurationBuilder().AddInMemoryCollection([new("CoopLessons:Notices", "perhaps")]).Build()));
}
