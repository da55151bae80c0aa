using System.Net;
using CoopLessons.Web.Hosting;
using CoopLessons.Web.Tests.App;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.TestHost;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using TestServer = CoopLessons.Web.Tests.App.TestServer;

namespace CoopLessons.Web.Tests.Account;

public sealed class AnEmptyServer
{
    private static Dictionary<string, string?> Founder(string email) => new()
    {
        ["Input.Name"] = "Iris",
        ["Input.Email"] = email,
        ["Input.Password"] = TestServer.Password,
        ["Input.FamilyName"] = "Alder",
        ["Input.TimeZone"] = "America/Denver",
    };

    [Fact]
    public async Task Is_claimed_by_founding_the_first_family()
    {
        using var server = new TestServer();
        var visitor = server.Visitor();
        Assert.Equal("/first-run", (await visitor.OpenAsync("/")).Headers.Location!.OriginalString);
        var answer = await visitor.SubmitAsync(await visitor.GetAsync("/first-run"), Founder("iris@millrace.example"));
        Assert.Equal("/family", answer.Headers.Location!.OriginalString);
        var family = await visitor.GetAsync("/family");
        Assert.Equal("Alder", family.QuerySelector("h1")!.TextContent);
        Assert.Contains("America/Denver", family.Body!.TextContent, StringComparison.Ordinal);

        Assert.Equal(HttpStatusCode.NotFound, (await server.Visitor().OpenAsync("/first-run")).StatusCode);
        Assert.Equal("/sign-in", (await server.Visitor().OpenAsync("/")).Headers.Location!.OriginalString);
    }

    [Fact]
    public async Task Is_claimed_once_by_two_who_come_at_the_same_moment()
    {
        using var server = new TestServer();
        var visitors = new[] { server.Visitor(), server.Visitor() };
        var pages = await Task.WhenAll(visitors.Select(v => v.GetAsync("/first-run")));
        var answers = await Task.WhenAll(visitors.Select((v, i) => v.SubmitAsync(pages[i], Founder($"iris{i}@millrace.example"))));
        Assert.Equal([HttpStatusCode.Redirect, HttpStatusCode.Conflict], answers.Select(a => a.StatusCode).Order());
        Assert.Equal(1, await server.FromDbAsync(null, db => db.Users.CountAsync()));
    }

    [Fact]
    public async Task Keeps_what_was_typed_when_something_is_amiss()
    {
        using var server = new TestServer();
        var visitor = server.Visitor();
        var page = await visitor.GetAsync("/first-run");
        (string Field, string? Value)[] wrong =
        [
            ("Input.Name", ""), ("Input.Name", new string('n', 10_000)), ("Input.Name", "\u202E\u200B"), ("Input.Email", "nobody"),
            ("Input.Email", new string('e', 10_000) + "@millrace.example"), ("Input.Password", "short"), ("Input.Password", "passwordpassword"),
            ("Input.Password", new string('p', 201)), ("Input.FamilyName", null), ("Input.TimeZone", "Mars/Base"), ("Input.TimeZone", ""),
        ];
        foreach (var (field, value) in wrong)
        {
            var fill = Founder("iris@millrace.example");
            fill[field] = value;
            var answer = await visitor.SubmitAsync(page, fill);
            Assert.True(answer.StatusCode == HttpStatusCode.UnprocessableEntity, $"{field}={value?[..Math.Min(20, value.Length)]} answered {answer.StatusCode}");
            var shown = await Visitor.ParseAsync(answer);
            Assert.NotEmpty(shown.QuerySelectorAll($"[data-valmsg-for='{field}'], #{field.Replace('.', '_')} ~ .field-validation-error").Select(e => e.TextContent).First());
            if (field != "Input.FamilyName")
                Assert.Equal("Alder", shown.QuerySelector("#Input_FamilyName")!.GetAttribute("value"));
        }

        Assert.Equal(0, await server.FromDbAsync(null, db => db.Users.CountAsync()));
    }

    [Fact]
    public async Task Takes_in_the_invented_coop_and_shows_its_sign_ins_once()
    {
        using var server = new TestServer();
        // A year of the co-op's is finished by then.
        server.Clock.SetUtcNow(new DateTimeOffset(2026, 9, 15, 15, 0, 0, TimeSpan.Zero));
        var visitor = server.Visitor();
        var answer = await visitor.SubmitAsync(await visitor.GetAsync("/first-run"), within: "form[action*='handler=Demo']");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var page = await Visitor.ParseAsync(answer);
        Assert.Equal(["Alder", "Birch", "Cedar", "Dogwood"], page.QuerySelectorAll("section h2").Select(h => h.TextContent));
        var password = page.QuerySelector(".secret")!.TextContent;
        Assert.Equal(20, password.Count(char.IsAsciiLetterOrDigit));
        Assert.NotEqual(TestServer.Password, password);

        var emails = page.QuerySelectorAll(".row-side").Select(e => e.TextContent).ToList();
        Assert.True(emails.Count >= 4);
        await server.SignInAsync(emails[^1], password);

        var records = page.QuerySelector("a.primary")!.GetAttribute("href")!;
        Assert.StartsWith("/records?year=", records, StringComparison.Ordinal);
        Assert.Contains("2025–26", (await visitor.GetAsync(records)).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.OpenAsync("/first-run")).StatusCode);
    }

    [Fact]
    public async Task Asks_other_machines_for_the_word_in_its_log()
    {
        using var server = new ServerReachedFromElsewhere();
        var visitor = server.Visitor();
        var page = await visitor.GetAsync("/first-run");
        foreach (var word in new[] { "", "guess", new string('x', 10_000) })
        {
            var fill = Founder("iris@millrace.example");
            fill["Word"] = word;
            var refused = await visitor.SubmitAsync(page, fill);
            Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
            var shown = await Visitor.ParseAsync(refused);
            Assert.NotEmpty(shown.QuerySelector("#found-word-fault")!.TextContent);
            Assert.Null(shown.QuerySelector("#demo-word-fault"));
            Assert.Equal("Alder", shown.QuerySelector("#Input_FamilyName")!.GetAttribute("value"));
        }

        var demo = await visitor.SubmitAsync(page, new() { ["Word"] = "guess" }, within: "form[action*='handler=Demo']");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, demo.StatusCode);
        Assert.NotNull((await Visitor.ParseAsync(demo)).QuerySelector("#demo-word-fault"));
        Assert.Equal(0, await server.FromDbAsync(null, db => db.Users.CountAsync()));

        var right = Founder("iris@millrace.example");
        right["Word"] = server.Services.GetRequiredService<FirstRunWord>().Word.ToUpperInvariant();
        Assert.Equal(HttpStatusCode.Redirect, (await visitor.SubmitAsync(page, right)).StatusCode);
    }

    [Fact]
    public async Task Brakes_those_who_guess()
    {
        using var server = new ServerReachedFromElsewhere(new KeyValuePair<string, string>("CoopLessons:TriesPerMinute", "3"));
        var visitor = server.Visitor();
        var page = await visitor.GetAsync("/first-run");
        var statuses = new List<HttpStatusCode>();
        HttpResponseMessage last = null!;
        for (var i = 0; i < 4; i++)
            statuses.Add((last = await visitor.SubmitAsync(page, new() { ["Word"] = "guess" })).StatusCode);
        Assert.Equal([HttpStatusCode.UnprocessableEntity, HttpStatusCode.UnprocessableEntity, HttpStatusCode.UnprocessableEntity, HttpStatusCode.TooManyRequests], statuses);
        Assert.Equal("60", Assert.Single(last.Headers.GetValues("Retry-After")));
    }

    /// <summary>Every request comes from 203.0.113.5, an address kept for documentation (RFC 5737).</summary>
    private sealed class ServerReachedFromElsewhere(params KeyValuePair<string, string>[] settings)
        : TestServer([new("CoopLessons:PlainHttpBeyondThisMachine", "true"), .. settings])
    {
        protected override void ConfigureWebHost(IWebHostBuilder builder)
        {
            base.ConfigureWebHost(builder);
            builder.ConfigureTestServices(s => s.AddSingleton<IStartupFilter>(new FromElsewhere()));
        }

        private sealed class FromElsewhere : IStartupFilter
        {
            public Action<IApplicationBuilder> Configure(Action<IApplicationBuilder> next) => app =>
            {
                app.Use((context, more) =>
                {
                    context.Connection.RemoteIpAddress = IPAddress.Parse("203.0.113.5");
                    return more(context);
                });
                next(app);
            };
        }
    }
}
