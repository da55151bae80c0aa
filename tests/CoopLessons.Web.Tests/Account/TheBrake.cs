using CoopLessons.Web.Security;
using CoopLessons.Web.Tests.App;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace CoopLessons.Web.Tests.Account;

[Collection(SharedServer.Name)]
public sealed class TheBrake(TestServer server)
{
    [Theory]
    [InlineData("first-run")]
    [InlineData("sign-in")]
    [InlineData("sign-in/code")]
    [InlineData("sign-in/recovery")]
    [InlineData("sign-up")]
    [InlineData("join/{secret}")]
    [InlineData("person/password")]
    [InlineData("person/authenticator")]
    [InlineData("tablet/{learnerId:guid}")]
    public void Is_on_every_page_that_takes_a_secret(string route)
    {
        var endpoints = server.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>().Where(e => e.RoutePattern.RawText == route).ToList();
        Assert.NotEmpty(endpoints);
        Assert.All(endpoints, e => Assert.Equal(Access.Brake, e.Metadata.GetMetadata<EnableRateLimitingAttribute>()?.PolicyName));
    }
}
