using CoopLessons.Web.Security;
using CoopLessons.Web.Tests.App;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace CoopLessons.Web.Tests.Tenancy;

[Collection(SharedServer.Name)]
public sealed class EveryPageHasAPolicy(TestServer server)
{
    [Fact]
    public void Each_page_lies_in_a_folder_of_the_access_table()
    {
        var outside = Pages().Where(p => !Access.Table.Any(row => p.ViewEnginePath.StartsWith(row.Folder + "/", StringComparison.OrdinalIgnoreCase))).Select(p => p.ViewEnginePath);
        Assert.Empty(outside);
        Assert.NotEmpty(Pages());
    }

    [Fact]
    public void Each_endpoint_says_who_may_come_or_that_anybody_may()
    {
        var silent = server.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Where(e => e.Metadata.GetMetadata<IAuthorizeData>() is null && e.Metadata.GetMetadata<IAllowAnonymous>() is null)
            .Select(e => e.RoutePattern.RawText)
            .Where(route => route != "{**path:file}"); // The framework's own for files, in development alone; silent, and so closed.
        Assert.Empty(silent);
    }

    [Fact]
    public async Task A_stranger_is_sent_to_sign_in_from_every_page_that_is_not_for_anybody()
    {
        var stranger = server.Visitor();
        foreach (var page in Pages().Where(p => PolicyOf(p) != Access.Anybody))
        {
            var path = RouteFilling.Fill(page.AttributeRouteInfo!.Template!, _ => Guid.CreateVersion7().ToString());
            using var answer = await stranger.OpenAsync(path);
            Assert.True(answer.StatusCode == System.Net.HttpStatusCode.Redirect && answer.Headers.Location!.OriginalString.Contains("/sign-in", StringComparison.Ordinal), $"{path} answered {answer.StatusCode}");
        }
    }

    [Fact]
    public async Task A_helper_opens_nothing_that_is_for_guardians()
    {
        var family = await server.FamilyAsync();
        var helper = await server.HelperAsync(family);
        foreach (var page in Pages().Where(p => PolicyOf(p) == Access.Guardian))
        {
            var path = RouteFilling.Fill(page.AttributeRouteInfo!.Template!, _ => Guid.CreateVersion7().ToString());
            using var answer = await helper.OpenAsync(path);
            Assert.True(answer.StatusCode == System.Net.HttpStatusCode.Forbidden, $"{path} answered {answer.StatusCode}");
        }
    }

    private static string PolicyOf(PageActionDescriptor page) =>
        Access.Table.First(row => page.ViewEnginePath.StartsWith(row.Folder + "/", StringComparison.OrdinalIgnoreCase)).Policy;

    private IReadOnlyList<PageActionDescriptor> Pages() =>
        [.. server.Services.GetRequiredService<EndpointDataSource>().Endpoints.Select(e => e.Metadata.GetMetadata<PageActionDescriptor>()).OfType<PageActionDescriptor>().DistinctBy(p => p.AttributeRouteInfo!.Template)];
}
