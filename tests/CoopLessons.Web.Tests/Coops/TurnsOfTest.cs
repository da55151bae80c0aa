using CoopLessons.Data;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Data.Coops.Turns;
using CoopLessons.Web.Planning;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace CoopLessons.Web.Tests.Coops;

/// <summary>A co-op with adults, meetings and roles, whose turns a test asks for as its leader does.</summary>
internal sealed class TurnsOfTest(CoopOfTest coop, IReadOnlyList<TestFamily> families)
{
    private static readonly string[][] Names = [["Iris", "Basil"], ["Olive", "Linden"], ["Rowan", "Hazel"], ["Laurel", "Heath"]];
    private static readonly string[] FamilyNames = ["Alder", "Birch", "Cedar", "Dogwood"];

    public CoopOfTest Coop => coop;
    public IReadOnlyList<TestFamily> Families => families;
    public string Turns => coop.Home + "/turns";
    public List<CoopMeeting> Meetings { get; } = [];
    public Dictionary<string, Guid> Adults { get; } = [];
    public static DateOnly First => TestServer.Today.AddDays(7);

    private LayoutLine Line => coop.Server.Services.GetRequiredService<LayoutLine>();

    public static async Task<TurnsOfTest> MakeAsync(TestServer server, int count, int meetings)
    {
        var coop = await CoopOfTest.FoundAsync(server);
        List<TestFamily> families = [coop.Leader];
        for (var i = 1; i < count; i++)
            families.Add(await coop.JoinAsync(FamilyNames[i]));
        var made = new TurnsOfTest(coop, families);
        for (var i = 0; i < count; i++)
        {
            var family = families[i];
            var names = Names[i];
            await made.AsAsync(family, db =>
            {
                foreach (var name in names)
                    db.CoopAdults.Add(new CoopAdult(coop.Id, family.Id, made.Adults[name] = Guid.CreateVersion7(), name));
            });
        }

        await made.AsAsync(coop.Leader, db =>
        {
            for (var i = 0; i < meetings; i++)
                made.Meetings.Add(new CoopMeeting(coop.Id, Guid.CreateVersion7(), First.AddDays(7 * i), "the mill house"));
            db.CoopMeetings.AddRange(made.Meetings);
        });
        return made;
    }

    public Task AsAsync(TestFamily family, Action<AppDb> work) => family.WithDbAsync(async db =>
    {
        db.Current.Enter(coop.Id);
        work(db);
        await db.SaveChangesAsync();
    });

    public Task<T> ReadAsync<T>(Func<AppDb, Task<T>> read) => coop.Server.FromDbAsync(coop.Leader.Id, db =>
    {
        db.Current.Enter(coop.Id);
        return read(db);
    });

    public Task<List<CoopTurn>> KeptAsync() => ReadAsync(db => db.CoopTurns.AsNoTracking().Where(t => t.CoopId == coop.Id).ToListAsync());

    public async Task AddRoleAsync(string name, Guid? room = null)
    {
        using var added = await coop.Leader.Guardian.SubmitAsync(await coop.Leader.Guardian.GetAsync(Turns + "/roles"), new() { ["Input.Name"] = name, ["Input.RoomId"] = room?.ToString() });
        Assert.Equal(System.Net.HttpStatusCode.Redirect, added.StatusCode);
    }

    /// <summary>The page with the proposal.</summary>
    public async Task<AngleSharp.Html.Dom.IHtmlDocument> AskAsync()
    {
        var fill = new Dictionary<string, string?> { ["Input.First"] = $"{First:yyyy-MM-dd}", ["Input.Last"] = $"{Meetings[^1].On:yyyy-MM-dd}", ["longer"] = "true" };
        using var asked = await coop.Leader.Guardian.SubmitAsync(await coop.Leader.Guardian.GetAsync(Turns + "/new"), fill, "form[action*='Ask'] input");
        Assert.Equal(System.Net.HttpStatusCode.Redirect, asked.StatusCode);
        return await OverAsync(CoopWork.RotaKey, Turns + "/new");
    }

    public async Task<AngleSharp.Html.Dom.IHtmlDocument> HealAsync(CoopMeeting meeting)
    {
        var address = $"{Turns}/meeting/{meeting.Id}";
        using var asked = await coop.Leader.Guardian.SubmitAsync(await coop.Leader.Guardian.GetAsync(address), new() { ["longer"] = "true" }, "form[action*='Ask'] button");
        Assert.Equal(System.Net.HttpStatusCode.Redirect, asked.StatusCode);
        return await OverAsync(CoopWork.HealingKey(meeting.Id), address);
    }

    public async Task TakeAsync(AngleSharp.Html.Dom.IHtmlDocument proposal)
    {
        using var taken = await coop.Leader.Guardian.SubmitAsync(proposal, within: "form[action*='Take'] button");
        Assert.Equal(System.Net.HttpStatusCode.Redirect, taken.StatusCode);
    }

    private async Task<AngleSharp.Html.Dom.IHtmlDocument> OverAsync(string key, string address)
    {
        await Line.WaitAsync(coop.Id, Line.Newest(coop.Id, key)!.Id, CancellationToken.None);
        return await coop.Leader.Guardian.GetAsync(address);
    }
}
