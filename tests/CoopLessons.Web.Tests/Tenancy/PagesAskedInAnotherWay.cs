using System.Net;
using CoopLessons.Web.Tests.App;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.Mvc.RazorPages.Infrastructure;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace CoopLessons.Web.Tests.Tenancy;

/// <summary>Every page, found from the program itself, under a method for which it has no handler, or at an address that says nothing.</summary>
[Collection(SharedServer.Name)]
public sealed class PagesAskedInAnotherWay(TestServer server)
{
    [Theory]
    [InlineData("POST")]
    [InlineData("PUT")]
    [InlineData("DELETE")]
    public async Task Refuse_and_never_break(string method)
    {
        var mine = await Furnished.MakeAsync(server, "Alder");
        var (token, childs) = (await mine.Family.Guardian.TokenAsync("/family/learners/new"), mine.Lists.On(server));
        var childsToken = await childs.TokenAsync("/mine");
        var tried = 0;
        foreach (var page in await WithoutAsync(method))
        {
            var fits = mine.Opener(page.ViewEnginePath) == mine.Family.Guardian ? token : childsToken;
            var path = RouteFilling.Fill(page.AttributeRouteInfo!.Template!, n => mine.IdFor(page.ViewEnginePath, n).ToString());
            using var request = new HttpRequestMessage(new HttpMethod(method), path)
            {
                Content = new FormUrlEncodedContent([new("__RequestVerificationToken", fits)]),
            };
            using var answer = await (mine.Opener(page.ViewEnginePath) == mine.Family.Guardian ? mine.Family.Guardian : childs).SendAsync(request);
            Assert.True(answer.StatusCode == HttpStatusCode.MethodNotAllowed, $"{method} {path} answered {(int)answer.StatusCode}");
            tried++;
        }

        Assert.True(tried > 10, $"Only {tried} pages were tried.");
    }

    [Fact]
    public async Task Break_at_no_address_with_a_part_of_control_characters()
    {
        var mine = await Furnished.MakeAsync(server, "Alder");
        var tried = 0;
        foreach (var page in await PagesAsync())
        {
            var template = page.AttributeRouteInfo!.Template!;
            foreach (var text in RouteFilling.Names(template).Where(n => !n.EndsWith("Id", StringComparison.OrdinalIgnoreCase) || n == "pathwayId"))
            {
                // Each part stands in braces, and the other parts are the family's own.
                var start = template.IndexOf('{' + text, StringComparison.Ordinal);
                var path = RouteFilling.Fill(template[..start] + "%01%7f" + template[(template.IndexOf('}', start) + 1)..], n => mine.IdFor(page.ViewEnginePath, n).ToString());
                using var answer = await mine.Family.Guardian.OpenAsync(path);
                Assert.True((int)answer.StatusCode < 500, $"{path} answered {(int)answer.StatusCode}");
                tried++;
            }
        }

        Assert.True(tried >= 8, $"Only {tried} addresses were tried.");
    }

    [Theory]
    [InlineData("POST")]
    [InlineData("DELETE")]
    public async Task Keep_the_status_of_what_is_not_there(string method)
    {
        var family = await server.FamilyAsync();
        using var answer = await family.Guardian.SendAsync(new HttpRequestMessage(new HttpMethod(method), "/nowhere/at/all"));
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    private async Task<IReadOnlyList<CompiledPageActionDescriptor>> WithoutAsync(string method) =>
        [.. (await PagesAsync()).Where(p => p.HandlerMethods.Count > 0 && !p.HandlerMethods.Any(h => string.Equals(h.HttpMethod, method, StringComparison.OrdinalIgnoreCase)))];

    private async Task<IReadOnlyList<CompiledPageActionDescriptor>> PagesAsync()
    {
        var loader = server.Services.GetRequiredService<PageLoader>();
        var compiled = new List<CompiledPageActionDescriptor>();
        foreach (var page in server.Services.GetRequiredService<EndpointDataSource>().Endpoints.Select(e => e.Metadata.GetMetadata<PageActionDescriptor>()).OfType<PageActionDescriptor>().DistinctBy(p => p.ViewEnginePath))
            compiled.Add(await loader.LoadAsync(page, EndpointMetadataCollection.Empty));
        return compiled;
    }
}
