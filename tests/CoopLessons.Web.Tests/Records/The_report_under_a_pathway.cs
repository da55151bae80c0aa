using System.Text;
using CoopLessons.Core.Requirements;
using CoopLessons.Data.Families;
using CoopLessons.Data.Hours;
using CoopLessons.Data.Requirements;
using CoopLessons.Documents.Reports;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Commands;
using CoopLessons.Web.Tests.Documents;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Records;

[Collection(SharedServer.Name)]
public sealed class The_report_under_a_pathway(TestServer server)
{
    private const string Opening = "The log as it stood on";
    private static readonly DateOnly Start = new(2023, 7, 1);
    private static readonly DateOnly November = new(2025, 11, 3);

    [Fact]
    public async Task Ends_with_what_the_law_asks_beside_what_was_logged()
    {
        var log = await LogAsync();
        await StandAsync(log, "US-MO", "home-school", Start);
        var text = PaperReader.AllText(await BytesAsync(log, "pdf"));
        Assert.Contains("What the law asks The log as it stood on 12 March 2026", text, StringComparison.Ordinal);
        Assert.Contains("Missouri: Home school", text, StringComparison.Ordinal);
        // Source of the figure: RSMo § 167.012.2(2).
        Assert.Contains("hours of instruction 1:40 hours 1,000 hours behind RSMo § 167.012", text, StringComparison.Ordinal);
        Assert.Contains("no legal advice", text, StringComparison.Ordinal);
        var workbook = await BytesAsync(log, "xlsx");
        Assert.Contains("name=\"Law\"", Part(workbook, "xl/workbook.xml"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_without_one_the_report_of_the_log_alone_to_the_last_byte()
    {
        var log = await LogAsync();
        var report = await log.Family.FromDbAsync(async db =>
        {
            var year = await db.SchoolYears.SingleAsync();
            return (await LearnerYear.LoadAsync(db, log.Linnet, year.Days, default))!.Report(year.Name, TestServer.Today);
        });
        var pdf = await BytesAsync(log, "pdf");
        Assert.Equal(HoursPdf.Write(report), pdf);
        Assert.DoesNotContain(Opening, PaperReader.AllText(pdf), StringComparison.Ordinal);
        Assert.DoesNotContain("name=\"Law\"", Part(await BytesAsync(log, "xlsx"), "xl/workbook.xml"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Leaves_the_table_of_separated_values_as_it_is()
    {
        var log = await LogAsync();
        var before = await BytesAsync(log, "csv");
        await StandAsync(log, "US-MO", "home-school", Start);
        Assert.Equal(before, await BytesAsync(log, "csv"));
    }

    [Fact]
    public async Task Has_both_places_after_a_move()
    {
        var log = await LogAsync();
        await StandAsync(log, "US-MO", "home-school", Start);
        await StandAsync(log, "US-PA", "home-education", November, SpanReason.Moves, November.AddDays(7));
        var text = PaperReader.AllText(await BytesAsync(log, "pdf"));
        Assert.Contains("this pathway ended on 2 November 2025", text, StringComparison.Ordinal);
        Assert.Contains("the family moved to Pennsylvania on 3 November 2025 and nothing counts before 10 November 2025", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Says_nothing_of_the_law_of_other_years()
    {
        var log = await LogAsync();
        await StandAsync(log, "US-MO", "home-school", new(2026, 7, 1));
        Assert.DoesNotContain(Opening, PaperReader.AllText(await BytesAsync(log, "pdf")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Says_where_a_pathway_is_no_longer_known()
    {
        var log = await LogAsync();
        await StandAsync(log, "US-ZZ", "gone", November);
        var text = PaperReader.AllText(await BytesAsync(log, "pdf"));
        Assert.Contains("The pathway chosen from 3 November 2025 on (US-ZZ, gone) is no longer known to this program", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Choose again", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Reads_the_familys_own_names_whatever_they_are()
    {
        var log = await LogAsync("\u202Eדרור 🐦");
        await StandAsync(log, "US-MO", "home-school", new(2025, 11, 3), SpanReason.Begins);
        await log.Family.WithDbAsync(async db =>
        {
            var reading = await db.Subjects.SingleAsync(s => s.Code == "reading");
            reading.Rename("=1+1 קריאה 📖");
            await db.SaveChangesAsync();
        });
        var text = PaperReader.AllText(await BytesAsync(log, "pdf"));
        Assert.Contains("home instruction began on 3 November 2025", text, StringComparison.Ordinal);
        Assert.Contains("=1+1 [in Hebrew letters] [sign]", text, StringComparison.Ordinal);
        var sheet = Part(await BytesAsync(log, "xlsx"), "xl/worksheets/sheet2.xml");
        Assert.Contains("=1+1 קריאה 📖", sheet, StringComparison.Ordinal);
        Assert.DoesNotContain("<f>1+1", sheet, StringComparison.Ordinal);
    }

    [Fact]
    public async Task From_the_command_line_is_that_of_the_page_for_a_school_year_and_of_the_log_alone_for_other_days()
    {
        var log = await LogAsync();
        await StandAsync(log, "US-MO", "home-school", Start);
        var year = await log.Family.FromDbAsync(db => db.SchoolYears.SingleAsync());
        var whole = PaperReader.AllText(await CommandAsync(log, year.First, year.Last));
        Assert.Contains(Opening, whole, StringComparison.Ordinal);
        Assert.Contains("Missouri: Home school", whole, StringComparison.Ordinal);
        Assert.DoesNotContain(Opening, PaperReader.AllText(await CommandAsync(log, year.First, year.Last.AddDays(-1))), StringComparison.Ordinal);
    }

    private async Task<byte[]> CommandAsync(KeptLog log, DateOnly from, DateOnly to)
    {
        var path = Path.Combine(server.Database.Folder, $"{Guid.NewGuid():N}.pdf");
        var run = await ProgramRun.OfAsync(
            server.Database, "hours", "--family", log.Family.Id.ToString(), "--learner", log.Linnet.ToString(),
            "--from", $"{from:yyyy-MM-dd}", "--to", $"{to:yyyy-MM-dd}", "--format", "pdf", "--out", path);
        Assert.True(run.Code == 0, run.Error);
        return await File.ReadAllBytesAsync(path);
    }

    private async Task<KeptLog> LogAsync(string? name = null)
    {
        var log = await KeptLog.OfAsync(server, "Linnet");
        await log.WriteAsync(new(2026, 3, 2), 60, [("science", 1)]);
        await log.WriteAsync(new(2026, 3, 3), 40, [("science", 2), ("history", 1)]);
        if (name is not null)
        {
            await log.Family.WithDbAsync(async db =>
            {
                var learner = await db.Learners.SingleAsync();
                db.Entry(learner).Property(l => l.Name).CurrentValue = name;
                await db.SaveChangesAsync();
            });
        }

        return log;
    }

    private static Task StandAsync(KeptLog log, string code, string pathway, DateOnly from, SpanReason because = SpanReason.Begins, DateOnly? countsFrom = null) =>
        log.Family.WithDbAsync(async db =>
        {
            db.Add(new LearnerPathway(Guid.CreateVersion7(), log.Linnet, code, pathway, from, because, countsFrom));
            await db.SaveChangesAsync();
        });

    private static async Task<byte[]> BytesAsync(KeptLog log, string ending)
    {
        var answer = await log.Guardian.OpenAsync(log.FilePath(ending));
        Assert.Equal(System.Net.HttpStatusCode.OK, answer.StatusCode);
        return await answer.Content.ReadAsByteArrayAsync();
    }

    private static string Part(byte[] workbook, string name)
    {
        using var zip = new System.IO.Compression.ZipArchive(new MemoryStream(workbook));
        using var text = new StreamReader(zip.GetEntry(name)!.Open(), Encoding.UTF8);
        return text.ReadToEnd();
    }
}
