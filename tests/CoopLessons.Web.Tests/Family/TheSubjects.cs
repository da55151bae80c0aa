using System.Net;
using CoopLessons.Web.Pages.Families;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Families;

[Collection(SharedServer.Name)]
public sealed class TheSubjects(TestServer server)
{
    private static Task<List<string>> NamesAsync(TestFamily family) =>
        family.FromDbAsync(db => db.Subjects.Where(s => !s.Retired).OrderBy(s => s.Order).Select(s => s.Name).ToListAsync());

    private static string Button(AngleSharp.Dom.IDocument page, string words) =>
        "#" + page.QuerySelectorAll("button").Single(b => b.TextContent.Contains(words, StringComparison.Ordinal)).Id;

    [Fact]
    public async Task Are_moved_by_buttons()
    {
        var family = await server.FamilyAsync();
        var before = await NamesAsync(family);
        var page = await family.Guardian.GetAsync("/family/subjects");
        await family.Guardian.SubmitAsync(page, within: Button(page, $"Move {before[2]} up"));
        Assert.Equal([before[0], before[2], before[1]], (await NamesAsync(family)).Take(3));
        page = await family.Guardian.GetAsync("/family/subjects");
        await family.Guardian.SubmitAsync(page, within: Button(page, $"Move {before[0]} down"));
        Assert.Equal([before[2], before[0], before[1]], (await NamesAsync(family)).Take(3));
    }

    [Fact]
    public async Task Come_back_as_a_list_where_the_page_stays()
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync("/family/subjects");
        var answer = await family.Guardian.SubmitAsync(page, within: Button(page, "Move Writing up"), htmx: true);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var text = await answer.Content.ReadAsStringAsync();
        Assert.StartsWith("<div id=\"subjects\"", text.TrimStart(), StringComparison.Ordinal);
        Assert.DoesNotContain("<html", text, StringComparison.Ordinal);
        Assert.Equal("Writing", (await NamesAsync(family))[0]);
    }

    [Fact]
    public async Task Are_added_at_the_end_and_once()
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync("/family/subjects");
        for (var i = 0; i < 2; i++)
            Assert.Equal(HttpStatusCode.Redirect, (await family.Guardian.SubmitAsync(page, new() { ["Add.Name"] = "Latin & Greek" }, within: "#Add_Name")).StatusCode);
        Assert.Equal("Latin & Greek", (await NamesAsync(family))[^1]);
        Assert.Equal(1, await family.FromDbAsync(db => db.Subjects.CountAsync(s => s.Code == "latin-greek")));
    }

    [Fact]
    public async Task Are_added_once_by_a_form_that_is_sent_eight_times_at_once()
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync("/family/subjects");
        var answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => family.Guardian.SubmitAsync(page, new() { ["Add.Name"] = "Latin & Greek" }, within: "#Add_Name")));
        Assert.All(answers, a => Assert.Equal(HttpStatusCode.Redirect, a.StatusCode));
        Assert.Equal(1, await family.FromDbAsync(db => db.Subjects.CountAsync(s => s.Name == "Latin & Greek")));
    }

    [Fact]
    public async Task Of_one_code_that_are_added_at_once_are_added_or_refused_beside_the_name()
    {
        var family = await server.FamilyAsync();
        var before = await family.FromDbAsync(db => db.Subjects.CountAsync());
        var names = new[] { "Latin & Greek", "Latin Greek", "Latin, Greek", "Latin: Greek", "Latin; Greek", "Latin - Greek", "Latin / Greek", "Latin + Greek" };
        var pages = await Task.WhenAll(names.Select(_ => family.Guardian.GetAsync("/family/subjects")));
        var answers = await Task.WhenAll(names.Select((name, i) => family.Guardian.SubmitAsync(pages[i], new() { ["Add.Name"] = name }, within: "#Add_Name")));
        var added = answers.Count(a => a.StatusCode == HttpStatusCode.Redirect);
        foreach (var (i, refused) in answers.Index().Where(a => a.Item.StatusCode != HttpStatusCode.Redirect))
        {
            Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
            var shown = await Visitor.ParseAsync(refused);
            Assert.NotEmpty(shown.QuerySelector("#add-fault")!.TextContent);
            Assert.Equal(names[i], shown.QuerySelector("#Add_Name")!.GetAttribute("value"));
            // Sent once more it is added, under the next code.
            Assert.Equal(HttpStatusCode.Redirect, (await family.Guardian.SubmitAsync(shown, within: "#Add_Name")).StatusCode);
        }

        Assert.InRange(added, 1, names.Length);
        Assert.Equal(before + names.Length, await family.FromDbAsync(db => db.Subjects.CountAsync()));
    }

    [Theory]
    [InlineData("")]
    [InlineData("\u200B")]
    [InlineData("science")]
    [InlineData("sixty-one signs sixty-one signs sixty-one signs sixty-one sig")]
    public async Task Are_not_added_without_a_name_of_their_own(string name)
    {
        var family = await server.FamilyAsync();
        var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/family/subjects"), new() { ["Add.Name"] = name }, within: "#Add_Name");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.NotEmpty((await Visitor.ParseAsync(answer)).QuerySelector("#add-fault")!.TextContent);
    }

    [Theory]
    [InlineData("Latin & Greek", "latin-greek")]
    [InlineData("Science & art, -- and more ", "science-art-and-more")]
    [InlineData("A subject of which the name has nearly sixty signs, fifty-nine", "a-subject-of-which-the-name-has-near")]
    [InlineData("Science", "science-2")]
    [InlineData("日本語", "subject")]
    [InlineData("=1+1", "1-1")]
    public void Are_recognised_by_a_code_of_lower_case_words(string name, string code) =>
        Assert.Equal(code, SubjectCodes.For(name, ["science"]));

    [Fact]
    public async Task Are_renamed_unless_somebody_else_was_faster()
    {
        var family = await server.FamilyAsync();
        var id = await family.FromDbAsync(db => db.Subjects.Where(s => s.Code == "art").Select(s => s.Id).SingleAsync());
        var page = await family.Guardian.GetAsync("/family/subjects");
        Assert.Equal(HttpStatusCode.Redirect, (await family.Guardian.SubmitAsync(page, new() { ["Renamed.Name"] = "Drawing" }, within: $"#name-{id}")).StatusCode);
        Assert.Contains("Drawing", await NamesAsync(family));
        var stale = await family.Guardian.SubmitAsync(page, new() { ["Renamed.Name"] = "Painting" }, within: $"#name-{id}");
        Assert.Equal(HttpStatusCode.Conflict, stale.StatusCode);
        Assert.Equal("Painting", (await Visitor.ParseAsync(stale)).QuerySelector($"#name-{id}")!.GetAttribute("value"));
        var taken = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/family/subjects"), new() { ["Renamed.Name"] = "MUSIC" }, within: $"#name-{id}");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, taken.StatusCode);
        Assert.NotEmpty((await Visitor.ParseAsync(taken)).QuerySelector($"#fault-{id}")!.TextContent);
    }

    [Fact]
    public async Task Are_retired_and_taught_again()
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync("/family/subjects");
        await family.Guardian.SubmitAsync(page, within: "form[action*='handler=Retire'] button");
        Assert.DoesNotContain("Reading", await NamesAsync(family));
        await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/family/subjects"), within: "form[action*='handler=Return'] button");
        Assert.Contains("Reading", await NamesAsync(family));
    }

    [Theory]
    [InlineData("Up")]
    [InlineData("Down")]
    [InlineData("Retire")]
    [InlineData("Return")]
    [InlineData("Rename")]
    public async Task Of_another_family_are_not_there(string handler)
    {
        var family = await server.FamilyAsync();
        var other = await server.FamilyAsync("Birch");
        var theirs = await other.FromDbAsync(db => db.Subjects.Select(s => s.Id).FirstAsync());
        var token = await family.Guardian.TokenAsync("/family/subjects");
        foreach (var id in new[] { theirs.ToString(), "nonsense" })
        {
            var answer = await family.Guardian.PostAsync($"/family/subjects?handler={handler}&id={id}", [new("Renamed.Name", "Mine"), new("__RequestVerificationToken", token)]);
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        }
    }
}
