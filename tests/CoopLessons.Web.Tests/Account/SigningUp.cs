using System.Net;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Account;

[Collection(SharedServer.Name)]
public sealed class SigningUp(TestServer server)
{
    private static Dictionary<string, string?> Founder(string email, string name = "Hazel") => new()
    {
        ["Input.Name"] = name,
        ["Input.Email"] = email,
        ["Input.Password"] = TestServer.Password,
        ["Input.FamilyName"] = "Birch",
    };

    [Fact]
    public async Task Is_closed_unless_the_host_opens_it()
    {
        await server.PersonAsync("Iris");
        var visitor = server.Visitor();
        var page = await visitor.GetAsync("/sign-up");
        Assert.Null(page.QuerySelector("form"));
        Assert.Contains("CoopLessons__SignUp=open", page.Body!.TextContent, StringComparison.Ordinal);
        var fields = Founder("hazel@millrace.example").Append(new("__RequestVerificationToken", await visitor.TokenAsync("/sign-in")));
        var answer = await visitor.PostAsync("/sign-up", fields.Select(f => new KeyValuePair<string, string>(f.Key, f.Value!)));
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public async Task Founds_a_family_where_it_is_open()
    {
        using var open = new OwnServer(new KeyValuePair<string, string>("CoopLessons:SignUp", "open"));
        var visitor = open.Visitor();
        var answer = await visitor.SubmitAsync(await visitor.GetAsync("/sign-up"), Founder("o'hara+school@millrace.example", "<script>alert(1)</script> =1+1 🦉"));
        Assert.Equal("/family", answer.Headers.Location!.OriginalString);
        var family = await visitor.GetAsync("/family");
        Assert.Contains("<script>alert(1)</script> =1+1 🦉", family.Body!.TextContent, StringComparison.Ordinal);
        Assert.Empty(family.QuerySelectorAll("main script"));

        var another = open.Visitor();
        var taken = await another.SubmitAsync(await another.GetAsync("/sign-up"), Founder("O'HARA+school@millrace.example"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, taken.StatusCode);
        Assert.Contains("Sign in instead", (await Visitor.ParseAsync(taken)).QuerySelector("#email-fault")!.TextContent, StringComparison.Ordinal);
        await open.SignInAsync("o'hara+school@millrace.example");
    }

    [Theory]
    [InlineData("seven77")]
    [InlineData("passwordpassword")]
    [InlineData("cooplessons2026")]
    [InlineData("hazel birch hazel")]
    public async Task Refuses_passwords_that_are_short_or_easily_guessed(string password)
    {
        using var open = new OwnServer(new KeyValuePair<string, string>("CoopLessons:SignUp", "open"));
        var visitor = open.Visitor();
        var fill = Founder("hazel@millrace.example");
        fill["Input.Password"] = password;
        var answer = await visitor.SubmitAsync(await visitor.GetAsync("/sign-up"), fill);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var page = await Visitor.ParseAsync(answer);
        Assert.NotEmpty(page.QuerySelector("#password-fault")!.TextContent);
        Assert.Null(page.QuerySelector("#Input_Password")!.GetAttribute("value"));
        Assert.Equal("hazel@millrace.example", page.QuerySelector("#Input_Email")!.GetAttribute("value"));
    }
}
