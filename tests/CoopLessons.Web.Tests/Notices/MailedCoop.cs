using CoopLessons.Data.Notices;
using CoopLessons.Web.Notices;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Coops;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace CoopLessons.Web.Tests.Notices;

/// <summary>A co-op of Alder, who leads, and Birch, who wants notices by mail, on a server with a mail server.</summary>
internal sealed class MailedCoop : IAsyncDisposable
{
    public const string Url = "http://lessons.millrace.example";

    private MailedCoop(LoopbackMail mail)
    {
        Mail = mail;
        Server = new OwnServer(Settings);
    }

    public LoopbackMail Mail { get; }
    public OwnServer Server { get; }
    public CoopOfTest Coop { get; private set; } = null!;
    public TestFamily Birch { get; private set; } = null!;

    public KeyValuePair<string, string>[] Settings =>
    [
        new("CoopLessons:MailHost", "127.0.0.1"), new("CoopLessons:MailPort", Mail.Port.ToString(System.Globalization.CultureInfo.InvariantCulture)), new("CoopLessons:MailTls", "off"),
        new("CoopLessons:MailFrom", "Millrace <co-op@lessons.millrace.example>"), new("CoopLessons:PublicUrl", Url),
    ];

    public static async Task<MailedCoop> MakeAsync(bool proven = true)
    {
        var all = new MailedCoop(await LoopbackMail.StartAsync());
        all.Coop = await CoopOfTest.FoundAsync(all.Server);
        all.Birch = await all.Coop.JoinAsync("Birch");
        await all.ChooseAsync(true);
        if (proven)
            await all.Server.WithDbAsync(null, db => db.Users.Where(p => p.Id == all.Birch.GuardianId).ExecuteUpdateAsync(s => s.SetProperty(p => p.EmailConfirmed, true)));
        return all;
    }

    public async Task ChooseAsync(bool byMail)
    {
        using var chosen = await Birch.Guardian.SubmitAsync(await Birch.Guardian.GetAsync("/person/notices"), new() { ["ByMail"] = byMail ? "true" : null }, "form[action*='handler=Mail']");
        Assert.Equal(System.Net.HttpStatusCode.Redirect, chosen.StatusCode);
    }

    public async Task TellAsync(string title, string text = "")
    {
        using var told = await Coop.Leader.Guardian.SubmitAsync(await Coop.Leader.Guardian.GetAsync(Coop.Home + "/news"), new() { ["Input.Title"] = title, ["Input.Text"] = text });
        Assert.Equal(System.Net.HttpStatusCode.Redirect, told.StatusCode);
    }

    public async Task<IReadOnlyList<Mailed>> AfterARoundAsync()
    {
        await Server.Services.GetRequiredService<MailRound>().RunAsync(default);
        return Mail.Came();
    }

    public Task<List<MailToSend>> WrittenDownAsync() => Server.FromDbAsync(null, db => db.MailToSend.AsNoTracking().OrderBy(m => m.MadeAt).ToListAsync());

    public Task<string> AddressAsync() => Server.FromDbAsync(null, db => db.Users.Where(p => p.Id == Birch.GuardianId).Select(p => p.Email!).SingleAsync());

    public async ValueTask DisposeAsync()
    {
        await Server.DisposeAsync();
        await Mail.DisposeAsync();
    }
}
