using System.Buffers.Text;
using System.Net;
using System.Text.Json;
using CoopLessons.Web.Notices;
using CoopLessons.Web.Tests.App;
using Microsoft.Extensions.DependencyInjection;

namespace CoopLessons.Web.Tests.Notices;

/// <summary>A server whose host turned notices on, and a push service beside it.</summary>
internal sealed class NoticeServer : IAsyncDisposable
{
    private NoticeServer(PushService push) => Push = push;

    public OwnServer Server { get; } = new(new("CoopLessons:Notices", "on"), new("CoopLessons:NoticesToLoopback", "true"));
    public PushService Push { get; }
    public OpenedMessage Browser { get; } = OpenedMessage.New();

    public static async Task<NoticeServer> StartAsync() => new(await PushService.StartAsync());

    /// <summary>One that starts at a local time: a clock that is set on while it runs goes round at every half minute on the way.</summary>
    public static async Task<NoticeServer> StartAsync(int month, int day, int hour, int minute)
    {
        var all = await StartAsync();
        all.ItIs(month, day, hour, minute);
        return all;
    }

    /// <summary>Turns notices on at a person's browser, as the page's script does.</summary>
    public async Task TurnOnAsync(Visitor person, bool waits = true, bool lawDates = true, string device = "one")
    {
        using var answer = await person.SubmitAsync(await person.GetAsync("/person/notices"), new()
        {
            ["Waits"] = waits ? "true" : null,
            ["LawDates"] = lawDates ? "true" : null,
            ["Endpoint"] = $"{Push.Address}/push/{device}",
            ["Key"] = Base64Url.EncodeToString(Browser.Key),
            ["Secret"] = Base64Url.EncodeToString(Browser.Secret),
        });
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
    }

    public Task RoundAsync() => Server.Services.GetRequiredService<NoticeRound>().RunAsync(default);

    /// <summary>The server's clock at a local time of the Central zone, in daylight time as it is from 8 March 2026 on.</summary>
    public void ItIs(int month, int day, int hour, int minute) => Server.Clock.SetUtcNow(new DateTimeOffset(2026, month, day, hour, minute, 0, TimeSpan.FromHours(-5)));

    public async Task<IReadOnlyList<Pushed>> AfterARoundAsync()
    {
        await RoundAsync();
        return Push.Came();
    }

    public (string Title, string Body, string To) Read(Pushed pushed)
    {
        var told = JsonDocument.Parse(Browser.Open(pushed.Body)).RootElement;
        return (told.GetProperty("title").GetString()!, told.GetProperty("body").GetString()!, told.GetProperty("to").GetString()!);
    }

    public async ValueTask DisposeAsync()
    {
        await Server.DisposeAsync();
        await Push.DisposeAsync();
    }
}

/// <summary>One for the tests that move no clock.</summary>
public sealed class HostWithNotices : IAsyncLifetime
{
    internal NoticeServer All { get; private set; } = null!;

    public async Task InitializeAsync() => All = await NoticeServer.StartAsync();

    public async Task DisposeAsync() => await All.DisposeAsync();
}
