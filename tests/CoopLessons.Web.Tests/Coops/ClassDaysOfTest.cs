using System.Net;
using AngleSharp.Html.Dom;
using CoopLessons.Core.Families;
using CoopLessons.Data.Coops;
using CoopLessons.Data.Families;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Coops;

/// <summary>A co-op with a period, rooms and families, whose classes are made by the pages themselves.</summary>
internal sealed record ClassDaysOfTest(CoopOfTest Coop, TestFamily Alder, TestFamily Birch, TestFamily Cedar)
{
    public static readonly DateOnly Thursday = new(2026, 3, 19);

    public string Home => Coop.Home;

    public static async Task<ClassDaysOfTest> MakeAsync(TestServer server)
    {
        var coop = await CoopOfTest.FoundAsync(server);
        var days = new ClassDaysOfTest(coop, coop.Leader, await coop.JoinAsync("Birch"), await coop.JoinAsync("Cedar"));
        await days.SendAsync(coop.Leader, "/rooms", new() { ["Period.From"] = "10:00", ["Period.Until"] = "10:50" }, "#new-from");
        foreach (var room in new[] { "the kitchen", "the barn" })
            await days.SendAsync(coop.Leader, "/rooms", new() { ["Room.Name"] = room }, "#new-room");
        await days.SendAsync(coop.Leader, "/days", new() { ["Input.On"] = "2026-03-19", ["Input.Until"] = "2026-04-02", ["Input.Where"] = "the mill house" });
        return days;
    }

    /// <summary>Sends a form that must be taken, and says where it led.</summary>
    public async Task<string> SendAsync(TestFamily family, string page, Dictionary<string, string?> fill, string? within = null, IEnumerable<KeyValuePair<string, string>>? more = null)
    {
        using var answer = await TryAsync(family, page, fill, within, more);
        Assert.True(answer.StatusCode == HttpStatusCode.Redirect, $"{page} answered {(int)answer.StatusCode}: {await WordsAsync(answer)}");
        return answer.Headers.Location!.OriginalString;
    }

    public async Task<HttpResponseMessage> TryAsync(TestFamily family, string page, Dictionary<string, string?> fill, string? within = null, IEnumerable<KeyValuePair<string, string>>? more = null) =>
        await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(Home + page), fill, within, more: more);

    public static async Task<string> WordsAsync(HttpResponseMessage answer) => Words(await Visitor.ParseAsync(answer));

    public async Task<string> ReadAsync(TestFamily family, string page) => Words(await family.Guardian.GetAsync(Home + page));

    public static string Words(IHtmlDocument page) =>
        string.Join(' ', (page.QuerySelector("main")?.TextContent ?? "").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).Replace(" ,", ",", StringComparison.Ordinal).Replace(" .", ".", StringComparison.Ordinal);

    /// <summary>Names an adult to the co-op.</summary>
    public async Task AdultAsync(TestFamily family, string name, TestFamily? livesWith = null) =>
        await SendAsync(family, "/adults", new() { ["Input.Name"] = name, ["Input.LivesWith"] = livesWith?.Id.ToString() ?? "" }, "#new-name");

    public async Task<Guid> ChildAsync(TestFamily family, string name, DateOnly born, params Allergen[] allergies)
    {
        var id = Guid.CreateVersion7();
        await family.WithDbAsync(async db =>
        {
            db.Current.Enter(Coop.Id);
            var learner = new Learner(id, name, born, 0);
            learner.Describe(name, born, [.. allergies], "");
            db.Learners.Add(learner);
            var shown = new ShownLearner(Coop.Id, family.Id, id);
            shown.Show(learner, age: true, allergies: true, TestServer.Today);
            db.ShownLearners.Add(shown);
            await db.SaveChangesAsync();
        });
        return id;
    }

    /// <summary>The fields of a class, with its adults by their names on the form.</summary>
    public async Task<HttpResponseMessage> TryClassAsync(string title, string room, Dictionary<string, string> parts, Dictionary<string, string?>? more = null, string page = "/classes/new", IEnumerable<KeyValuePair<string, string>>? holds = null)
    {
        var form = await Alder.Guardian.GetAsync(Home + page);
        var fill = new Dictionary<string, string?>
        {
            ["Input.Title"] = title,
            ["Input.FromAge"] = "6",
            ["Input.ToAge"] = "9",
            ["Input.Size"] = "6",
            ["Input.First"] = "2026-03-12",
            ["Input.Last"] = "2026-05-28",
            ["Input.PeriodId"] = Option(form, "#Input_PeriodId", "10:00–10:50"),
            ["Input.RoomId"] = Option(form, "#Input_RoomId", room),
        };
        foreach (var (name, part) in parts)
        {
            var label = form.QuerySelectorAll("label[for^=adult-]").Single(l => l.TextContent == name);
            fill[form.GetElementById(label.GetAttribute("for")!)!.GetAttribute("name")!] = part;
        }

        foreach (var (name, value) in more ?? [])
            fill[name] = value;
        return await Alder.Guardian.SubmitAsync(form, fill, more: holds);
    }

    public async Task<string> ClassAsync(string title, string room, Dictionary<string, string> parts, Dictionary<string, string?>? more = null, IEnumerable<KeyValuePair<string, string>>? holds = null)
    {
        using var answer = await TryClassAsync(title, room, parts, more, holds: holds);
        Assert.True(answer.StatusCode == HttpStatusCode.Redirect, await WordsAsync(answer));
        return answer.Headers.Location!.OriginalString[Home.Length..];
    }

    public async Task<HttpResponseMessage> TrySignUpAsync(TestFamily family, string of, params Guid[] children) =>
        await TryAsync(family, of, [], "#sign-up form", children.Select(c => new KeyValuePair<string, string>("Input.Children", c.ToString())));

    public async Task SignUpAsync(TestFamily family, string of, params Guid[] children)
    {
        using var answer = await TrySignUpAsync(family, of, children);
        Assert.True(answer.StatusCode == HttpStatusCode.Redirect, await WordsAsync(answer));
    }

    /// <summary>The page of the first day ahead.</summary>
    public async Task<string> DayAsync()
    {
        var list = await Alder.Guardian.GetAsync(Home + "/days");
        return list.QuerySelector("main .rows a.row-link")!.GetAttribute("href")![Home.Length..];
    }

    private static string Option(IHtmlDocument form, string select, string text) =>
        form.QuerySelectorAll(select + " option").Single(o => o.TextContent == text).GetAttribute("value")!;
}
