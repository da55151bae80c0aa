using System.Net;
using CoopLessons.Core.Requirements;
using CoopLessons.Data.Requirements;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Law;

[Collection(SharedServer.Name)]
public sealed class Subjects_that_count(TestServer server)
{
    private const string Missouri = "/family/law/subjects/us-mo/home-school";

    [Fact]
    public async Task Are_proposed_by_the_catalog_and_kept_only_where_the_family_decides_otherwise()
    {
        var family = await server.FamilyAsync();
        var (reading, writing, french) = (await family.SubjectAsync("reading"), await family.SubjectAsync("writing"), Guid.CreateVersion7());
        await family.WithDbAsync(async db =>
        {
            db.Add(new Data.Families.FamilySubject(french, "french", "French", 99));
            await db.SaveChangesAsync();
        });
        var page = await family.Guardian.GetAsync(Missouri);
        var at = Catalog.Of50AndDc["US-MO"]!.Pathway("home-school")!.Subjects.ToList().FindIndex(s => s.Id == "language-arts");
        var name = $"Rows[{at}].Counts";
        Assert.Equal(new[] { reading, writing }.Order(), Ticked(page, name).Order());
        Assert.Contains("proposed", page.QuerySelector($"input[name='{name}'][value='{reading}']")!.ParentElement!.TextContent, StringComparison.Ordinal);

        await family.Guardian.SubmitAsync(page, new() { [name] = null }, more: [new(name, reading.ToString()), new(name, french.ToString())]);
        var readings = await ReadingsAsync(family);
        Assert.Equal([(writing, false), (french, true)], readings.Select(r => (r.SubjectId, r.Counts)).OrderBy(r => r.Counts));
        Assert.All(readings, r => Assert.Equal(("US-MO", "home-school", "language-arts"), (r.Code, r.PathwayId, r.StatuteSubject)));

        page = await family.Guardian.GetAsync(Missouri);
        Assert.Equal(new[] { reading, french }.Order(), Ticked(page, name).Order());
        await family.Guardian.SubmitAsync(page, new() { [name] = null }, more: [new(name, reading.ToString()), new(name, writing.ToString())]);
        Assert.Empty(await ReadingsAsync(family));
    }

    [Fact]
    public async Task Are_decided_for_a_pathway_of_ones_own_too()
    {
        var family = await server.FamilyAsync();
        var own = await family.OwnAsync();
        var page = await family.Guardian.GetAsync($"/family/law/subjects/own/{own.Id}");
        Assert.Equal(HttpStatusCode.Redirect, (await family.Guardian.SubmitAsync(page, new() { ["Rows[0].Counts"] = null })).StatusCode);
        var reading = Assert.Single(await ReadingsAsync(family));
        Assert.Equal(("", own.Id.ToString(), "reading", false), (reading.Code, reading.PathwayId, reading.StatuteSubject, reading.Counts));
    }

    [Fact]
    public async Task Are_decided_once_though_the_form_is_sent_several_times_at_once()
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync(Missouri);
        var answers = await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => family.Guardian.SubmitAsync(page, new() { ["Rows[0].Counts"] = null })));
        Assert.All(answers, a => Assert.True(a.StatusCode is HttpStatusCode.Redirect or HttpStatusCode.Conflict, a.StatusCode.ToString()));
        Assert.Contains(answers, a => a.StatusCode == HttpStatusCode.Redirect);
        Assert.Single(await ReadingsAsync(family));
    }

    [Fact]
    public async Task Are_the_familys_own_and_of_pathways_that_are_there()
    {
        var (family, other) = (await server.FamilyAsync(), await server.FamilyAsync("Birch"));
        var theirs = await other.SubjectAsync("reading");
        var ownOfOther = await other.OwnAsync();
        var page = await family.Guardian.GetAsync(Missouri);
        Assert.Equal(HttpStatusCode.NotFound, (await family.Guardian.SubmitAsync(page, more: [new("Rows[0].Counts", theirs.ToString())])).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await family.Guardian.OpenAsync("/family/law/subjects/us-mo/no-such")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await family.Guardian.OpenAsync("/family/law/subjects/us-zz/home-school")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await family.Guardian.OpenAsync($"/family/law/subjects/own/{ownOfOther.Id}")).StatusCode);
        Assert.Empty(await ReadingsAsync(family));
    }

    [Theory]
    [InlineData("Rows[0].Subject", "")]
    [InlineData("Rows[0].Counts", "reading")]
    public async Task Are_refused_where_the_form_is_not_understood(string field, string value)
    {
        var family = await server.FamilyAsync();
        var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(Missouri), new() { [field] = value });
        await answer.IsRefusedAsync();
        Assert.Empty(await ReadingsAsync(family));
    }

    [Fact]
    public async Task Are_none_where_the_pathway_names_none()
    {
        var (code, pathway) = LawFamily.First(p => p.Subjects.Count == 0);
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync($"/family/law/subjects/{code}/{pathway.Id}");
        Assert.Contains("names no subjects", page.Body!.TextContent, StringComparison.Ordinal);
    }

    private static IEnumerable<Guid> Ticked(AngleSharp.Dom.IDocument page, string name) =>
        page.QuerySelectorAll($"input[name='{name}'][checked]").Select(i => Guid.Parse(i.GetAttribute("value")!));

    private static Task<List<SubjectReading>> ReadingsAsync(TestFamily family) => family.FromDbAsync(db => db.SubjectReadings.AsNoTracking().ToListAsync());
}
