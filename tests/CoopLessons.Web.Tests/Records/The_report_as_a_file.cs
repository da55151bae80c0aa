using System.Net;
using CoopLessons.Data.Families;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Records;

[Collection(SharedServer.Name)]
public sealed class The_report_as_a_file(TestServer server)
{
    [Theory]
    [InlineData("pdf", "application/pdf", "%PDF-")]
    [InlineData("csv", "text/csv; charset=utf-8", "\uFEFFpart,item,")]
    [InlineData("xlsx", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", "PK")]
    public async Task Is_an_attachment_that_no_cache_keeps(string ending, string type, string begins)
    {
        var log = await KeptLog.OfAsync(server, "Linnet");
        await log.WriteAsync(new(2026, 3, 2), 60, [("science", 1)]);
        var answer = await log.Guardian.OpenAsync(log.FilePath(ending));

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(type, answer.Content.Headers.ContentType!.ToString());
        Assert.Equal($"attachment; filename=hours-linnet-2025-26.{ending}", answer.Content.Headers.ContentDisposition!.ToString());
        Assert.Contains("no-store", answer.Headers.CacheControl!.ToString(), StringComparison.Ordinal);
        Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
        var bytes = await answer.Content.ReadAsByteArrayAsync();
        Assert.StartsWith(begins, System.Text.Encoding.UTF8.GetString(bytes), StringComparison.Ordinal);
    }

    // RFC 6266 section 4.3 and the encoding of RFC 8187 (formerly 5987): a plain name first, the full one beside it.
    [Theory]
    [InlineData("Zoë", "attachment; filename=hours-zo-2025-26.csv; filename*=UTF-8''hours-zo%C3%AB-2025-26.csv")]
    [InlineData("鶯", "attachment; filename=hours-2025-26.csv; filename*=UTF-8''hours-%E9%B6%AF-2025-26.csv")]
    [InlineData("../\"a\";b\\\u202Egpj", "attachment; filename=hours-a-b-gpj-2025-26.csv")]
    [InlineData("=1+1", "attachment; filename=hours-1-1-2025-26.csv")]
    public async Task Has_a_name_that_nothing_takes_amiss(string name, string disposition)
    {
        var log = await KeptLog.OfAsync(server, name);
        var answer = await log.Guardian.OpenAsync(log.FilePath("csv", name));
        Assert.Equal(disposition, string.Join(", ", answer.Content.Headers.NonValidated["Content-Disposition"]));
    }

    [Theory]
    [InlineData("txt")]
    [InlineData("PDF")]
    [InlineData("pdf.exe")]
    public async Task Comes_in_three_forms_only(string ending)
    {
        var log = await KeptLog.OfAsync(server, "Linnet");
        Assert.Equal(HttpStatusCode.NotFound, (await log.Guardian.OpenAsync(log.FilePath(ending))).StatusCode);
    }

    [Fact]
    public async Task Of_unknown_ids_is_not_there()
    {
        var log = await KeptLog.OfAsync(server, "Linnet");
        Assert.Equal(HttpStatusCode.NotFound, (await log.Guardian.OpenAsync($"/records/{Guid.NewGuid()}/{log.YearId}/hours.pdf")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await log.Guardian.OpenAsync($"/records/{log.Linnet}/{Guid.NewGuid()}/hours.pdf")).StatusCode);
    }

    [Fact]
    public async Task Is_offered_on_the_page_once_there_is_something_in_it()
    {
        var log = await KeptLog.OfAsync(server, "Linnet");
        Assert.Empty((await log.Guardian.GetAsync(log.RecordsPath())).QuerySelectorAll("a[href*='hours.']"));
        await log.WriteAsync(new(2026, 3, 2), 60, [("science", 1)]);
        var offered = (await log.Guardian.GetAsync(log.RecordsPath())).QuerySelectorAll("a[href*='hours.']").Select(a => a.GetAttribute("href"));
        Assert.Equal([log.FilePath("pdf"), log.FilePath("xlsx"), log.FilePath("csv")], offered);
    }

    [Fact]
    public async Task Covers_the_year_it_is_asked_for_and_no_other()
    {
        var log = await KeptLog.OfAsync(server, "Linnet");
        await log.WriteAsync(new(2025, 6, 30), 33, [("science", 1)]);
        var last = Guid.CreateVersion7();
        await log.Family.WithDbAsync(async db =>
        {
            db.SchoolYears.Add(new SchoolYear(last, "2024–25", new(new(2024, 7, 1), new(2025, 6, 30)), Core.Calendar.Weekdays.MondayToFriday));
            await db.SaveChangesAsync();
        });
        foreach (var (path, total) in new[] { (log.FilePath("csv"), "total,,,0,"), ($"/records/{log.Linnet}/{last}/hours.csv", "total,,,33,") })
        {
            var answer = await log.Guardian.OpenAsync(path);
            Assert.Contains(total, await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }
    }
}
