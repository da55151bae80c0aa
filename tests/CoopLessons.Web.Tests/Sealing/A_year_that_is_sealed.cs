using System.Net;
using CoopLessons.Core.Sealing;
using CoopLessons.Data.Log;
using CoopLessons.Data.Sealing;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Sealing;

[Collection(SharedServer.Name)]
public sealed class A_year_that_is_sealed(TestServer server)
{
    [Fact]
    public async Task Is_asked_for_once_with_what_is_still_open()
    {
        var year = await FinishedYear.MakeAsync(server, isSealed: false);
        var page = await year.Guardian.GetAsync(year.Page);
        Assert.Contains("teaching days have nothing in the log", page.QuerySelector("section.sheet")!.TextContent, StringComparison.Ordinal);
        using var unsure = await year.Guardian.SubmitAsync(page);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, unsure.StatusCode);
        Assert.Contains("Tick the box first", (await Visitor.ParseAsync(unsure)).QuerySelector("#sure-fault")!.TextContent, StringComparison.Ordinal);
        using var sure = await year.Guardian.SubmitAsync(page, new() { ["sure"] = "true" });
        Assert.Equal(HttpStatusCode.Redirect, sure.StatusCode);
        using var twice = await year.Guardian.SubmitAsync(page, new() { ["sure"] = "true" });
        Assert.Equal(HttpStatusCode.Redirect, twice.StatusCode);
        Assert.Equal((1, 2), await year.Family.FromDbAsync(async db => (await db.SealedYears.CountAsync(), await db.SealedRecords.CountAsync())));
        page = await year.Guardian.GetAsync(year.Page);
        Assert.Contains("Sealed on 12 March 2026 by Iris Alder", page.QuerySelector(".sub")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(2, page.QuerySelectorAll("[data-holds]").Length);
        Assert.Empty(page.QuerySelectorAll("[role=alert]"));
    }

    [Fact]
    public async Task Is_over_first()
    {
        var year = await FinishedYear.MakeAsync(server, isSealed: false);
        var runs = await year.Family.FromDbAsync(db => db.SchoolYears.Where(y => y.Id != year.YearId).Select(y => y.Id).SingleAsync());
        Assert.Empty((await year.Guardian.GetAsync($"/records/sealing/{runs}")).QuerySelectorAll("main form"));
        using var answer = await year.Guardian.PostAsync($"/records/sealing/{runs}", [new("sure", "true"), new("__RequestVerificationToken", await year.Guardian.TokenAsync(year.Page))]);
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Contains("It can be sealed on the day after", (await Visitor.ParseAsync(answer)).Body!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Names_one_minute_that_was_changed_in_the_database_by_hand()
    {
        var year = await FinishedYear.MakeAsync(server);
        Assert.True((await year.CheckAsync(year.Linnet)).Holds);
        await year.BehindAsync<LogTime>("\"Minutes\" = 41", $"\"EntryId\" = {FinishedYear.Sql(year.Bread)} AND \"LearnerId\" = {FinishedYear.Sql(year.Linnet)}");

        var page = await year.Guardian.GetAsync(year.Page);
        Assert.Contains("The log still says what was sealed", page.QuerySelector($"[data-learner='{year.Wren}']")!.TextContent, StringComparison.Ordinal);
        var told = page.QuerySelector($"[data-learner='{year.Linnet}'] [role=alert]")!.QuerySelectorAll("li").Select(l => l.TextContent).ToList();
        Assert.Equal(
            [
                "3 March 2025, Baked bread: 40 minutes in the sealed record, 41 in the log now",
                "In all: 95 minutes in the sealed record, 96 in the log now",
                "Reading in all: 31 minutes in the sealed record, 32 in the log now",
            ],
            told);
    }

    [Theory]
    [InlineData("\"What\" = 'Baked rolls'", "3 March 2025, Baked bread: “Baked bread” in the sealed record, “Baked rolls” in the log now")]
    [InlineData("\"Date\" = '2025-03-05'", "3 March 2025, Baked bread: 3 March 2025 in the sealed record, 5 March 2025 in the log now")]
    [InlineData("\"Date\" = '2025-09-05'", "3 March 2025, Baked bread: 40 minutes, counted as Reading 13, Science 27 in the sealed record, nothing in the log now")]
    [InlineData("\"Place\" = 'Coop'", "3 March 2025, Baked bread: at home in the sealed record, at the co-op in the log now")]
    public async Task Names_whatever_else_was_changed_of_an_entry(string set, string sentence)
    {
        var year = await FinishedYear.MakeAsync(server);
        await year.BehindAsync<LogRevision>(set, $"\"EntryId\" = {FinishedYear.Sql(year.Bread)}");
        Assert.Contains(sentence, (await year.CheckAsync(year.Wren)).Differences.Select(d => d.Sentence));
    }

    [Fact]
    public async Task Names_marks_pieces_books_and_subjects_that_were_changed_by_hand()
    {
        var year = await FinishedYear.MakeAsync(server);
        await year.BehindAsync<CoopLessons.Data.Hours.DayMark>($"\"Counts\" = {(TestDatabase.IsPostgres ? "false" : "0")}", $"\"LearnerId\" = {FinishedYear.Sql(year.Wren)}");
        await year.BehindAsync<CoopLessons.Data.Evidence.Piece>("\"Caption\" = 'Our loaf'", $"\"Id\" = {FinishedYear.Sql(year.Piece)}");
        await year.BehindAsync<CoopLessons.Data.Prepare.BookMeeting>("\"EndedOn\" = '2025-03-09'", $"\"Id\" = {FinishedYear.Sql(year.Meeting)}");
        await year.BehindAsync<CoopLessons.Data.Families.FamilySubject>("\"Name\" = 'Physics'", $"\"Id\" = {FinishedYear.Sql(year.Science)}");
        await year.BehindAsync<CoopLessons.Data.Families.SchoolYear>("\"Name\" = 'The first'", $"\"Id\" = {FinishedYear.Sql(year.YearId)}");
        var about = (await year.CheckAsync(year.Wren)).Differences.Select(d => d.About).ToList();
        Assert.Contains("School year", about);
        Assert.Contains("Subjects in the family's order", about);
        Assert.Contains("3 March 2025", about);
        Assert.Contains("The Miller’s Year, begun 3 March 2025", about);
        Assert.Contains("3 March 2025, a piece with the caption “My loaf”", about);
    }

    [Fact]
    public async Task Tells_by_its_fingerprint_that_the_kept_record_was_changed_too()
    {
        var year = await FinishedYear.MakeAsync(server);
        await year.BehindAsync<LogTime>("\"Minutes\" = 41", $"\"EntryId\" = {FinishedYear.Sql(year.Bread)}");
        await year.BehindAsync<SealedRecord>("\"Text\" = replace(\"Text\", '\"minutes\":40', '\"minutes\":41')", $"\"LearnerId\" = {FinishedYear.Sql(year.Wren)}");
        var check = await year.CheckAsync(year.Wren);
        Assert.StartsWith("The sealed record was changed after it was kept: its fingerprint is ", Assert.Single(check.Faults), StringComparison.Ordinal);
        Assert.Contains("was changed after it was kept", (await year.Guardian.GetAsync(year.Page)).QuerySelector($"[data-learner='{year.Wren}'] [role=alert]")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Says_that_a_value_cannot_be_counted_rather_than_break()
    {
        var year = await FinishedYear.MakeAsync(server);
        await year.BehindAsync<LogTime>("\"Minutes\" = 0", $"\"EntryId\" = {FinishedYear.Sql(year.Bread)}");
        Assert.Contains("cannot be counted", (await year.Guardian.GetAsync(year.Page)).QuerySelector("[role=alert]")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Keeps_the_names_and_choices_of_its_day_on_its_papers()
    {
        var year = await FinishedYear.MakeAsync(server);
        await year.Family.WithDbAsync(async db =>
        {
            var family = await db.Families.SingleAsync();
            family.Describe("Alder-Reed", family.TimeZone, "MO");
            family.CountBy("Only books.", new CoopLessons.Core.Hours.Minutes(300));
            var wren = await db.Learners.SingleAsync(l => l.Id == year.Wren);
            wren.Describe("Renata", wren.BirthDate, [], "");
            await db.SaveChangesAsync();
        });
        Assert.True((await year.CheckAsync(year.Linnet)).Holds);
        var rows = await year.Guardian.OpenAsync($"/records/{year.Wren}/{year.YearId}/hours.csv");
        var text = await rows.Content.ReadAsStringAsync();
        Assert.Contains("about,family,,,,,,,Alder\r\n", text, StringComparison.Ordinal);
        Assert.Contains("about,learner,,,,,,,Wren\r\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Only books.", text, StringComparison.Ordinal);
        Assert.Contains("about,minimum day,,60,1:00,1.00,,,\r\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Gives_out_exactly_the_bytes_of_its_fingerprint()
    {
        var year = await FinishedYear.MakeAsync(server);
        await year.AmendAsync();
        var page = await year.Guardian.GetAsync(year.Page);
        var codes = page.QuerySelectorAll($"[data-learner='{year.Wren}'] dd code").Select(c => c.TextContent).ToList();
        for (var number = 0; number < 2; number++)
        {
            using var file = await year.Guardian.OpenAsync($"{year.Page}/{year.Wren}/{number}.json");
            Assert.Equal("application/json", file.Content.Headers.ContentType!.MediaType);
            Assert.Equal(codes[1 - number], Fingerprint.Of(await file.Content.ReadAsByteArrayAsync()).Groups);
        }

        using var none = await year.Guardian.OpenAsync($"{year.Page}/{year.Wren}/2.json");
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
    }

    [Fact]
    public async Task Is_there_for_its_own_guardians_alone()
    {
        var (mine, other) = (await FinishedYear.MakeAsync(server), await FinishedYear.MakeAsync(server, name: "Birch"));
        foreach (var path in new[] { other.Page, $"{other.Page}/{other.Wren}/0.json", $"{mine.Page}/{other.Wren}/0.json", $"{other.Page}/{mine.Wren}/0.json" })
            Assert.Equal(HttpStatusCode.NotFound, (await mine.Guardian.OpenAsync(path)).StatusCode);
        var helper = await server.HelperAsync(mine.Family);
        foreach (var path in new[] { "/records/sealing", mine.Page, $"{mine.Page}/{mine.Wren}/0.json" })
            Assert.NotEqual(HttpStatusCode.OK, (await helper.OpenAsync(path)).StatusCode);
        Assert.DoesNotContain(other.YearId.ToString(), (await mine.Guardian.GetAsync("/records/sealing")).Body!.InnerHtml, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Shows_on_the_records_page_and_in_the_list_of_years()
    {
        var year = await FinishedYear.MakeAsync(server);
        await year.AmendAsync();
        var records = await year.Guardian.GetAsync($"/records?learner={year.Wren}&year={year.YearId}");
        Assert.Contains("sealed on 12 March 2026, 1 amendment, the last on 12 March 2026, fingerprint", records.QuerySelector("#seal")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("sealed on 12 March 2026, 1 late correction", (await year.Guardian.GetAsync("/records/sealing")).QuerySelector("#years")!.TextContent, StringComparison.Ordinal);
    }
}
