using System.Net;
using CoopLessons.Core.Families;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Families;

[Collection(SharedServer.Name)]
public sealed class TheChildren(TestServer server)
{
    private static async Task<Guid> AddAsync(TestFamily family, string name = "Wren", string birth = "2019-04-02")
    {
        var page = await family.Guardian.GetAsync("/family/learners/new");
        var answer = await family.Guardian.SubmitAsync(page, new() { ["Input.Name"] = name, ["Input.BirthDate"] = birth });
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        return await family.FromDbAsync(db => db.Learners.Where(l => l.Name == name).Select(l => l.Id).SingleAsync());
    }

    [Fact]
    public async Task Begin_an_empty_family_with_one_button()
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync("/family");
        Assert.Equal("/family/learners/new", Assert.Single(page.QuerySelectorAll("a.primary")).GetAttribute("href"));
    }

    [Fact]
    public async Task Are_added_with_allergies_and_levels_and_shown_with_their_age()
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync("/family/learners/new");
        await family.Guardian.SubmitAsync(page, new()
        {
            ["Input.Name"] = "Linnet",
            ["Input.BirthDate"] = "2016-03-13",
            ["Input.AllergyNote"] = "kiwi",
            ["Input.Levels[0].Grade"] = "0",
            ["Input.Levels[2].Grade"] = "4",
        }, more: [new("Input.Allergies", "Peanuts"), new("Input.Allergies", "TreeNuts")]);
        var learner = await family.FromDbAsync(db => db.Learners.Include(l => l.Levels).SingleAsync());
        Assert.Equal([Allergen.TreeNuts, Allergen.Peanuts], learner.Allergies);
        Assert.Equal([0, 4], learner.Levels.Select(l => l.Grade).Order());
        // Ten tomorrow.
        Assert.Contains("9 years, kindergarten to grade 4", (await family.Guardian.GetAsync("/family")).Body!.TextContent, StringComparison.Ordinal);

        var edit = await family.Guardian.GetAsync($"/family/learners/{learner.Id}");
        Assert.Equal(2, edit.QuerySelectorAll("input[name='Input.Allergies'][checked]").Length);
        await family.Guardian.SubmitAsync(edit, new() { ["Input.Levels[0].Grade"] = "", ["Input.Levels[1].Grade"] = "12" });
        learner = await family.FromDbAsync(db => db.Learners.Include(l => l.Levels).SingleAsync());
        Assert.Equal([4, 12], learner.Levels.Select(l => l.Grade).Order());
        Assert.Equal([Allergen.TreeNuts, Allergen.Peanuts], learner.Allergies);
    }

    [Theory]
    [InlineData("Input.Name", "")]
    [InlineData("Input.Name", "  \u200B ")]
    [InlineData("Input.Name", "a name that is much longer than forty signs")]
    [InlineData("Input.BirthDate", "")]
    [InlineData("Input.BirthDate", "last spring")]
    [InlineData("Input.BirthDate", "1989-12-31")]
    [InlineData("Input.BirthDate", "2026-03-13")]
    [InlineData("Input.BirthDate", "2026-02-30")]
    [InlineData("Input.Levels[0].Grade", "13")]
    [InlineData("Input.Levels[0].Grade", "-1")]
    [InlineData("Input.Levels[0].Grade", "fourth")]
    [InlineData("Input.Allergies", "Kiwi")]
    [InlineData("Input.Allergies", "99")]
    public async Task Are_not_added_while_something_is_amiss(string field, string value)
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync("/family/learners/new");
        var answer = await family.Guardian.SubmitAsync(page, new() { ["Input.Name"] = "Wren", ["Input.BirthDate"] = "2019-04-02", ["Input.AllergyNote"] = "kiwi 🥝", [field] = value });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var shown = await Visitor.ParseAsync(answer);
        Assert.NotEmpty(shown.QuerySelectorAll(".field-validation-error, .fault"));
        Assert.Equal("kiwi 🥝", shown.QuerySelector("#Input_AllergyNote")!.GetAttribute("value"));
        Assert.Equal(0, await family.FromDbAsync(db => db.Learners.CountAsync()));
    }

    [Fact]
    public async Task Are_added_up_to_this_very_day_and_from_the_first_day_that_is_taken()
    {
        var family = await server.FamilyAsync();
        await AddAsync(family, "Heron", "2026-03-12");
        await AddAsync(family, "Crane", "1990-01-01");
    }

    [Theory]
    [InlineData("=1+1")]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("\u202Enerw")]
    [InlineData("Zaunkönig 🐦")]
    public async Task May_be_called_anything_that_can_be_seen(string name)
    {
        var family = await server.FamilyAsync();
        await AddAsync(family, name);
        var page = await family.Guardian.GetAsync("/family");
        Assert.Contains(page.QuerySelectorAll(".row-main"), e => e.TextContent == name);
        Assert.Empty(page.QuerySelectorAll("main script"));
    }

    [Fact]
    public async Task Are_added_once_by_a_form_that_is_sent_twice()
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync("/family/learners/new");
        for (var i = 0; i < 2; i++)
        {
            var answer = await family.Guardian.SubmitAsync(page, new() { ["Input.Name"] = "Wren", ["Input.BirthDate"] = "2019-04-02" });
            Assert.Equal("/family", answer.Headers.Location!.OriginalString);
        }

        Assert.Equal(1, await family.FromDbAsync(db => db.Learners.CountAsync()));
    }

    [Fact]
    public async Task Are_added_once_by_a_form_that_is_sent_eight_times_at_once()
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync("/family/learners/new");
        var answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => family.Guardian.SubmitAsync(page, new() { ["Input.Name"] = "Wren", ["Input.BirthDate"] = "2019-04-02", ["Input.Levels[0].Grade"] = "1" })));
        Assert.All(answers, a => Assert.Equal("/family", a.Headers.Location?.OriginalString));
        Assert.Equal(1, await family.FromDbAsync(db => db.Learners.CountAsync()));
    }

    [Fact]
    public async Task Are_not_overwritten_by_an_older_page()
    {
        var family = await server.FamilyAsync();
        var id = await AddAsync(family);
        var older = await family.Guardian.GetAsync($"/family/learners/{id}");
        await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/family/learners/{id}"), new() { ["Input.Levels[0].Grade"] = "3" });
        var answer = await family.Guardian.SubmitAsync(older, new() { ["Input.Name"] = "Jenny" });
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        var shown = await Visitor.ParseAsync(answer);
        Assert.Equal("Jenny", shown.QuerySelector("#Input_Name")!.GetAttribute("value"));
        Assert.Equal("Wren", await family.FromDbAsync(db => db.Learners.Select(l => l.Name).SingleAsync()));
        // Having been told, the parent may save over it.
        Assert.Equal(HttpStatusCode.Redirect, (await family.Guardian.SubmitAsync(shown)).StatusCode);
        Assert.Equal("Jenny", await family.FromDbAsync(db => db.Learners.Select(l => l.Name).SingleAsync()));
    }

    [Theory]
    [InlineData("Aside", false)]
    [InlineData("Back", true)]
    public async Task Are_not_set_aside_or_brought_back_by_an_older_page(string handler, bool aside)
    {
        var family = await server.FamilyAsync();
        var id = await AddAsync(family);
        if (aside)
            await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/family/learners/{id}"), within: "form[action*='handler=Aside']");
        var older = await family.Guardian.GetAsync($"/family/learners/{id}");
        await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/family/learners/{id}"), new() { ["Input.Name"] = "Jenny" });
        var answer = await family.Guardian.SubmitAsync(older, within: $"form[action*='handler={handler}']");
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Equal(aside, await family.FromDbAsync(db => db.Learners.Select(l => l.SetAside).SingleAsync()));
        var shown = await Visitor.ParseAsync(answer);
        Assert.NotEmpty(shown.QuerySelector(".validation-summary-errors")!.TextContent);
        Assert.Empty(shown.QuerySelectorAll(".field-validation-error"));
        Assert.Equal("Jenny", shown.QuerySelector("#Input_Name")!.GetAttribute("value"));
        // Sent once more from the page that came back, and then a second time, it is done.
        for (var i = 0; i < 2; i++)
            Assert.Equal("/family", (await family.Guardian.SubmitAsync(shown, within: $"form[action*='handler={handler}']")).Headers.Location?.OriginalString);
        Assert.Equal(!aside, await family.FromDbAsync(db => db.Learners.Select(l => l.SetAside).SingleAsync()));
    }

    [Fact]
    public async Task Of_another_family_are_not_there()
    {
        var family = await server.FamilyAsync();
        var other = await server.FamilyAsync("Birch");
        var theirs = await AddAsync(other);
        var mine = await AddAsync(family, "Linnet");
        var page = await family.Guardian.GetAsync($"/family/learners/{mine}");
        Assert.Equal(HttpStatusCode.NotFound, (await family.Guardian.OpenAsync($"/family/learners/{theirs}")).StatusCode);
        var token = page.QuerySelector("input[name=__RequestVerificationToken]")!.GetAttribute("value")!;
        foreach (var handler in new[] { "", "?handler=Aside", "?handler=Back" })
            Assert.Equal(HttpStatusCode.NotFound, (await family.Guardian.PostAsync($"/family/learners/{theirs}{handler}", [new("__RequestVerificationToken", token)])).StatusCode);
        var subject = await other.FromDbAsync(db => db.Subjects.Select(s => s.Id).FirstAsync());
        var foreignSubject = await family.Guardian.SubmitAsync(page, new() { ["Input.Levels[0].SubjectId"] = subject.ToString(), ["Input.Levels[0].Grade"] = "3" });
        Assert.Equal(HttpStatusCode.NotFound, foreignSubject.StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await family.Guardian.OpenAsync("/family/learners/nonsense")).StatusCode);
    }

    [Fact]
    public async Task Are_set_aside_and_brought_back()
    {
        var family = await server.FamilyAsync();
        var id = await AddAsync(family);
        await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/family/learners/{id}"), within: "form[action*='handler=Aside']");
        Assert.Contains("set aside", (await family.Guardian.GetAsync("/family")).QuerySelector(".rows")!.TextContent, StringComparison.Ordinal);
        await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/family/learners/{id}"), within: "form[action*='handler=Back']");
        Assert.False(await family.FromDbAsync(db => db.Learners.Select(l => l.SetAside).SingleAsync()));
    }
}
