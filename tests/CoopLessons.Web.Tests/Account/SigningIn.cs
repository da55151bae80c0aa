using System.Net;
using CoopLessons.Web.Pages.Account;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Account;

[Collection(SharedServer.Name)]
public sealed class SigningIn(TestServer server)
{
    [Fact]
    public async Task The_right_password_opens_the_door()
    {
        var person = await server.PersonAsync("Iris");
        var visitor = await server.SignInAsync(person.Email!);
        var again = await visitor.OpenAsync("/sign-in");
        Assert.Equal(HttpStatusCode.Redirect, again.StatusCode);
    }

    [Theory]
    [InlineData("/records?year=1", "/records?year=1")]
    [InlineData("//evil.example/", "/")]
    [InlineData("/\\evil.example", "/")]
    [InlineData("https://evil.example/", "/")]
    [InlineData("", "/")]
    public async Task Goes_back_only_to_a_page_of_this_server(string back, string to)
    {
        var person = await server.PersonAsync("Iris");
        var visitor = server.Visitor();
        var page = await visitor.GetAsync("/sign-in?back=" + Uri.EscapeDataString(back));
        var answer = await visitor.SubmitAsync(page, new() { ["Input.Email"] = person.Email, ["Input.Password"] = TestServer.Password });
        Assert.Equal(to, answer.Headers.Location!.OriginalString);
    }

    [Fact]
    public async Task A_wrong_password_and_an_unknown_address_are_told_alike()
    {
        var person = await server.PersonAsync("Iris");
        var visitor = server.Visitor();
        foreach (var email in new[] { person.Email!, "nobody@millrace.example" })
        {
            var page = await visitor.GetAsync("/sign-in");
            var answer = await visitor.SubmitAsync(page, new() { ["Input.Email"] = email, ["Input.Password"] = "not the password at all" });
            Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
            var shown = await Visitor.ParseAsync(answer);
            Assert.Contains(SignInModel.Refusal, shown.QuerySelector("#password-fault")!.TextContent, StringComparison.Ordinal);
            Assert.Equal(email, shown.QuerySelector("#Input_Email")!.GetAttribute("value"));
        }
    }

    [Fact]
    public async Task The_password_is_taken_exactly_as_typed()
    {
        var person = await server.PersonAsync("Iris");
        var visitor = server.Visitor();
        var page = await visitor.GetAsync("/sign-in");
        foreach (var near in new[] { TestServer.Password + " ", TestServer.Password.ToUpperInvariant() })
        {
            var answer = await visitor.SubmitAsync(page, new() { ["Input.Email"] = person.Email, ["Input.Password"] = near });
            Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        }
    }

    [Theory]
    [InlineData("", "x")]
    [InlineData("a@millrace.example", "")]
    [InlineData("=1+1", "<script>")]
    [InlineData("\u202Ea\u0007@x🦉", "\u0001")]
    public async Task Fields_that_hold_nothing_of_use_are_refused(string email, string password)
    {
        var visitor = server.Visitor();
        var answer = await visitor.SubmitAsync(await visitor.GetAsync("/sign-in"), new() { ["Input.Email"] = email, ["Input.Password"] = password });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
    }

    [Fact]
    public async Task Ten_thousand_signs_are_refused_beside_their_field()
    {
        var visitor = server.Visitor();
        var much = new string('a', 10_000);
        var answer = await visitor.SubmitAsync(await visitor.GetAsync("/sign-in"), new() { ["Input.Email"] = much, ["Input.Password"] = much });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var page = await Visitor.ParseAsync(answer);
        Assert.NotEmpty(page.QuerySelector("#email-fault")!.TextContent);
        Assert.NotEmpty(page.QuerySelector("#password-fault")!.TextContent);
    }
}
