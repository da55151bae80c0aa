using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using CoopLessons.Web.Security;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Account;

/// <summary>The app's side is computed here by itself, as RFC 6238 says: HMAC-SHA-1 over the count of 30-second steps.</summary>
public sealed class AnAuthenticatorApp : IClassFixture<TestServer>
{
    private readonly TestServer _server;

    public AnAuthenticatorApp(TestServer server) => _server = server;

    // RFC 6238, appendix B, the SHA-1 rows; the RFC prints eight digits, of which an app shows the last six.
    [Theory]
    [InlineData(59, 94287082)]
    [InlineData(1111111109, 07081804)]
    [InlineData(1111111111, 14050471)]
    [InlineData(1234567890, 89005924)]
    [InlineData(2000000000, 69279037)]
    [InlineData(20000000000, 65353130)]
    public void Shows_the_codes_that_the_standard_prints(long time, int code) =>
        Assert.Equal(code % 1_000_000, AuthenticatorCodes.Code("12345678901234567890"u8.ToArray(), time / 30));

    // RFC 4648, section 10.
    [Theory]
    [InlineData("", "")]
    [InlineData("MY", "f")]
    [InlineData("MZXQ", "fo")]
    [InlineData("MZXW6", "foo")]
    [InlineData("MZXW6YQ", "foob")]
    [InlineData("MZXW6YTB", "fooba")]
    [InlineData("mzxw6ytboi", "foobar")]
    public void Reads_keys_as_the_standard_writes_them(string written, string read) =>
        Assert.Equal(read, System.Text.Encoding.ASCII.GetString(Base32.Bytes(written)));

    [Fact]
    public async Task Is_asked_for_after_the_password_once_it_is_on()
    {
        var (email, key, _, first) = await SetUpAsync();
        // The code that turned it on has been used.
        var step = await PasswordStepAsync(email);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await CodeAsync(step, first)).StatusCode);
        _server.Clock.Advance(TimeSpan.FromSeconds(60));
        var code = CodeNow(key);
        var answer = await CodeAsync(step, code);
        Assert.Equal("/person", answer.Headers.Location!.OriginalString);
        await step.GetAsync("/person");

        var thief = await PasswordStepAsync(email);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await CodeAsync(thief, code)).StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await thief.OpenAsync("/person")).StatusCode);
    }

    [Theory]
    [InlineData("")]
    [InlineData("000000000000000000")]
    [InlineData("12345a")]
    [InlineData("-12345")]
    [InlineData("<script>")]
    public async Task Refuses_what_is_no_code(string said)
    {
        var (email, key, _, _) = await SetUpAsync();
        _server.Clock.Advance(TimeSpan.FromSeconds(60));
        var visitor = await PasswordStepAsync(email);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await CodeAsync(visitor, said)).StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await CodeAsync(visitor, CodeNow(key))).StatusCode);
    }

    [Fact]
    public async Task Is_taken_with_a_clock_half_a_minute_off_and_not_with_one_further_off()
    {
        var (email, key, _, _) = await SetUpAsync();
        _server.Clock.Advance(TimeSpan.FromMinutes(5));
        var visitor = await PasswordStepAsync(email);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await CodeAsync(visitor, CodeNow(key, -60))).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await CodeAsync(visitor, CodeNow(key, +60))).StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await CodeAsync(visitor, CodeNow(key, -30))).StatusCode);
    }

    [Fact]
    public async Task Can_be_replaced_by_a_recovery_code_once()
    {
        var (email, _, codes, _) = await SetUpAsync();
        Assert.Equal(10, codes.Distinct().Count());
        var visitor = await PasswordStepAsync(email);
        var used = codes[3].ToLowerInvariant().Replace('-', ' ');
        Assert.Equal(HttpStatusCode.Redirect, (await RecoverAsync(visitor, used)).StatusCode);
        var page = await visitor.GetAsync("/person");
        Assert.Contains("9 recovery codes left", page.Body!.TextContent, StringComparison.Ordinal);

        var again = await PasswordStepAsync(email);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await RecoverAsync(again, used)).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await RecoverAsync(again, "AAAA-AAAA-AAAA")).StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await RecoverAsync(again, codes[4])).StatusCode);
    }

    [Fact]
    public async Task Leaves_neither_key_nor_codes_readable_in_the_database()
    {
        var (email, key, codes, _) = await SetUpAsync();
        var kept = await _server.FromDbAsync(null, async db =>
        {
            var id = await db.Users.Where(p => p.Email == email).Select(p => p.Id).SingleAsync();
            return string.Join('\n', await db.UserTokens.Where(t => t.UserId == id).Select(t => t.Value).ToListAsync());
        });
        Assert.DoesNotContain(key, kept, StringComparison.OrdinalIgnoreCase);
        Assert.All(codes, code => Assert.DoesNotContain(code.Replace("-", "", StringComparison.Ordinal), kept.Replace("-", "", StringComparison.Ordinal), StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public async Task Is_set_up_and_turned_off_only_against_the_password()
    {
        var person = await _server.PersonAsync("Iris");
        var visitor = await _server.SignInAsync(person.Email!);
        var refused = await visitor.SubmitAsync(await visitor.GetAsync("/person/authenticator"), new() { ["Password"] = "not the password" });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Null((await visitor.GetAsync("/person/authenticator")).QuerySelector(".secret"));

        var (email, key, _, _) = await SetUpAsync();
        _server.Clock.Advance(TimeSpan.FromSeconds(60));
        var owner = await PasswordStepAsync(email);
        await CodeAsync(owner, CodeNow(key));
        var page = await owner.GetAsync("/person/authenticator");
        Assert.Null(page.QuerySelector(".secret"));
        var off = page.QuerySelector("button[formaction*='handler=Off']")!.GetAttribute("formaction")!;
        var token = page.QuerySelector("input[name=__RequestVerificationToken]")!.GetAttribute("value")!;
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await owner.PostAsync(off, [new("Password", "wrong"), new("__RequestVerificationToken", token)])).StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await owner.PostAsync(off, [new("Password", TestServer.Password), new("__RequestVerificationToken", token)])).StatusCode);
        await _server.SignInAsync(email);
    }

    [Fact]
    public async Task Stays_off_until_its_first_code_has_come()
    {
        var person = await _server.PersonAsync("Iris");
        var visitor = await _server.SignInAsync(person.Email!);
        await visitor.SubmitAsync(await visitor.GetAsync("/person/authenticator"), new() { ["Password"] = TestServer.Password });
        var page = await visitor.GetAsync("/person/authenticator");
        Assert.StartsWith("data:image/svg+xml;base64,", page.QuerySelector(".qr img")!.GetAttribute("src"), StringComparison.Ordinal);
        var wrong = await visitor.SubmitAsync(page, new() { ["Code"] = "000000" }, within: "form[action*='handler=Confirm']");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.StatusCode);
        await _server.SignInAsync(person.Email!);
    }

    [Fact]
    public async Task Is_a_step_that_nobody_skips()
    {
        var stranger = _server.Visitor();
        Assert.Equal("/sign-in", (await stranger.OpenAsync("/sign-in/code")).Headers.Location!.OriginalString);
        Assert.Equal("/sign-in", (await stranger.OpenAsync("/sign-in/recovery")).Headers.Location!.OriginalString);
    }

    private async Task<(string Email, string Key, IReadOnlyList<string> Codes, string First)> SetUpAsync()
    {
        var person = await _server.PersonAsync("Iris");
        var visitor = await _server.SignInAsync(person.Email!);
        var begun = await visitor.SubmitAsync(await visitor.GetAsync("/person/authenticator"), new() { ["Password"] = TestServer.Password });
        Assert.Equal(HttpStatusCode.Redirect, begun.StatusCode);
        var page = await visitor.GetAsync("/person/authenticator");
        var key = page.QuerySelector(".secret")!.TextContent.Replace(" ", "", StringComparison.Ordinal);
        var first = CodeNow(key);
        var answer = await visitor.SubmitAsync(page, new() { ["Code"] = first }, within: "form[action*='handler=Confirm']");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var codes = (await Visitor.ParseAsync(answer)).QuerySelectorAll(".secret").Select(c => c.TextContent).ToList();
        return (person.Email!, key, codes, first);
    }

    private async Task<Visitor> PasswordStepAsync(string email)
    {
        var visitor = _server.Visitor();
        var answer = await visitor.SubmitAsync(await visitor.GetAsync("/sign-in?back=%2Fperson"), new() { ["Input.Email"] = email, ["Input.Password"] = TestServer.Password });
        Assert.StartsWith("/sign-in/code", answer.Headers.Location!.OriginalString, StringComparison.Ordinal);
        return visitor;
    }

    private static async Task<HttpResponseMessage> CodeAsync(Visitor visitor, string code) =>
        await visitor.SubmitAsync(await visitor.GetAsync("/sign-in/code?back=%2Fperson"), new() { ["Input.Code"] = code });

    private static async Task<HttpResponseMessage> RecoverAsync(Visitor visitor, string code) =>
        await visitor.SubmitAsync(await visitor.GetAsync("/sign-in/recovery"), new() { ["Input.Code"] = code });

    private string CodeNow(string key, int secondsOff = 0)
    {
        var bits = string.Concat(key.Select(c => Convert.ToString("ABCDEFGHIJKLMNOPQRSTUVWXYZ234567".IndexOf(c, StringComparison.Ordinal), 2).PadLeft(5, '0')));
        var secret = bits.Chunk(8).Where(b => b.Length == 8).Select(b => Convert.ToByte(new string(b), 2)).ToArray();
        var counter = BitConverter.GetBytes((_server.Clock.GetUtcNow().ToUnixTimeSeconds() + secondsOff) / 30);
        if (BitConverter.IsLittleEndian)
            Array.Reverse(counter);
#pragma warning disable CA5350 // The standard's algorithm.
        var hash = HMACSHA1.HashData(secret, counter);
#pragma warning restore CA5350
        var at = hash[19] & 15;
        var number = ((hash[at] & 0x7F) << 24) | (hash[at + 1] << 16) | (hash[at + 2] << 8) | hash[at + 3];
        return (number % 1_000_000).ToString("D6", CultureInfo.InvariantCulture);
    }
}
