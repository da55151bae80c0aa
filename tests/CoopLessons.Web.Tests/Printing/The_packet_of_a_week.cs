using System.Net;
using CoopLessons.Core.Prepare;
using CoopLessons.Data.Prepare;
using CoopLessons.Data.Prepare.Printing;
using CoopLessons.Web.Files;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Documents;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using UglyToad.PdfPig;

namespace CoopLessons.Web.Tests.Printing;

[Collection(PlanningServer.Name)]
public sealed class The_packet_of_a_week(TestServer server)
{
    /// <summary>Both printables with their files: a page for each child, and two pages for each.</summary>
    private async Task<PrintingFamily> ReadyAsync()
    {
        var family = await PrintingFamily.MakeAsync(server);
        using var one = await family.BringAsync(SamplePages.Sheet("gluten-test"), "test.pdf");
        using var two = await family.BringAsync(SamplePages.Sheet("mill-visit"), "visit.pdf", PrintingFamily.Map);
        return family;
    }

    // By hand: the divider with a blank back, two single copies with blank backs, two copies of a front and a back: 10 sides
    // on 5 sheets, 7 of them grey. 7 × 2.5 + 5 × 1 = 22.5 cents, which is told as 23.
    [Fact]
    public async Task Says_what_it_takes_and_costs_before_it_is_printed()
    {
        var family = await ReadyAsync();
        var page = await family.Guardian.GetAsync(family.Packet);
        Assert.Equal("5 sheets", page.QuerySelector("#sheets")!.TextContent);
        Assert.Equal("10 sides: 7 grey, 3 left blank", page.QuerySelector("#sides")!.TextContent);
        Assert.StartsWith("$0.23 at", page.QuerySelector("#cost")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("1 page each for Heron and Wren", page.Body!.TextContent, StringComparison.Ordinal);
    }

    // Reference programs: qpdf and pdfinfo; PdfPig reads what stands on the pages.
    [TheoryBeside("qpdf", "pdfinfo")]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Comes_out_as_it_was_announced(bool both)
    {
        var family = await ReadyAsync();
        var page = await family.Guardian.GetAsync(family.Packet);
        if (!both)
        {
            using var said = await family.Guardian.SubmitAsync(page, within: "input[name=both]");
            page = await family.Guardian.GetAsync(family.Packet);
        }

        var announced = page.QuerySelector("#sides")!.TextContent.Split(' ')[0];
        Assert.Equal(both ? "10" : "7", announced);
        var pdf = await family.PacketPdfAsync();
        using var bench = new Workbench();
        var (code, output, errors) = await ReferenceProgram.Named("qpdf").Run("--check", bench.Put("packet.pdf", pdf));
        Assert.True(code == 0 && errors.Length == 0, output + errors);
        var (_, about, _) = await ReferenceProgram.Named("pdfinfo").Run(bench.Put("packet.pdf", pdf));
        Assert.Matches($@"Pages:\s+{announced}\n", about);

        using var read = PdfDocument.Open(pdf);
        var divider = string.Join(' ', read.GetPage(1).GetWords().Select(w => w.Text));
        foreach (var words in new[] { "Science", "Thursday 12 March", "for Heron and Wren", "Raw flour is not eaten.", "Wren is allergic to it", "do not replace your own judgement", "Part 1 of 1", $"sheets 1 to {(both ? 5 : 7)} of {(both ? 5 : 7)}" })
            Assert.Contains(words, divider, StringComparison.Ordinal);
        Assert.DoesNotContain("is safe", divider, StringComparison.OrdinalIgnoreCase);
        Assert.StartsWith("Heron", string.Join(' ', read.GetPage(both ? 3 : 2).GetWords().Select(w => w.Text)), StringComparison.Ordinal);
        Assert.StartsWith("Wren", string.Join(' ', read.GetPage(both ? 5 : 3).GetWords().Select(w => w.Text)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_fetched_without_changing_anything_and_under_a_name_of_its_week()
    {
        var family = await ReadyAsync();
        using var answer = await family.Guardian.OpenAsync(family.Packet + ".pdf");
        Assert.Equal("attachment", answer.Content.Headers.ContentDisposition!.DispositionType);
        Assert.Equal("packet-2026-w11.pdf", answer.Content.Headers.ContentDisposition.FileName);
        Assert.Empty(await family.Family.FromDbAsync(db => db.PrintedPackets.ToListAsync()));
        using var first = await family.Guardian.OpenAsync(family.Packet + ".pdf");
        Assert.Equal(await answer.Content.ReadAsByteArrayAsync(), await first.Content.ReadAsByteArrayAsync());
    }

    [Fact]
    public async Task Prints_alone_what_changed_after_it_was_printed()
    {
        var family = await ReadyAsync();
        var page = await family.Guardian.GetAsync(family.Packet);
        using var printed = await family.Guardian.SubmitAsync(page, within: "input[name=printing]");
        using var twice = await family.Guardian.SubmitAsync(page, within: "input[name=printing]");
        Assert.Equal(HttpStatusCode.Redirect, twice.StatusCode);
        Assert.Single(await family.Family.FromDbAsync(db => db.PrintedPackets.ToListAsync()));

        page = await family.Guardian.GetAsync(family.Packet);
        Assert.Contains("Nothing changed since.", page.Body!.TextContent, StringComparison.Ordinal);
        Assert.Null(page.QuerySelector("a[href*='changed']"));
        using var nothing = await family.Guardian.OpenAsync(family.Packet + ".pdf?changed=true");
        Assert.Equal(HttpStatusCode.Redirect, nothing.StatusCode);

        // In colour from now on: both copies of that sheet, and the divider before them.
        using var looked = await family.Guardian.SubmitAsync(page, new() { ["colour"] = "true" }, within: "form:has(input[name=sourceId])");
        page = await family.Guardian.GetAsync(family.Packet);
        Assert.Contains("Since then 3 sheets changed: 5 sides: 1 grey, 2 in colour, 2 left blank", page.Body!.TextContent, StringComparison.Ordinal);
        using var changed = PdfDocument.Open(await family.PacketPdfAsync(changed: true));
        Assert.Equal(5, changed.NumberOfPages);
        Assert.Equal(10, PdfDocument.Open(await family.PacketPdfAsync()).NumberOfPages);

        using var again = await family.Guardian.SubmitAsync(page, within: "input[name=printing]");
        Assert.Contains("Nothing changed since.", (await family.Guardian.GetAsync(family.Packet)).Body!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_not_written_down_as_printed_where_it_changed_under_the_page()
    {
        var family = await ReadyAsync();
        var page = await family.Guardian.GetAsync(family.Packet);
        using var looked = await family.Guardian.SubmitAsync(page, new() { ["two"] = "true" }, within: "form:has(input[name=sourceId])");
        using var answer = await family.Guardian.SubmitAsync(page, within: "input[name=printing]");
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Empty(await family.Family.FromDbAsync(db => db.PrintedPackets.ToListAsync()));
    }

    [Fact]
    public async Task Leaves_out_what_has_no_file_and_says_so()
    {
        var family = await PrintingFamily.MakeAsync(server);
        var page = await family.Guardian.GetAsync(family.Packet);
        Assert.Equal([PrintingFamily.Record, PrintingFamily.Map], page.QuerySelectorAll("[aria-labelledby=missing] b").Select(b => b.TextContent));
        Assert.NotNull(page.QuerySelector($"[aria-labelledby=missing] a[href='{family.Prints}']"));
        using var answer = await family.Guardian.OpenAsync(family.Packet + ".pdf");
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
    }

    [Fact]
    public async Task Costs_what_the_family_pays()
    {
        var family = await ReadyAsync();
        var prices = await family.Guardian.GetAsync("/week/packet/prices?back=2026-W11");
        Assert.Equal("2.5", prices.QuerySelector("[name='Input.Grey']")!.GetAttribute("value"));
        using var wrong = await family.Guardian.SubmitAsync(prices, new() { ["Input.Grey"] = "2.55", ["Input.Sheet"] = "-1" });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.StatusCode);
        Assert.Equal(2, (await Visitor.ParseAsync(wrong)).QuerySelectorAll(".field-validation-error").Length);
        using var huge = await family.Guardian.SubmitAsync(prices, new() { ["Input.Grey"] = new string('9', 28), ["Input.Sheet"] = new string('9', 40) });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, huge.StatusCode);
        Assert.Equal(2, (await Visitor.ParseAsync(huge)).QuerySelectorAll(".field-validation-error").Length);

        using var saved = await family.Guardian.SubmitAsync(prices, new() { ["Input.Grey"] = "4,1", ["Input.Sheet"] = "1.5", ["Input.Paper"] = "A4" });
        Assert.Equal(family.Packet, saved.Headers.Location!.OriginalString);
        // 7 × 4.1 + 5 × 1.5 = 36.2 cents.
        Assert.StartsWith("$0.37", (await family.Guardian.GetAsync(family.Packet)).QuerySelector("#cost")!.TextContent, StringComparison.Ordinal);
        using var read = PdfDocument.Open(await family.PacketPdfAsync());
        Assert.Equal(842, read.GetPage(1).Height, 0.5);
    }

    [Fact]
    public async Task Is_made_one_at_a_time_and_tells_whoever_finds_too_many_waiting()
    {
        var family = await ReadyAsync();
        var room = server.Services.GetRequiredService<FileRoom>();
        var waiting = Enumerable.Range(0, FileRoom.MostWaiting + 1).Select(_ => room.EnterAsync(Guid.NewGuid(), CancellationToken.None)).ToList();
        using var refused = await family.Guardian.OpenAsync(family.Packet + ".pdf");
        Assert.Equal(HttpStatusCode.Redirect, refused.StatusCode);
        Assert.Contains("Try again in a minute", (await family.Guardian.GetAsync(family.Packet)).Body!.TextContent, StringComparison.Ordinal);
        foreach (var turn in waiting)
            (await turn)!.Dispose();
        Assert.NotEmpty(await family.PacketPdfAsync());
    }

    [Fact]
    public async Task Is_made_for_a_family_once_at_a_time()
    {
        var family = await ReadyAsync();
        using (await server.Services.GetRequiredService<FileRoom>().EnterAsync(family.Family.Id, CancellationToken.None))
        {
            using var refused = await family.Guardian.OpenAsync(family.Packet + ".pdf");
            Assert.Equal(HttpStatusCode.Redirect, refused.StatusCode);
        }

        Assert.NotEmpty(await family.PacketPdfAsync());
    }

    // A file of 300 pages in six ways of one copy for each of two children: 3,600 sides, and the divider's front and back.
    [Fact]
    public async Task Is_not_made_where_it_is_longer_than_anybody_prints()
    {
        var family = await PrintingFamily.MakeAsync(server);
        using var brought = await family.BringAsync(SamplePages.Blank(300), "long.pdf");
        await family.Family.WithDbAsync(async db =>
        {
            (await db.PrintSources.SingleAsync()).Choose(Enumerable.Repeat(CoopLessons.Core.Prepare.Printing.PrintChoice.Usual, PrintSource.MostChoices));
            await db.SaveChangesAsync();
        });

        var page = await family.Guardian.GetAsync(family.Packet);
        Assert.StartsWith("This would be 3,602 sides; 2,000 are the most", page.QuerySelector("#too-long")!.TextContent, StringComparison.Ordinal);
        Assert.Empty(page.QuerySelectorAll("a[href*='.pdf'], input[name=printing]"));
        using var refused = await family.Guardian.OpenAsync(family.Packet + ".pdf");
        Assert.Equal(family.Packet, refused.Headers.Location!.OriginalString);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(400)]
    [InlineData(9_000)]
    public async Task Names_the_printable_whose_file_was_damaged(int left)
    {
        var family = await ReadyAsync();
        var hash = await family.Family.FromDbAsync(db => db.PrintSources.Where(s => s.Printable == PrintingFamily.Map).Select(s => s.Hash).SingleAsync());
        var path = family.PathOf(hash);
        await File.WriteAllBytesAsync(path, (await File.ReadAllBytesAsync(path))[..left]);
        using var refused = await family.Guardian.OpenAsync(family.Packet + ".pdf");

        Assert.Equal(HttpStatusCode.Redirect, refused.StatusCode);
        Assert.Contains($"The file of “{PrintingFamily.Map}” cannot be read any more.", (await family.Guardian.GetAsync(family.Packet)).Body!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_told_alike_by_the_list_where_a_file_is_gone_from_the_folder()
    {
        var family = await PrintingFamily.MakeAsync(server);
        using var one = await family.BringAsync(SamplePages.Sheet("gluten-test"), "test.pdf");
        File.Delete(family.PathOf(Assert.Single(await family.OnShelfAsync())));

        Assert.Equal("Bring files for 2 printables", Assert.Single(await TasksAsync(family)).What);
        Assert.Contains("Bring files for 2 printables", (await family.Guardian.GetAsync($"/week/ready/{PrintingFamily.Week}")).Body!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_a_thing_to_do_by_the_Sunday_before()
    {
        var family = await PrintingFamily.MakeAsync(server);
        Assert.Equal([("Bring files for 2 printables", $"{PrintingFamily.Record}, {PrintingFamily.Map}")], (await TasksAsync(family)).Select(t => (t.What, t.For)));

        using var one = await family.BringAsync(SamplePages.Sheet("gluten-test"), "test.pdf");
        var tasks = await TasksAsync(family);
        Assert.Equal([$"Bring a file for “{PrintingFamily.Map}”", "Print the packet"], tasks.Select(t => t.What));
        Assert.Equal([family.Prints, family.Packet], tasks.Select(t => t.Link));
        Assert.All(tasks, t => Assert.Equal((ReadyKind.Print, new DateOnly(2026, 3, 8), false), (t.Kind, t.By, t.Done)));

        using var printed = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(family.Packet), within: "input[name=printing]");
        Assert.True((await TasksAsync(family))[^1].Done);
        using var two = await family.BringAsync(SamplePages.Sheet("mill-visit"), "visit.pdf", PrintingFamily.Map);
        Assert.Equal(("Print what changed in the packet", false), ((await TasksAsync(family))[^1].What, (await TasksAsync(family))[^1].Done));
    }

    [Theory]
    [InlineData("/week/packet/2026-W60")]
    [InlineData("/week/packet/nowhere")]
    [InlineData("/week/packet/2026-W60.pdf")]
    public async Task Is_of_a_week_that_there_is(string path)
    {
        var family = await server.FamilyAsync();
        using var answer = await family.Guardian.OpenAsync(path);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    private static Task<IReadOnlyList<ReadyTask>> TasksAsync(PrintingFamily family) => family.Family.FromDbAsync(async db =>
    {
        Assert.True(CoopLessons.Core.Calendar.Week.TryParse(PrintingFamily.Week, out var week));
        var held = await family.Shelf.HeldForPrintAsync(db, default);
        return await PacketTasks.OfAsync(db, await ReadyWeek.LoadAsync(db, week, default), TestServer.Today, held.Contains, default);
    });
}
