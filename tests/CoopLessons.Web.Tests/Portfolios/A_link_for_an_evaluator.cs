using System.Net;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Documents;
using CoopLessons.Web.Tests.Records;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Portfolios;

[Collection(PlanningServer.Name)]
public sealed class A_link_for_an_evaluator(TestServer server)
{
    [Fact]
    public async Task Shows_one_childs_year_to_somebody_who_signs_in_nowhere()
    {
        var year = await YearOfWork.OfAsync(server);
        await year.Log.WriteAsync(new(2025, 9, 8), 90, [("science", 1)], what: "Seeds");
        var mine = await year.PhotoAsync(new(2025, 9, 4), caption: "First seeds");
        var link = await GiveAsync(year);
        var stranger = server.Visitor();
        var page = await stranger.GetAsync(link);
        Assert.Contains("Linnet", page.QuerySelector("h1")!.Plain(), StringComparison.Ordinal);
        Assert.Contains("1:30 in hours and minutes", page.Plain(), StringComparison.Ordinal);
        Assert.Contains("First seeds", page.Plain(), StringComparison.Ordinal);
        using var picture = await stranger.OpenAsync($"{link}/sample/{mine}");
        Assert.Equal(("image/jpeg", "no-store, private"), (picture.Content.Headers.ContentType!.MediaType, picture.Headers.CacheControl!.ToString()));
        using var paper = await stranger.OpenAsync($"{link}/portfolio.pdf");
        Assert.Contains("First seeds", PaperReader.AllText(await paper.Content.ReadAsByteArrayAsync()), StringComparison.Ordinal);
        using var first = await stranger.OpenAsync(link);
        Assert.Equal(("no-referrer", "noindex, nofollow"), (first.Headers.GetValues("Referrer-Policy").Single(), first.Headers.GetValues("X-Robots-Tag").Single()));
    }

    [Fact]
    public async Task Lists_each_look_for_the_family()
    {
        var year = await YearOfWork.OfAsync(server);
        var mine = await year.PhotoAsync(new(2025, 9, 4), caption: "First seeds");
        var link = await GiveAsync(year);
        var stranger = server.Visitor();
        await stranger.GetAsync(link);
        using var small = await stranger.OpenAsync($"{link}/sample/{mine}?small=true");
        using var large = await stranger.OpenAsync($"{link}/sample/{mine}");
        using var paper = await stranger.OpenAsync($"{link}/portfolio.pdf");
        var page = await year.Guardian.GetAsync(Readers(year));
        // All in one moment of the test's clock, so that none is the latest.
        Assert.Equal(["a sample of 2025-09-04", "the PDF", "the page"], page.Texts("details li .row-main").Order(StringComparer.Ordinal));
        Assert.Contains("Opened 3 times", page.Plain(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Shows_no_other_childs_face_or_name()
    {
        var year = await YearOfWork.OfAsync(server);
        await year.Log.WriteAsync(new(2025, 9, 8), 90, [("science", 1)], what: "Seeds with Wren", who: ["Linnet", "Wren"]);
        var both = await year.PhotoAsync(new(2025, 9, 4), caption: "Both of us", setAside: true, who: ["Linnet", "Wren"]);
        var faces = await year.PhotoAsync(new(2026, 1, 4), caption: "My face", setAside: true, facesOut: true);
        var wrens = await year.PhotoAsync(new(2026, 2, 4), caption: "Only Wren", who: ["Wren"]);
        var mine = await year.PhotoAsync(new(2026, 3, 4), caption: "Wren held the ruler", setAside: true);
        await WriteAboutAsync(year, "She helps Wren.");
        await year.Family.WithDbAsync(async db =>
        {
            (await db.Subjects.SingleAsync(s => s.Code == "science")).Rename("Science with Wren");
            (await db.Families.SingleAsync()).CountBy("We count what Wren hears, too.", new Core.Hours.Minutes(180));
            await db.SaveChangesAsync();
        });
        var link = await GiveAsync(year, "Days", "Reading", "Subjects", "OwnSubjects", "Missing", "Pairs", "Log");
        var stranger = server.Visitor();
        var page = (await stranger.GetAsync(link)).DocumentElement.OuterHtml;
        using var paper = await stranger.OpenAsync($"{link}/portfolio.pdf");
        var pdf = PaperReader.AllText(await paper.Content.ReadAsByteArrayAsync());
        foreach (var text in new[] { page, pdf })
        {
            Assert.DoesNotContain("Wren", text, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("Both of us", text, StringComparison.Ordinal);
            Assert.DoesNotContain("My face", text, StringComparison.Ordinal);
        }

        Assert.Contains("[another child] held the ruler", page, StringComparison.Ordinal);
        Assert.Contains("Seeds with [another child]", pdf, StringComparison.Ordinal);
        foreach (var hidden in new[] { both, faces, wrens })
        {
            using var answer = await stranger.OpenAsync($"{link}/sample/{hidden}");
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        }

        using var shown = await stranger.OpenAsync($"{link}/sample/{mine}");
        Assert.Equal((HttpStatusCode.OK, "sample-2026-03-04"), (shown.StatusCode, Path.GetFileNameWithoutExtension(shown.Content.Headers.ContentDisposition!.FileName!.Trim('"'))));
    }

    [Fact]
    public async Task Opens_nothing_but_what_was_chosen()
    {
        var year = await YearOfWork.OfAsync(server);
        var mine = await year.PhotoAsync(new(2025, 9, 4), caption: "First seeds");
        var link = await GiveAsync(year, "Days");
        var stranger = server.Visitor();
        Assert.DoesNotContain("First seeds", (await stranger.GetAsync(link)).Plain(), StringComparison.Ordinal);
        using var picture = await stranger.OpenAsync($"{link}/sample/{mine}");
        // The year before it, written under the same child.
        await year.Log.WriteAsync(new(2024, 9, 8), 90, [("science", 1)], what: "An older thing");
        Assert.DoesNotContain("An older thing", (await stranger.GetAsync(link)).Plain(), StringComparison.Ordinal);
        var other = await YearOfWork.OfAsync(server);
        var foreign = await other.PhotoAsync(new(2025, 9, 4));
        using var elsewhere = await stranger.OpenAsync($"{link}/sample/{foreign}");
        using var records = await stranger.OpenAsync("/records");
        Assert.Equal((HttpStatusCode.NotFound, HttpStatusCode.NotFound), (picture.StatusCode, elsewhere.StatusCode));
        Assert.NotEqual(HttpStatusCode.OK, records.StatusCode);
    }

    [Theory]
    [InlineData("")]
    [InlineData("/portfolio.pdf")]
    public async Task Is_nothing_after_its_end_withdrawn_or_guessed(string more)
    {
        var own = new OwnServer();
        await using var _ = own;
        var year = await YearOfWork.OfAsync(own);
        var (first, second) = (await GiveAsync(year), await GiveAsync(year));
        var stranger = own.Visitor();
        await stranger.GetAsync(first);
        using (await year.Guardian.SubmitAsync(await year.Guardian.GetAsync(Readers(year)), within: "form[action*=Withdraw]"))
        {
        }

        var answers = new List<HttpStatusCode>();
        foreach (var link in new[] { first, second, first[..^1] + (first[^1] == 'a' ? 'b' : 'a'), "/reader/" + new string('0', 64), "/reader/x" })
        {
            using var answer = await stranger.OpenAsync(link + more);
            answers.Add(answer.StatusCode);
        }

        Assert.Single(answers, a => a == HttpStatusCode.OK);
        Assert.Equal(4, answers.Count(a => a == HttpStatusCode.NotFound));
        own.Clock.Advance(TimeSpan.FromDays(31));
        foreach (var link in new[] { first, second })
        {
            using var answer = await stranger.OpenAsync(link + more);
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        }
    }

    [Theory]
    [InlineData("Input.EndsOn", "2026-03-11", "Choose a day from today")]
    [InlineData("Input.EndsOn", "2027-03-11", "Choose a day from today")]
    [InlineData("Input.Reader", "", "Say for whom it is")]
    [InlineData("Input.Parts", "Law", "cannot be given")]
    public async Task Is_not_made_with_what_cannot_be(string field, string value, string message)
    {
        var year = await YearOfWork.OfAsync(server);
        using var answer = await year.Guardian.SubmitAsync(await year.Guardian.GetAsync(Readers(year)), new() { ["Input.Reader"] = "M. Plover", [field] = value }, "input[name='Input.Reader']");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains(message, (await Visitor.ParseAsync(answer)).Plain(), StringComparison.Ordinal);
        Assert.Equal(0, await year.Family.FromDbAsync(db => db.ReaderLinks.CountAsync()));
    }

    [Fact]
    public async Task Holds_only_the_hash_of_its_secret()
    {
        var year = await YearOfWork.OfAsync(server);
        var link = await GiveAsync(year);
        var row = await year.Family.FromDbAsync(db => db.ReaderLinks.AsNoTracking().SingleAsync());
        Assert.DoesNotContain(link[^64..], row.SecretHash, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain(link[^20..], (await year.Guardian.GetAsync(Readers(year))).DocumentElement.OuterHtml, StringComparison.OrdinalIgnoreCase);
    }

    private static string Readers(YearOfWork year) => $"/records/readers?learner={year.Log.Linnet}&year={year.Log.YearId}";

    /// <summary>Makes a link and gives its path.</summary>
    private static async Task<string> GiveAsync(YearOfWork year, params string[] parts)
    {
        var fill = new Dictionary<string, string?> { ["Input.Reader"] = "M. Plover", ["Input.EndsOn"] = "2026-04-11" };
        if (parts.Length > 0)
            fill["Input.Parts"] = null;
        using var answer = await year.Guardian.SubmitAsync(
            await year.Guardian.GetAsync(Readers(year)), fill, "input[name='Input.Reader']", more: parts.Select(p => new KeyValuePair<string, string>("Input.Parts", p)));
        return new Uri((await Visitor.ParseAsync(answer)).QuerySelector("#address")!.GetAttribute("value")!).AbsolutePath;
    }

    private static async Task WriteAboutAsync(YearOfWork year, string words)
    {
        var page = await year.Guardian.GetAsync(year.Page);
        using var saved = await year.Guardian.SubmitAsync(page, new() { ["Input.Opening"] = words }, "form.wide");
        Assert.Equal(HttpStatusCode.Redirect, saved.StatusCode);
    }
}
