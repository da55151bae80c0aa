using System.Net;
using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Families;

[Collection(SharedServer.Name)]
public sealed class ThePeople(TestServer server)
{
    private static async Task<Visitor> SecondGuardianAsync(TestFamily family)
    {
        var person = await family.Server.PersonAsync("Olive");
        await family.WithDbAsync(async db =>
        {
            db.Memberships.Add(new Membership(person.Id, person.Name, Role.Guardian, TestServer.Start.UtcDateTime));
            await db.SaveChangesAsync();
        });
        return await family.Server.SignInAsync(person.Email!);
    }

    private static async Task<string> LinkAsync(Visitor guardian)
    {
        var answer = await guardian.SubmitAsync(await guardian.GetAsync("/family/people"), new() { ["Input.Name"] = "Basil", ["Input.Role"] = "Guardian" }, within: "#invite-name");
        return new Uri((await Visitor.ParseAsync(answer)).QuerySelector("#link")!.GetAttribute("value")!).AbsolutePath;
    }

    [Fact]
    public async Task Are_invited_by_a_link_that_is_shown_once()
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync("/family/people");
        var answer = await family.Guardian.SubmitAsync(page, new() { ["Input.Name"] = "Grandmother" }, within: "#invite-name");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var shown = await Visitor.ParseAsync(answer);
        var link = new Uri(shown.QuerySelector("#link")!.GetAttribute("value")!);
        var joining = await server.Visitor().GetAsync(link.AbsolutePath);
        Assert.Equal("Grandmother", joining.QuerySelector("#Input_Name")!.GetAttribute("value"));
        var secret = link.Segments[^1];
        Assert.DoesNotContain(secret, (await family.Guardian.GetAsync("/family/people")).Body!.InnerHtml, StringComparison.Ordinal);
        Assert.NotEqual(secret, await family.FromDbAsync(db => db.Invitations.Select(i => i.SecretHash).SingleAsync()));

        // The same form once more makes no second link.
        Assert.Equal(HttpStatusCode.Redirect, (await family.Guardian.SubmitAsync(page, new() { ["Input.Name"] = "Grandmother" }, within: "#invite-name")).StatusCode);
        Assert.Equal(1, await family.FromDbAsync(db => db.Invitations.CountAsync()));
        Assert.Contains("open until 19 March 2026", (await family.Guardian.GetAsync("/family/people")).Body!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Are_invited_once_by_a_form_that_is_sent_eight_times_at_once()
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync("/family/people");
        var answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => family.Guardian.SubmitAsync(page, new() { ["Input.Name"] = "Grandmother" }, within: "#invite-name")));
        Assert.Single(answers, a => a.StatusCode == HttpStatusCode.OK);
        Assert.Equal(7, answers.Count(a => a.StatusCode == HttpStatusCode.Redirect));
        Assert.Equal(1, await family.FromDbAsync(db => db.Invitations.CountAsync()));
    }

    [Theory]
    [InlineData("Input.Name", "")]
    [InlineData("Input.Name", "sixty-one signs sixty-one signs sixty-one signs sixty-one sig")]
    [InlineData("Input.Role", "Owner")]
    [InlineData("Input.Role", "")]
    public async Task Are_not_invited_without_a_name_and_a_part(string field, string value)
    {
        var family = await server.FamilyAsync();
        var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/family/people"), new() { ["Input.Name"] = "Basil", [field] = value }, within: "#invite-name");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.NotEmpty((await Visitor.ParseAsync(answer)).QuerySelectorAll(".field-validation-error"));
        Assert.Equal(0, await family.FromDbAsync(db => db.Invitations.CountAsync()));
    }

    [Fact]
    public async Task Who_help_see_the_day_and_its_log_and_nothing_else()
    {
        var helper = await server.HelperAsync(await server.FamilyAsync());
        foreach (var path in new[] { "/family", "/family/people", "/family/subjects", "/family/learners/new", "/units", "/records", "/week" })
            Assert.Equal(HttpStatusCode.Forbidden, (await helper.OpenAsync(path)).StatusCode);
        await helper.GetAsync("/today");
        await helper.GetAsync("/log");
    }

    [Fact]
    public async Task Who_are_taken_out_are_out_with_their_next_click()
    {
        var family = await server.FamilyAsync();
        var helper = await server.HelperAsync(family);
        await helper.GetAsync("/today");
        var page = await family.Guardian.GetAsync("/family/people");
        Assert.Equal(HttpStatusCode.Redirect, (await family.Guardian.SubmitAsync(page, within: "form[action*='handler=TakeOut'] button")).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await helper.OpenAsync("/today")).StatusCode);
        Assert.Equal("/person/found-family", (await helper.OpenAsync("/")).Headers.Location!.OriginalString);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Who_are_taken_out_or_leave_take_the_links_they_made_with_them(bool bySelf)
    {
        var family = await server.FamilyAsync();
        var olive = await SecondGuardianAsync(family);
        var oliveId = await family.FromDbAsync(db => db.Memberships.Where(m => m.Name == "Olive").Select(m => m.PersonId).SingleAsync());
        var (hers, kept) = (await LinkAsync(olive), await LinkAsync(family.Guardian));
        var who = bySelf ? olive : family.Guardian;
        var answer = await who.SubmitAsync(await who.GetAsync("/family/people"), new() { ["personId"] = oliveId.ToString() }, within: "form[action*='handler=TakeOut'] button");
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal(HttpStatusCode.Gone, (await server.Visitor().OpenAsync(hers)).StatusCode);
        await server.Visitor().GetAsync(kept);
    }

    [Fact]
    public async Task Who_are_taken_out_while_they_make_a_link_leave_none_behind()
    {
        var family = await server.FamilyAsync();
        var olive = await SecondGuardianAsync(family);
        var oliveId = await family.FromDbAsync(db => db.Memberships.Where(m => m.Name == "Olive").Select(m => m.PersonId).SingleAsync());
        var pages = (Mine: await family.Guardian.GetAsync("/family/people"), Hers: await olive.GetAsync("/family/people"));
        var answers = await Task.WhenAll(
            family.Guardian.SubmitAsync(pages.Mine, new() { ["personId"] = oliveId.ToString() }, within: "form[action*='handler=TakeOut'] button"),
            olive.SubmitAsync(pages.Hers, new() { ["Input.Name"] = "Basil" }, within: "#invite-name"));
        Assert.All(answers, a => Assert.NotEqual(HttpStatusCode.InternalServerError, a.StatusCode));
        var isOut = !await family.FromDbAsync(db => db.Memberships.AnyAsync(m => m.PersonId == oliveId));
        var open = await family.FromDbAsync(db => db.Invitations.CountAsync(i => i.WithdrawnAt == null));
        Assert.False(isOut && open > 0, $"Out: {isOut}, open links: {open}.");
    }

    [Fact]
    public async Task Keep_their_last_guardian()
    {
        var family = await server.FamilyAsync();
        await server.HelperAsync(family);
        var page = await family.Guardian.GetAsync("/family/people");
        var answer = await family.Guardian.SubmitAsync(page, new() { ["personId"] = family.GuardianId.ToString() }, within: "form[action*='handler=TakeOut'] button");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("last guardian", (await Visitor.ParseAsync(answer)).QuerySelector(".validation-summary-errors")!.TextContent, StringComparison.Ordinal);
        await family.Guardian.GetAsync("/family");
    }

    [Fact]
    public async Task Keep_a_guardian_when_two_take_each_other_out_at_the_same_moment()
    {
        var family = await server.FamilyAsync();
        var olive = await SecondGuardianAsync(family);
        var oliveId = await family.FromDbAsync(db => db.Memberships.Where(m => m.Name == "Olive").Select(m => m.PersonId).SingleAsync());
        var pages = (await family.Guardian.GetAsync("/family/people"), await olive.GetAsync("/family/people"));
        var answers = await Task.WhenAll(
            family.Guardian.SubmitAsync(pages.Item1, new() { ["personId"] = oliveId.ToString() }, within: "form[action*='handler=TakeOut'] button"),
            olive.SubmitAsync(pages.Item2, new() { ["personId"] = family.GuardianId.ToString() }, within: "form[action*='handler=TakeOut'] button"));
        Assert.Single(answers, a => a.StatusCode == HttpStatusCode.Redirect);
        Assert.Equal(1, await family.FromDbAsync(db => db.Memberships.CountAsync(m => m.Role == Role.Guardian)));
    }

    [Fact]
    public async Task Of_another_family_are_not_there()
    {
        var family = await server.FamilyAsync();
        var other = await server.FamilyAsync("Birch");
        var invitation = Guid.CreateVersion7();
        await other.WithDbAsync(async db =>
        {
            db.Invitations.Add(new Invitation(invitation, Invitation.NewSecret(), "Basil", Role.Helper, other.GuardianId, "Iris", TestServer.Start.UtcDateTime));
            await db.SaveChangesAsync();
        });
        var token = await family.Guardian.TokenAsync("/family/people");
        Assert.Equal(HttpStatusCode.NotFound, (await family.Guardian.PostAsync("/family/people?handler=Withdraw", [new("id", invitation.ToString()), new("__RequestVerificationToken", token)])).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await family.Guardian.PostAsync("/family/people?handler=TakeOut", [new("personId", other.GuardianId.ToString()), new("__RequestVerificationToken", token)])).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await family.Guardian.PostAsync("/family/people?handler=TakeOut", [new("personId", "nonsense"), new("__RequestVerificationToken", token)])).StatusCode);
    }
}
