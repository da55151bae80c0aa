using System.Net;
using CoopLessons.Web.Security;
using CoopLessons.Web.Tests.App;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace CoopLessons.Web.Tests.Tenancy;

/// <summary>Every route of the program, found from the program itself, asked for by a child on the family's tablet.</summary>
[Collection(SharedServer.Name)]
public sealed class A_learner_elsewhere(TestServer server)
{
    [Theory]
    [InlineData("GET")]
    [InlineData("POST")]
    public async Task Opens_nothing_but_the_own_list(string method)
    {
        var mine = await Furnished.MakeAsync(server, "Alder");
        var child = mine.Lists.On(server);
        var token = await child.TokenAsync("/mine");
        var tried = 0;
        foreach (var page in Pages().Where(p => PolicyOf(p) is not (Access.Anybody or Access.Tablet or Access.Learner)))
        {
            var path = Address(page, mine);
            using var request = new HttpRequestMessage(new HttpMethod(method), path);
            if (method == "POST")
                request.Content = new FormUrlEncodedContent([new("__RequestVerificationToken", token)]);
            using var answer = await child.SendAsync(request);
            Assert.True(answer.StatusCode is HttpStatusCode.Forbidden or HttpStatusCode.NotFound, $"{method} {path} answered {(int)answer.StatusCode}");
            tried++;
        }

        Assert.True(tried > 60, $"Only {tried} pages were tried.");
    }

    [Fact]
    public async Task Is_a_stranger_where_anybody_may_come()
    {
        var mine = await Furnished.MakeAsync(server, "Alder");
        var (child, stranger) = (mine.Lists.On(server), server.Visitor());
        foreach (var page in Pages().Where(p => PolicyOf(p) == Access.Anybody && p.ViewEnginePath != "/Start/Index"))
        {
            var path = RouteFilling.Fill(page.AttributeRouteInfo!.Template!, _ => Guid.CreateVersion7().ToString());
            using var answer = await child.OpenAsync(path);
            using var known = await stranger.OpenAsync(path);
            Assert.Equal(known.StatusCode, answer.StatusCode);
            Assert.Equal(known.Headers.Location, answer.Headers.Location);
        }
    }

    [Fact]
    public async Task Opens_the_tablet_and_the_own_list()
    {
        var mine = await Furnished.MakeAsync(server, "Alder");
        var child = mine.Lists.On(server);
        Assert.Equal("Wren", (await child.GetAsync("/mine")).QuerySelector("h1")!.TextContent);
        using var tablet = await child.OpenAsync("/tablet");
        Assert.Equal("/mine", tablet.Headers.Location!.OriginalString);
    }

    [Fact]
    public async Task A_tablet_without_an_open_list_opens_no_list()
    {
        var mine = await Furnished.MakeAsync(server, "Alder");
        var tablet = mine.Lists.On(server);
        using var finished = await tablet.SubmitAsync(await tablet.GetAsync("/mine"), within: "form[action$='handler=Finished']");
        foreach (var page in Pages().Where(p => PolicyOf(p) is not (Access.Anybody or Access.Tablet)))
        {
            using var answer = await tablet.OpenAsync(Address(page, mine));
            Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        }
    }

    // The number of a job is no row's.
    private static string Address(PageActionDescriptor page, Furnished mine) => RouteFilling.Fill(
        page.AttributeRouteInfo!.Template!, n => (Furnished.IsMinted(page.ViewEnginePath, n) ? Guid.CreateVersion7() : mine.IdFor(page.ViewEnginePath, n)).ToString());

    private static string PolicyOf(PageActionDescriptor page) =>
        Access.Table.First(row => page.ViewEnginePath.StartsWith(row.Folder + "/", StringComparison.OrdinalIgnoreCase)).Policy;

    private IReadOnlyList<PageActionDescriptor> Pages() =>
        [.. server.Services.GetRequiredService<EndpointDataSource>().Endpoints.Select(e => e.Metadata.GetMetadata<PageActionDescriptor>()).OfType<PageActionDescriptor>().DistinctBy(p => p.AttributeRouteInfo!.Template)];
}
