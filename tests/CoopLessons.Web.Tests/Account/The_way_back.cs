using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Account;

[Collection(SharedServer.Name)]
public sealed class The_way_back(TestServer server)
{
    [Theory]
    [InlineData("/records", "/records")]
    [InlineData("//elsewhere.example", "/")]
    [InlineData("/\\elsewhere.example", "/")]
    [InlineData("https://elsewhere.example/", "/")]
    [InlineData("/\u00e9", "/")]
    public async Task Leads_only_to_addresses_of_this_server_that_a_header_can_hold(string back, string expected)
    {
        var person = await server.PersonAsync("Iris");
        var visitor = server.Visitor();
        var page = await visitor.GetAsync("/sign-in?back=" + Uri.EscapeDataString(back));
        var answer = await visitor.SubmitAsync(page, new() { ["Input.Email"] = person.Email, ["Input.Password"] = TestServer.Password });
        Assert.Equal(expected, answer.Headers.Location!.OriginalString);
    }
}
