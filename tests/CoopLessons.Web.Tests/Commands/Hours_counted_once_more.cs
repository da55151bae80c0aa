using System.Globalization;
using System.IO.Compression;
using System.Xml.Linq;
using CoopLessons.Core.Hours;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Records;
using CsvHelper;
using Microsoft.EntityFrameworkCore;
using UglyToad.PdfPig;
using UglyToad.PdfPig.DocumentLayoutAnalysis.TextExtractor;

namespace CoopLessons.Web.Tests.Commands;

/// <summary>One number everywhere: page, CSV, workbook, paper, command, and the database's own sum.</summary>
[Collection(SharedServer.Name)]
public sealed class Hours_counted_once_more(TestServer server)
{
    private const string Hostile = "=SUM(A1)\"; DROP TABLE x; -- <b>🌾";

    [Fact]
    public async Task Are_the_same_in_every_form()
    {
        var log = await LogAsync();
        var sql = new SumsInSql(server.Database, log.Family.Id, log.Linnet, new(2025, 7, 1), new(2026, 6, 30));
        var total = (await sql.TotalAsync())["total"];
        var clock = new Minutes(total).Clock;
        Assert.Equal(1441 + 50 + 7 + 7 + 100 + 1 + 59, total);

        var page = await log.Guardian.GetAsync(log.RecordsPath());
        Assert.Equal(clock, page.QuerySelector("#hours")!.TextContent);
        var csv = Records(await FileAsync(log, "csv"));
        Assert.Equal(total, csv.Single(r => r.Part == "total").Minutes);
        Assert.Equal(total, LastTotal(await FileAsync(log, "xlsx")));
        Assert.Contains(clock, PaperText(await FileAsync(log, "pdf")), StringComparison.Ordinal);
        var run = await ProgramRun.OfAsync(server.Database, "hours", "--family", log.Family.Id.ToString(), "--learner", log.Linnet.ToString(), "--from", "2025-07-01", "--to", "2026-06-30", "--format", "csv");
        Assert.True(run.Code == 0, run.Error);
        Assert.Equal(total, Records(run.Output).Single(r => r.Part == "total").Minutes);
        Assert.Contains($": {clock} hours on ", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Are_the_same_for_each_subject()
    {
        var log = await LogAsync();
        var sql = await new SumsInSql(server.Database, log.Family.Id, log.Linnet, new(2025, 7, 1), new(2026, 6, 30)).BySubjectAsync();
        // By hand: 7 over three equals is 3, 2, 2; 50 at 3:1:1:1 is 25, 9, 8, 8.
        Assert.Equal(3 + 1, sql["Reading"]);
        Assert.Equal(9, sql["History"]);

        var credited = sql.Where(s => s.Value > 0).OrderBy(s => s.Key, StringComparer.Ordinal).ToList();
        var page = await log.Guardian.GetAsync(log.RecordsPath());
        var shown = page.QuerySelectorAll("#hours-table tbody tr").ToDictionary(
            r => r.QuerySelector("th")!.TextContent, r => KeptLog.MinutesOf(r.QuerySelector("td:last-child b")!.TextContent));
        Assert.Equal(credited, shown.Where(s => s.Value > 0).OrderBy(s => s.Key, StringComparer.Ordinal));

        var csv = Records(await FileAsync(log, "csv")).Where(r => r.Part == "subject" && r.Minutes > 0).ToDictionary(r => r.Item.TrimStart('\''), r => r.Minutes!.Value);
        Assert.Equal(credited, csv.OrderBy(s => s.Key, StringComparer.Ordinal));
    }

    [Fact]
    public async Task Are_the_same_for_each_place()
    {
        var log = await LogAsync();
        var sql = await new SumsInSql(server.Database, log.Family.Id, log.Linnet, new(2025, 7, 1), new(2026, 6, 30)).ByPlaceAsync();
        var page = await log.Guardian.GetAsync(log.RecordsPath());
        Assert.Equal([new Minutes(sql["Home"]).Clock, new Minutes(sql["Coop"]).Clock],
            page.QuerySelectorAll("#places-table tbody a").Select(a => a.TextContent.Split(' ')[0]));
    }

    /// <summary>Awkward splits, a touch, a change of split, a removal, days outside the year, a sister's own minutes, names nobody should type.</summary>
    private async Task<KeptLog> LogAsync()
    {
        var log = await KeptLog.OfAsync(server, "Linnet", "Wren");
        await log.Family.WithDbAsync(async db =>
        {
            (await db.Subjects.SingleAsync(s => s.Code == "science")).Rename(Hostile);
            (await db.Learners.SingleAsync(l => l.Id == log.Linnet)).Describe("=Linnet <i>🐦", new(2016, 5, 2), [], "");
            await db.SaveChangesAsync();
        });
        await log.WriteAsync(new(2025, 7, 1), 1440, [("science", 7), ("art", 5), ("music", 3)]);
        await log.WriteAsync(new(2026, 6, 30), 1, [("reading", 1)], place: Place.Coop, what: Hostile, note: Hostile);
        await log.WriteAsync(new(2026, 3, 2), 50, [("science", 3), ("history", 1), ("geography", 1), ("citizenship", 1)]);
        await log.WriteAsync(new(2026, 3, 2), 7, [("reading", 1), ("writing", 1), ("mathematics", 1)], who: ["Linnet", "Wren"]);
        await log.WriteAsync(new(2026, 3, 3), 7, [("mathematics", 1), ("writing", 1), ("nature", 1), ("health", 0)], place: Place.Coop);
        await log.WriteAsync(new(2026, 3, 4), 1, [("nature", 1), ("art", 1), ("health", 1)]);
        await log.ChangeAsync(await log.WriteAsync(new(2026, 3, 5), 400, [("science", 1)]), new(2026, 3, 6), 100, [("science", 1), ("art", 2)]);
        await log.ChangeAsync(await log.WriteAsync(new(2026, 6, 29), 59, [("reading", 100), ("art", 1)]), new(2026, 6, 29), 59, [("movement", 1000), ("art", 999)]);
        await log.ChangeAsync(await log.WriteAsync(new(2026, 3, 5), 400, [("science", 1)]), new(2026, 7, 1), 400, [("science", 1)]);
        await log.RemoveAsync(await log.WriteAsync(new(2026, 3, 5), 300, [("nature", 1)]));
        await log.WriteAsync(new(2025, 6, 30), 90, [("nature", 1)]);
        await log.WriteAsync(new(2026, 3, 6), 200, [("nature", 1)], who: ["Wren"]);
        return log;
    }

    private static async Task<byte[]> FileAsync(KeptLog log, string ending)
    {
        var answer = await log.Guardian.OpenAsync(log.FilePath(ending));
        return await answer.Content.ReadAsByteArrayAsync();
    }

    private static List<(string Part, string Item, int? Minutes)> Records(byte[] csv)
    {
        using var reader = new CsvReader(new StreamReader(new MemoryStream(csv)), CultureInfo.InvariantCulture);
        reader.Read();
        reader.ReadHeader();
        var records = new List<(string, string, int?)>();
        while (reader.Read())
            records.Add((reader.GetField("part")!, reader.GetField("item")!, reader.GetField<int?>("minutes")));
        return records;
    }

    /// <summary>The kept value of the last row's total on the workbook's first sheet: the column before the h:mm texts.</summary>
    private static int LastTotal(byte[] workbook)
    {
        using var zip = new ZipArchive(new MemoryStream(workbook));
        using var stream = zip.GetEntry("xl/worksheets/sheet1.xml")!.Open();
        XNamespace ns = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
        var cells = XDocument.Load(stream).Descendants(ns + "row").Last().Elements(ns + "c").ToList();
        return int.Parse(cells[^2].Element(ns + "v")!.Value, CultureInfo.InvariantCulture);
    }

    private static string PaperText(byte[] pdf)
    {
        using var paper = PdfDocument.Open(pdf);
        return string.Join("\n", paper.GetPages().Select(p => ContentOrderTextExtractor.GetText(p)));
    }
}
