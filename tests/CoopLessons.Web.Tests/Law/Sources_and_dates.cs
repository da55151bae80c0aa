using System.Net;
using CoopLessons.Core.Requirements;
using CoopLessons.Web.Pages.Law;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Law;

[Collection(SharedServer.Name)]
public sealed class Sources_and_dates(TestServer server)
{
    [Fact]
    public async Task Are_listed_for_fifty_states_and_the_district()
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync("/law");
        Assert.Equal(51, Catalog.Of50AndDc.All.Count);
        Assert.Equal(51, page.QuerySelectorAll("main a.row-link").Length);
    }

    [Fact]
    public async Task Stand_beside_every_figure_paper_and_record_of_every_place()
    {
        var family = await server.FamilyAsync();
        foreach (var place in Catalog.Of50AndDc.All)
        {
            var page = await family.Guardian.GetAsync("/law/" + place.Code.ToLowerInvariant());
            var text = page.Body!.TextContent;
            foreach (var pathway in place.Pathways)
            {
                Assert.Contains(pathway.Name, text, StringComparison.Ordinal);
                Assert.All(pathway.AllRequirements, r => Assert.Contains(r.Name, text, StringComparison.Ordinal));
                Assert.All(pathway.AllRequirements.Where(r => r.Parts.Count == 0), r => Assert.Contains(LawWords.Figure(r), text, StringComparison.Ordinal));
                Assert.All(pathway.Duties, d => Assert.Contains(d.What, text, StringComparison.Ordinal));
                Assert.All(pathway.Records, r => Assert.Contains(r.What, text, StringComparison.Ordinal));
                Assert.All(pathway.Subjects, s => Assert.Contains(s.Name, text, StringComparison.Ordinal));
                Assert.All(Sources(pathway), s => Assert.Contains(s.Cite, text, StringComparison.Ordinal));
            }

            var all = place.Pathways.SelectMany(Sources).ToList();
            Assert.Equal(all.Count(s => s.NeedsConfirming), page.QuerySelectorAll(".tag").Count(t => t.TextContent == "confirm this"));
            Assert.Equal(all.Where(s => s.Url is not null).Select(s => s.Url).Order(), page.QuerySelectorAll("main a[rel=noreferrer]").Select(a => a.GetAttribute("href")).Order());
            Assert.Contains("This is no advice", text, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("us-zz")]
    [InlineData("404")]
    [InlineData("%3Cscript%3E")]
    public async Task Are_not_found_for_a_place_that_there_is_not(string code)
    {
        var family = await server.FamilyAsync();
        Assert.Equal(HttpStatusCode.NotFound, (await family.Guardian.OpenAsync("/law/" + code)).StatusCode);
    }

    private static IEnumerable<Source> Sources(Pathway pathway)
    {
        IEnumerable<Source> all =
        [
            pathway.Source, pathway.Ages.Source,
            .. pathway.AllRequirements.Select(r => r.Source), .. pathway.Subjects.Select(s => s.Source), .. pathway.Duties.Select(d => d.Source),
            .. pathway.Records.Select(r => r.Source), .. pathway.Notes.Select(n => n.Source),
        ];
        return pathway.Year is { } year ? all.Append(year.Source) : all;
    }
}
