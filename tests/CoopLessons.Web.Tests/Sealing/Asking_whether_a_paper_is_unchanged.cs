using System.Net;
using System.Net.Http.Headers;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using CoopLessons.Core.Sealing;
using CoopLessons.Data.Files;
using CoopLessons.Data.Sealing;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Documents;
using CoopLessons.Web.Tests.Travel;
using CoopLessons.Web.Travel;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace CoopLessons.Web.Tests.Sealing;

[Collection(SharedServer.Name)]
public sealed class Asking_whether_a_paper_is_unchanged(TestServer server)
{
    // The server is shared, and two records that are alike in everything would be one: each family's child is called otherwise.
    private static string Name() => $"Wren {Guid.NewGuid():N}"[..30];

    [Fact]
    public async Task By_its_fingerprint_whole_or_short_tells_the_day_and_no_names()
    {
        var year = await FinishedYear.MakeAsync(server, wren: Name());
        var mark = await MarkAsync(year);
        foreach (var typed in new[] { mark.Groups, mark.ShortForm, mark.Hex.ToUpperInvariant(), mark.Hex[..20] })
        {
            var answer = await AskAsync(server.Visitor(), typed);
            Assert.Contains("This is the fingerprint of a school year as it was sealed on 12 March 2026.", answer, StringComparison.Ordinal);
            Assert.Contains("No amendment came since.", answer, StringComparison.Ordinal);
            Assert.DoesNotContain("Wren", answer, StringComparison.Ordinal);
            Assert.DoesNotContain("2024", answer, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task After_amendments_tells_how_many_and_of_the_newest_that_none_came()
    {
        var year = await FinishedYear.MakeAsync(server, wren: Name());
        var first = await MarkAsync(year);
        await year.AmendAsync();
        await year.AmendAsync(50, "Once more");
        Assert.Contains("2 amendments came since, the last on 12 March 2026", await AskAsync(server.Visitor(), first.Groups), StringComparison.Ordinal);
        var last = Fingerprint.Kept(await year.Family.FromDbAsync(db => db.Amendments.Where(a => a.LearnerId == year.Wren && a.Number == 2).Select(a => a.Fingerprint).SingleAsync()));
        var answer = await AskAsync(server.Visitor(), last.ShortForm);
        Assert.Contains("as it stood after amendment 2 of 12 March 2026", answer, StringComparison.Ordinal);
        Assert.Contains("No amendment came since.", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_told_where_a_family_brought_it_along_from_another_server()
    {
        var year = await FinishedYear.MakeAsync(server, wren: Name());
        var mark = await MarkAsync(year);
        await year.Family.WithDbAsync(db => db.KnownMarks.ExecuteUpdateAsync(s => s.SetProperty(m => m.GivenOutHere, false)));
        var answer = await AskAsync(server.Visitor(), mark.Groups);
        Assert.Contains("Brought here by a family", answer, StringComparison.Ordinal);
        Assert.Contains("This server cannot vouch for it", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("Known here", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Knows_the_papers_that_lie_in_a_familys_file()
    {
        var year = await FinishedYear.MakeAsync(server, wren: Name());
        using var file = new MemoryStream();
        await year.Family.WithDbAsync(db => OutWork.WriteAsync(db, server.Services.GetRequiredService<FileShelf>(), file, server.Clock, _ => { }, default));
        var papers = OpenedFile.Of(file.ToArray()).Entries.Where(e => e.Path.StartsWith("papers/", StringComparison.Ordinal)).ToList();
        var mark = await MarkAsync(year);
        var sealedOnes = papers.Where(p => PaperReader.AllText(p.Bytes).Contains(mark.Groups, StringComparison.Ordinal)).ToList();
        Assert.Equal(2, sealedOnes.Count);
        foreach (var paper in sealedOnes)
            Assert.Contains("This file is, byte for byte, as it was given out on 12 March 2026.", await AskAsync(server.Visitor(), Fingerprint.Of(paper.Bytes).Groups), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Knows_nothing_of_a_mark_whose_record_a_family_did_not_bring()
    {
        var year = await FinishedYear.MakeAsync(server, isSealed: false, wren: Name());
        var strange = Fingerprint.Of(Name());
        await year.Family.WithDbAsync(async db =>
        {
            db.KnownMarks.Add(new KnownMark(strange, MarkKind.Record, year.YearId, year.Wren, 0, FinishedYear.Sealed));
            await db.SaveChangesAsync();
        });
        Assert.Contains("Not known here", await AskAsync(server.Visitor(), strange.Groups), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Names_the_year_to_its_own_guardian_alone()
    {
        var (year, other) = (await FinishedYear.MakeAsync(server, wren: Name()), await FinishedYear.MakeAsync(server, name: "Birch", wren: Name()));
        var mark = await MarkAsync(year);
        Assert.Contains(", 2024–25.", await AskAsync(year.Guardian, mark.Groups), StringComparison.Ordinal);
        var foreign = await AskAsync(other.Guardian, mark.Groups);
        Assert.Contains("Known here", foreign, StringComparison.Ordinal);
        Assert.DoesNotContain("2024–25", foreign, StringComparison.Ordinal);
        Assert.DoesNotContain("2024–25", await AskAsync(await server.HelperAsync(year.Family), mark.Groups), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("hours.pdf")]
    [InlineData("reading.pdf")]
    public async Task By_its_file_is_known_to_the_byte(string paper)
    {
        var year = await FinishedYear.MakeAsync(server, wren: Name());
        var bytes = await PaperAsync(year, paper);
        var answer = await AskAsync(server.Visitor(), file: bytes);
        Assert.Contains("This file is, byte for byte, as it was given out on 12 March 2026.", answer, StringComparison.Ordinal);
        Assert.Contains("a school year that was sealed on 12 March 2026.", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("Wren", answer, StringComparison.Ordinal);

        await year.AmendAsync();
        Assert.Contains("1 amendment came since", await AskAsync(server.Visitor(), file: bytes), StringComparison.Ordinal);
        Assert.Contains("as it stood after amendment 1", await AskAsync(server.Visitor(), file: await PaperAsync(year, paper)), StringComparison.Ordinal);

        bytes[^30] ^= 1;
        answer = await AskAsync(server.Visitor(), file: bytes);
        Assert.Contains("Not known here", answer, StringComparison.Ordinal);
        Assert.Contains("printed and scanned is another file", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_written_down_once_however_often_the_paper_is_fetched_and_never_for_an_open_year()
    {
        var year = await FinishedYear.MakeAsync(server, wren: Name());
        await PaperAsync(year, "hours.pdf");
        await PaperAsync(year, "hours.pdf");
        var open = await year.Family.FromDbAsync(db => db.SchoolYears.Where(y => y.Id != year.YearId).Select(y => y.Id).SingleAsync());
        using var other = await year.Guardian.OpenAsync($"/records/{year.Wren}/{open}/hours.pdf");
        Assert.Equal(HttpStatusCode.OK, other.StatusCode);
        var row = Assert.Single(await year.Family.FromDbAsync(db => db.PapersMade.ToListAsync()));
        Assert.Equal(("hours", year.Wren, year.YearId, FinishedYear.Sealed), (row.Kind, row.LearnerId, row.SchoolYearId, row.MadeOn));
    }

    [Theory]
    [InlineData("", "Paste a fingerprint, or choose a file.")]
    [InlineData("Wren", "A fingerprint is made of the digits 0 to 9 and the letters a to f")]
    [InlineData("abcdef", "A fingerprint is made of the digits 0 to 9 and the letters a to f")]
    public async Task Says_what_is_wrong_with_what_was_pasted_and_keeps_it(string typed, string fault)
    {
        var visitor = server.Visitor();
        using var answer = await SendAsync(visitor, await visitor.GetAsync("/papers/check"), typed, null);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var page = await Visitor.ParseAsync(answer);
        Assert.StartsWith(fault, page.QuerySelector("#mark-fault")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(typed, page.QuerySelector<IHtmlTextAreaElement>("#mark")!.Value);
    }

    [Fact]
    public async Task Says_plainly_that_digits_are_unknown() =>
        Assert.Contains("No sealed year of this server has this fingerprint.", await AskAsync(server.Visitor(), "0123-4567-89ab"), StringComparison.Ordinal);

    [Fact]
    public async Task Is_braked_as_other_secrets_are()
    {
        await using var own = new OwnServer(new KeyValuePair<string, string>("CoopLessons:TriesPerMinute", "2"));
        var visitor = own.Visitor();
        var statuses = new List<HttpStatusCode>();
        for (var i = 0; i < 3; i++)
        {
            using var answer = await SendAsync(visitor, await visitor.GetAsync("/papers/check"), "0123-4567-89ab", null);
            statuses.Add(answer.StatusCode);
        }

        Assert.Equal([HttpStatusCode.OK, HttpStatusCode.OK, HttpStatusCode.TooManyRequests], statuses);
    }

    [Fact]
    public async Task How_it_is_recomputed_is_open_to_all() =>
        Assert.Contains("jq -jcS . record.json | sha256sum", (await server.Visitor().GetAsync("/papers/record")).Body!.TextContent, StringComparison.Ordinal);

    [Fact]
    public async Task Stands_on_the_papers_in_full_and_at_the_foot_of_each_sheet()
    {
        var year = await FinishedYear.MakeAsync(server, wren: "Wren");
        await year.AmendAsync();
        var mark = Fingerprint.Kept(await year.Family.FromDbAsync(db => db.Amendments.Where(a => a.LearnerId == year.Wren).Select(a => a.Fingerprint).SingleAsync()));
        foreach (var paper in new[] { "hours.pdf", "reading.pdf" })
        {
            var text = PaperReader.AllText(await PaperAsync(year, paper));
            Assert.Contains(mark.Groups, text, StringComparison.Ordinal);
            Assert.Contains($"Sealed and amended, fingerprint {mark.ShortForm}", text, StringComparison.Ordinal);
            Assert.Contains("sealed on 12 March 2026 and amended since: 1 amendment, the last on 12 March 2026", text, StringComparison.Ordinal);
        }

        using var csv = await year.Guardian.OpenAsync($"/records/{year.Wren}/{year.YearId}/hours.csv");
        var rows = await csv.Content.ReadAsStringAsync();
        Assert.Contains($"about,fingerprint,,,,,,,{mark.Groups}\r\n", rows, StringComparison.Ordinal);
        Assert.Contains("about,sealed on,,,,,,,2026-03-12\r\n", rows, StringComparison.Ordinal);
        Assert.Contains("about,amendments,,,,,,,\"1 amendment, the last on 12 March 2026\"\r\n", rows, StringComparison.Ordinal);
    }

    private static async Task<Fingerprint> MarkAsync(FinishedYear year) =>
        Fingerprint.Kept(await year.Family.FromDbAsync(db => db.SealedRecords.Where(r => r.LearnerId == year.Wren).Select(r => r.Fingerprint).SingleAsync()));

    private static async Task<byte[]> PaperAsync(FinishedYear year, string paper)
    {
        using var answer = await year.Guardian.OpenAsync($"/records/{year.Wren}/{year.YearId}/{paper}");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await answer.Content.ReadAsByteArrayAsync();
    }

    private static async Task<string> AskAsync(Visitor visitor, string typed = "", byte[]? file = null)
    {
        using var answer = await SendAsync(visitor, await visitor.GetAsync("/papers/check"), typed, file);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return (await Visitor.ParseAsync(answer)).QuerySelector("#answer")!.TextContent;
    }

    private static Task<HttpResponseMessage> SendAsync(Visitor visitor, IHtmlDocument page, string typed, byte[]? file)
    {
        var content = new MultipartFormDataContent();
        foreach (var (name, value) in Visitor.FieldsOf(page.QuerySelector("main form")!).Where(f => f.Key != "Mark").Append(new("Mark", typed)))
            content.Add(new StringContent(value), name);
        if (file is not null)
            content.Add(new ByteArrayContent(file) { Headers = { ContentType = new MediaTypeHeaderValue("application/pdf") } }, "file", "paper.pdf");
        return visitor.SendAsync(new HttpRequestMessage(HttpMethod.Post, "/papers/check") { Content = content });
    }
}
