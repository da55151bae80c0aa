using System.Net;
using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Account;

[Collection(SharedServer.Name)]
public sealed class AnInvitation(TestServer server)
{
    private async Task<string> LinkAsync(TestFamily family, Role role = Role.Helper, DateTime? madeAt = null)
    {
        var secret = Invitation.NewSecret();
        await family.WithDbAsync(async db =>
        {
            db.Invitations.Add(new Invitation(Guid.CreateVersion7(), secret, "Basil", role, family.GuardianId, "Iris", madeAt ?? server.Clock.GetUtcNow().UtcDateTime));
            await db.SaveChangesAsync();
        });
        return "/join/" + secret;
    }

    [Fact]
    public async Task Lets_somebody_new_in_as_what_it_says()
    {
        var family = await server.FamilyAsync("Cedar");
        var link = await LinkAsync(family);
        var visitor = server.Visitor();
        var page = await visitor.GetAsync(link);
        Assert.Contains("Iris invites you to the Cedar family", page.QuerySelector("h1")!.TextContent, StringComparison.Ordinal);
        var answer = await visitor.SubmitAsync(page, new() { ["Input.Email"] = $"{Guid.NewGuid():N}@millrace.example", ["Input.Password"] = TestServer.Password });
        Assert.Equal("/", answer.Headers.Location!.OriginalString);
        Assert.Equal(HttpStatusCode.Forbidden, (await visitor.OpenAsync("/family")).StatusCode);
        Assert.Equal([("Basil", Role.Helper), ("Iris Cedar", Role.Guardian)], (await family.FromDbAsync(db => db.Memberships.ToListAsync())).Select(m => (m.Name, m.Role)).Order());
        Assert.Equal(HttpStatusCode.Gone, (await server.Visitor().OpenAsync(link)).StatusCode);
    }

    [Fact]
    public async Task Waits_while_somebody_signs_in_first()
    {
        var family = await server.FamilyAsync("Cedar");
        var link = await LinkAsync(family, Role.Guardian);
        var person = await server.PersonAsync("Hazel");
        var visitor = server.Visitor();
        var toSignIn = (await visitor.GetAsync(link)).QuerySelector("a[href*='/sign-in']")!.GetAttribute("href")!;
        var signedIn = await visitor.SubmitAsync(await visitor.GetAsync(toSignIn), new() { ["Input.Email"] = person.Email, ["Input.Password"] = TestServer.Password });
        Assert.Equal(link, signedIn.Headers.Location!.OriginalString);
        var joined = await visitor.SubmitAsync(await visitor.GetAsync(link));
        Assert.Equal("/", joined.Headers.Location!.OriginalString);
        Assert.Equal("Cedar", (await visitor.GetAsync("/family")).QuerySelector("h1")!.TextContent);
    }

    [Fact]
    public async Task Is_not_used_up_by_somebody_who_belongs_already()
    {
        var family = await server.FamilyAsync();
        var link = await LinkAsync(family);
        var page = await family.Guardian.GetAsync(link);
        Assert.Null(page.QuerySelector("main form"));
        var token = await family.Guardian.TokenAsync("/family/counting");
        await family.Guardian.PostAsync(link + "?handler=Accept", [new("__RequestVerificationToken", token)]);
        await server.Visitor().GetAsync(link);
        Assert.Equal(1, await family.FromDbAsync(db => db.Memberships.CountAsync()));
    }

    [Fact]
    public async Task Opens_once_however_many_tap_it_at_the_same_moment()
    {
        var family = await server.FamilyAsync();
        var link = await LinkAsync(family);
        var taps = new List<(Visitor Visitor, AngleSharp.Html.Dom.IHtmlDocument Page)>();
        for (var i = 0; i < 10; i++)
        {
            var person = await server.PersonAsync("Basil");
            var visitor = await server.SignInAsync(person.Email!);
            var page = await visitor.GetAsync(link);
            taps.AddRange(Enumerable.Repeat((visitor, page), 5));
        }

        var answers = await Task.WhenAll(taps.Select(t => t.Visitor.SubmitAsync(t.Page, within: "main form")));
        // Of the winner's own five taps the later ones find that they belong already.
        Assert.All(answers, a => Assert.Contains(a.StatusCode, new[] { HttpStatusCode.Redirect, HttpStatusCode.Gone }));
        Assert.Single(taps.Where((_, i) => answers[i].StatusCode == HttpStatusCode.Redirect).Select(t => t.Visitor).Distinct());
        Assert.Equal(2, await family.FromDbAsync(db => db.Memberships.CountAsync()));
    }

    [Fact]
    public async Task Leaves_no_account_behind_for_those_who_came_too_late()
    {
        var family = await server.FamilyAsync();
        var link = await LinkAsync(family);
        var visitors = Enumerable.Range(0, 5).Select(_ => server.Visitor()).ToList();
        var pages = await Task.WhenAll(visitors.Select(v => v.GetAsync(link)));
        var mark = Guid.NewGuid().ToString("N");
        var answers = await Task.WhenAll(visitors.Select((v, i) => v.SubmitAsync(pages[i], new() { ["Input.Email"] = $"{i}{mark}@millrace.example", ["Input.Password"] = TestServer.Password })));
        Assert.Single(answers, a => a.StatusCode == HttpStatusCode.Redirect);
        Assert.Equal(4, answers.Count(a => a.StatusCode == HttpStatusCode.Gone));
        Assert.Equal(1, await server.FromDbAsync(null, db => db.Users.CountAsync(p => p.Email!.Contains(mark))));
    }

    [Fact]
    public async Task Ends_after_seven_days_to_the_second()
    {
        var family = await server.FamilyAsync();
        var now = server.Clock.GetUtcNow().UtcDateTime;
        var open = await LinkAsync(family, madeAt: now.AddDays(-7).AddSeconds(1));
        var over = await LinkAsync(family, madeAt: now.AddDays(-7));
        await server.Visitor().GetAsync(open);
        var answer = await server.Visitor().OpenAsync(over);
        Assert.Equal(HttpStatusCode.Gone, answer.StatusCode);
        var page = await Visitor.ParseAsync(answer);
        Assert.Contains("Ask Iris for a new one", page.Body!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("Alder", page.Body.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_closed_once_it_is_withdrawn()
    {
        var family = await server.FamilyAsync();
        var link = await LinkAsync(family);
        var visitor = server.Visitor();
        var page = await visitor.GetAsync(link);
        var people = await family.Guardian.GetAsync("/family/people");
        Assert.Equal(HttpStatusCode.Redirect, (await family.Guardian.SubmitAsync(people, within: "form[action*='handler=Withdraw']")).StatusCode);
        var late = await visitor.SubmitAsync(page, new() { ["Input.Email"] = $"{Guid.NewGuid():N}@millrace.example", ["Input.Password"] = TestServer.Password });
        Assert.Equal(HttpStatusCode.Gone, late.StatusCode);
    }

    [Theory]
    [InlineData("0000000000000000000000000000000000000000000000000000000000000000")]
    [InlineData("x")]
    [InlineData("%E2%80%AE%07")]
    public async Task Is_unknown_by_any_other_secret(string secret)
    {
        await server.FamilyAsync();
        Assert.Equal(HttpStatusCode.NotFound, (await server.Visitor().OpenAsync("/join/" + secret)).StatusCode);
    }
}
