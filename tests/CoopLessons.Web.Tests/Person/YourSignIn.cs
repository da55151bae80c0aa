using System.Net;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.People;

[Collection(SharedServer.Name)]
public sealed class YourSignIn(TestServer server)
{
    [Fact]
    public async Task Ends_on_the_server_so_that_a_copied_cookie_opens_nothing()
    {
        var family = await server.FamilyAsync();
        var copy = server.Visitor();
        foreach (var (name, value) in family.Guardian.Cookies)
            copy.SetCookie(name, value);
        await copy.GetAsync("/person");
        var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/sign-out"), within: "main form");
        Assert.Equal("/sign-in", answer.Headers.Location!.OriginalString);
        Assert.StartsWith("http://localhost/sign-in", (await copy.OpenAsync("/person")).Headers.Location!.OriginalString, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, (await family.Guardian.OpenAsync("/person")).StatusCode);
    }

    [Fact]
    public async Task Is_ended_on_another_device_by_its_owner_alone()
    {
        var person = await server.PersonAsync("Iris");
        var here = await server.SignInAsync(person.Email!);
        var there = await server.SignInAsync(person.Email!);
        var stranger = await server.FamilyAsync();
        var page = await here.GetAsync("/person");
        Assert.Single(page.QuerySelectorAll(".tag"), t => t.TextContent == "this device");
        var id = page.QuerySelector("input[name=id]")!.GetAttribute("value")!;
        var foreign = await stranger.Guardian.PostAsync("/person?handler=End", [new("id", id), new("__RequestVerificationToken", await stranger.Guardian.TokenAsync("/person"))]);
        Assert.Equal(HttpStatusCode.NotFound, foreign.StatusCode);
        await there.GetAsync("/person");
        Assert.Equal(HttpStatusCode.Redirect, (await here.SubmitAsync(page, within: "input[name=id]")).StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await there.OpenAsync("/person")).StatusCode);
        await here.GetAsync("/person");
    }

    [Fact]
    public async Task Is_ended_on_all_other_devices_at_once()
    {
        var person = await server.PersonAsync("Iris");
        var here = await server.SignInAsync(person.Email!);
        var others = new[] { await server.SignInAsync(person.Email!), await server.SignInAsync(person.Email!) };
        await here.SubmitAsync(await here.GetAsync("/person"), within: "form[action*='handler=EndOthers']");
        await here.GetAsync("/person");
        foreach (var other in others)
            Assert.Equal(HttpStatusCode.Redirect, (await other.OpenAsync("/person")).StatusCode);
    }

    [Fact]
    public async Task Takes_a_new_password_against_the_old_one_and_ends_every_device()
    {
        const string next = "barley kettle orchard fourteen";
        var person = await server.PersonAsync("Iris");
        var here = await server.SignInAsync(person.Email!);
        var there = await server.SignInAsync(person.Email!);
        var page = await here.GetAsync("/person/password");
        foreach (var (old, fresh, fault) in new[] { ("wrong", next, "old"), ("", next, "old"), (TestServer.Password, "short", "new"), (TestServer.Password, new string('x', 201), "new") })
        {
            var refused = await here.SubmitAsync(page, new() { ["Input.Old"] = old, ["Input.New"] = fresh });
            Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
            Assert.NotEmpty((await Visitor.ParseAsync(refused)).QuerySelector($"#{fault}-fault")!.TextContent);
        }

        var copied = server.Visitor();
        foreach (var (name, value) in here.Cookies)
            copied.SetCookie(name, value);
        var changed = await here.SubmitAsync(page, new() { ["Input.Old"] = TestServer.Password, ["Input.New"] = next });
        Assert.Equal("/sign-in", changed.Headers.Location!.OriginalString);
        Assert.Equal(HttpStatusCode.Redirect, (await copied.OpenAsync("/person")).StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await there.OpenAsync("/person")).StatusCode);
        await server.SignInAsync(person.Email!, next);
        var late = server.Visitor();
        var stale = await late.SubmitAsync(await late.GetAsync("/sign-in"), new() { ["Input.Email"] = person.Email, ["Input.Password"] = TestServer.Password });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, stale.StatusCode);
    }

    [Theory]
    [InlineData("", false)]
    [InlineData("\u202E\u200B", false)]
    [InlineData("=1+1", true)]
    [InlineData("<script>alert(1)</script>", true)]
    [InlineData("Zoë 🦉", true)]
    public async Task Carries_a_name_that_can_be_seen(string name, bool taken)
    {
        var visitor = (await server.FamilyAsync()).Guardian;
        var answer = await visitor.SubmitAsync(await visitor.GetAsync("/person"), new() { ["Input.Name"] = name }, within: "#Input_Name");
        Assert.Equal(taken ? HttpStatusCode.Redirect : HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        if (taken)
            Assert.Equal(name, (await visitor.GetAsync("/person")).QuerySelector("#Input_Name")!.GetAttribute("value"));
    }

    [Fact]
    public async Task Chooses_among_its_own_families_alone()
    {
        var alder = await server.FamilyAsync("Alder");
        var birch = await server.FamilyAsync("Birch");
        var dogwood = await server.FamilyAsync("Dogwood");
        await birch.WithDbAsync(async db =>
        {
            db.Memberships.Add(new Data.Families.Membership(alder.GuardianId, "Iris", Data.Tenancy.Role.Helper, server.Clock.GetUtcNow().UtcDateTime.AddYears(-1)));
            await db.SaveChangesAsync();
        });
        var visitor = alder.Guardian;
        Assert.Equal("Alder", (await visitor.GetAsync("/family")).QuerySelector("h1")!.TextContent);
        var page = await visitor.GetAsync("/person/choose-family");
        Assert.DoesNotContain("Dogwood", page.Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.SubmitAsync(page, new() { ["familyId"] = dogwood.Id.ToString() })).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.SubmitAsync(page, new() { ["familyId"] = "nonsense" })).StatusCode);
        server.Clock.Advance(TimeSpan.FromMilliseconds(1));
        Assert.Equal(HttpStatusCode.Redirect, (await visitor.SubmitAsync(page)).StatusCode);
        // A helper there.
        Assert.Equal(HttpStatusCode.Forbidden, (await visitor.OpenAsync("/family")).StatusCode);
    }

    [Fact]
    public async Task Founds_no_family_on_a_closed_server_that_others_use()
    {
        await server.FamilyAsync();
        var visitor = await server.SignInAsync((await server.PersonAsync("Hazel")).Email!);
        Assert.Equal("/person/found-family", (await visitor.OpenAsync("/")).Headers.Location!.OriginalString);
        var page = await visitor.GetAsync("/person/found-family");
        Assert.Null(page.QuerySelector("main form"));
        var answer = await visitor.PostAsync("/person/found-family", [new("Input.Name", "Birch"), new("__RequestVerificationToken", await visitor.TokenAsync("/person"))]);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public async Task Founds_a_family_where_the_host_lets_anybody()
    {
        using var open = new OwnServer(new KeyValuePair<string, string>("CoopLessons:SignUp", "open"));
        await open.FamilyAsync();
        var visitor = await open.SignInAsync((await open.PersonAsync("Hazel")).Email!);
        var page = await visitor.GetAsync("/person/found-family");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await visitor.SubmitAsync(page, new() { ["Input.Name"] = "" })).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await visitor.SubmitAsync(page, new() { ["Input.Name"] = "Birch", ["Input.TimeZone"] = "nowhere" })).StatusCode);
        Assert.Equal("/family", (await visitor.SubmitAsync(page, new() { ["Input.Name"] = "Birch" })).Headers.Location!.OriginalString);
        Assert.Equal("Birch", (await visitor.GetAsync("/family")).QuerySelector("h1")!.TextContent);
    }

    [Fact]
    public async Task Is_founded_anew_by_somebody_who_has_a_closed_server_to_themselves()
    {
        using var alone = new OwnServer();
        var visitor = await alone.SignInAsync((await alone.PersonAsync("Hazel")).Email!);
        Assert.Equal("/family", (await visitor.SubmitAsync(await visitor.GetAsync("/person/found-family"), new() { ["Input.Name"] = "Birch" })).Headers.Location!.OriginalString);
    }

    [Fact]
    public async Task Rests_after_many_wrong_tries_without_telling_who_is_known()
    {
        var person = await server.PersonAsync("Iris");
        await server.WithDbAsync(null, db => db.Users.Where(p => p.Id == person.Id).ExecuteUpdateAsync(s => s.SetProperty(p => p.AccessFailedCount, 19)));
        var visitor = server.Visitor();
        var page = await visitor.GetAsync("/sign-in");
        await visitor.SubmitAsync(page, new() { ["Input.Email"] = person.Email, ["Input.Password"] = "wrong" });
        var answer = await visitor.SubmitAsync(page, new() { ["Input.Email"] = person.Email, ["Input.Password"] = TestServer.Password });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains(Pages.Account.SignInModel.Refusal, (await Visitor.ParseAsync(answer)).Body!.TextContent, StringComparison.Ordinal);
    }
}
