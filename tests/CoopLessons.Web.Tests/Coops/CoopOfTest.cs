using CoopLessons.Data.Coops;
using CoopLessons.Data.Families;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Coops;

/// <summary>The Millrace co-op as a test needs it, founded and joined by the pages themselves.</summary>
internal sealed record CoopOfTest(TestServer Server, Guid Id, TestFamily Leader)
{
    public string Home => $"/coop/{Id}";

    public static async Task<CoopOfTest> FoundAsync(TestServer server, string leader = "Alder")
    {
        var family = await server.FamilyAsync(leader);
        var page = await family.Guardian.GetAsync("/coop/found");
        using var founded = await family.Guardian.SubmitAsync(page, new() { ["Input.Name"] = "Millrace", ["Input.GoBy"] = leader });
        return new(server, Guid.Parse(founded.Headers.Location!.OriginalString["/coop/".Length..]), family);
    }

    /// <summary>A link as its page shows it once: without the host.</summary>
    public async Task<string> LinkAsync(string forWhom)
    {
        using var answer = await Leader.Guardian.SubmitAsync(await Leader.Guardian.GetAsync(Home + "/families"), new() { ["Input.Name"] = forWhom }, "#invite-name");
        var page = await Visitor.ParseAsync(answer);
        return new Uri(page.GetElementById("link")!.GetAttribute("value")!).AbsolutePath;
    }

    public async Task<TestFamily> JoinAsync(string name)
    {
        var family = await Server.FamilyAsync(name);
        var link = await LinkAsync(name);
        using var joined = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(link));
        Assert.Equal(Home, joined.Headers.Location!.OriginalString);
        return family;
    }

    public static async Task<Guid> ChildAsync(TestFamily family, string name, DateOnly born)
    {
        var id = Guid.CreateVersion7();
        await family.WithDbAsync(async db =>
        {
            var learner = new Learner(id, name, born, 0);
            learner.Describe(name, born, [CoopLessons.Core.Families.Allergen.Wheat], "kiwi");
            db.Learners.Add(learner);
            await db.SaveChangesAsync();
        });
        return id;
    }

    public async Task PartAsync(TestFamily family, CoopPart part)
    {
        using var said = await Leader.Guardian.PostAsync(Home + "/families?handler=Part", [new("memberId", family.Id.ToString()), new("part", part.ToString()), new("__RequestVerificationToken", await Leader.Guardian.TokenAsync())]);
        Assert.Equal(System.Net.HttpStatusCode.Redirect, said.StatusCode);
    }

    /// <summary>Work on the database as the leading family, which sees the co-op.</summary>
    public Task WithDbAsync(Func<CoopLessons.Data.AppDb, Task> work) => Server.WithDbAsync(Leader.Id, db =>
    {
        db.Current.Enter(Id);
        return work(db);
    });

    public Task<List<CoopFamily>> PartsAsync() => Server.FromDbAsync(Leader.Id, db =>
    {
        db.Current.Enter(Id);
        return db.CoopFamilies.OrderBy(f => f.Name).ToListAsync();
    });
}
