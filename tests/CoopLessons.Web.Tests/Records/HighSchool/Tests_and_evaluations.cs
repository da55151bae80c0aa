using System.Net;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Families;
using CoopLessons.Core.Requirements.Scores;
using CoopLessons.Data.Families;
using CoopLessons.Data.Requirements;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Records.Courses;

/// <summary>New York (8 NYCRR § 100.10(h)): a norm-referenced test each year from grade 9, a composite above the 33rd percentile.</summary>
[Collection(SharedServer.Name)]
public sealed class Tests_and_evaluations(TestServer server)
{
    private async Task<KeptLog> NewYorkAsync(int grade = 9)
    {
        var log = await KeptLog.OfAsync(server, "Linnet").StandsAsync("US-NY", "home-instruction");
        await log.GradeAsync(grade);
        return log;
    }

    private static string Path(KeptLog log) => $"/records/{log.Linnet}/tests";

    private static Task TakeAsync(KeptLog log, int? percentile, int? stanine = null) => log.AddAsync(new Assessment(
        Guid.CreateVersion7(), log.Linnet, new AssessmentFacts(new DateOnly(2026, 3, 3), AssessmentKind.NormReferencedTest, "Spring battery", "Hazel", "", "", [new ScoreResult(ScoreResult.Composite, percentile, stanine, "", "")])));

    [Fact]
    public async Task Are_listed_as_the_pathway_asks_for_them_in_this_grade()
    {
        var log = await NewYorkAsync();
        var text = (await log.Guardian.GetAsync(Path(log))).QuerySelector("main")!.Plain();
        Assert.Contains("Yearly assessment: a norm-referenced test every year", text, StringComparison.Ordinal);
        Assert.DoesNotContain("at least every other year", text, StringComparison.Ordinal);
        Assert.Contains("8 NYCRR § 100.10(h)", text, StringComparison.Ordinal);
        Assert.Contains("No result is written down yet. Asked for: composite above the 33rd percentile", text, StringComparison.Ordinal);
        Assert.Contains("This is no advice", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(41, null, "reached Spring battery, 3 March 2026: composite 41st percentile; asked for: above the 33rd percentile.")]
    [InlineData(33, null, "not reached Spring battery, 3 March 2026: composite 33rd percentile; asked for: above the 33rd percentile.")]
    [InlineData(null, 4, "cannot tell Spring battery, 3 March 2026: composite 4th stanine, which holds the 23rd to the 39th percentile; asked for: above the 33rd percentile.")]
    public async Task Stand_beside_the_figure_of_the_law(int? percentile, int? stanine, string words)
    {
        var log = await NewYorkAsync();
        await TakeAsync(log, percentile, stanine);
        Assert.Contains(words, (await log.Guardian.GetAsync(Path(log))).QuerySelector("main")!.Plain(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(33, true)]
    [InlineData(34, false)]
    public async Task Say_what_follows_only_where_the_figure_is_not_reached(int percentile, bool said)
    {
        var log = await NewYorkAsync();
        await TakeAsync(log, percentile);
        Assert.Equal(said, (await log.Guardian.GetAsync(Path(log))).QuerySelector("main")!.Plain().Contains("probation for up to two school years, with a plan of remediation.", StringComparison.Ordinal));
    }

    // Source: Code of Virginia § 22.1-254.1(C): evidence of progress by 1 August after the school year.
    [Fact]
    public async Task Answer_for_one_year_alone_where_they_are_taken_in_the_summer_after_it()
    {
        var log = await KeptLog.OfAsync(server, "Linnet").StandsAsync("US-VA", "home-instruction");
        var next = Guid.CreateVersion7();
        await log.AddAsync(
            new SchoolYear(next, "The next", new DayRange(new DateOnly(2026, 7, 1), new DateOnly(2027, 6, 30)), Weekdays.MondayToFriday),
            new Assessment(Guid.CreateVersion7(), log.Linnet, new AssessmentFacts(new DateOnly(2026, 7, 15), AssessmentKind.NormReferencedTest, "Summer battery", "Hazel", "", "", [new ScoreResult(ScoreResult.Composite, 60, null, "", "")])));
        Assert.Contains("reached Summer battery", (await log.Guardian.GetAsync($"{Path(log)}?year={log.YearId}")).QuerySelector("main")!.Plain(), StringComparison.Ordinal);
        Assert.DoesNotContain("reached Summer battery", (await log.Guardian.GetAsync($"{Path(log)}?year={next}")).QuerySelector("main")!.Plain(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Are_written_down_with_those_figures_that_the_paper_has()
    {
        var log = await NewYorkAsync();
        var page = await log.Guardian.GetAsync(Path(log) + "/new");
        Dictionary<string, string?> fill = new()
        {
            ["Input.What"] = "Spring battery",
            ["Input.Date"] = "2026-03-03",
            ["Input.By"] = "Hazel",
            ["Input.Qualification"] = "certified teacher",
            ["Input.Results[0].Percentile"] = "41",
            ["Input.Results[6].Area"] = "listening",
            ["Input.Results[6].GradeEquivalent"] = "9.2",
        };
        using (var answer = await log.Guardian.SubmitAsync(page, fill))
            Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        using (await log.Guardian.SubmitAsync(page, fill))
        {
        }

        var row = await log.Family.FromDbAsync(db => db.Assessments.SingleAsync());
        Assert.Equal([new ScoreResult("composite", 41, null, "", ""), new ScoreResult("listening", null, null, "9.2", "")], row.Results);
        Assert.Contains("by Hazel (certified teacher)composite: 41st percentilelistening: grade equivalent 9.2", (await log.Guardian.GetAsync(Path(log))).QuerySelector("main")!.Plain(), StringComparison.Ordinal);

        using (await log.Guardian.SubmitAsync(await log.Guardian.GetAsync($"{Path(log)}/{row.Id}"), within: "main details form"))
        {
        }

        Assert.Equal(0, await log.Family.FromDbAsync(db => db.Assessments.CountAsync()));
    }

    [Theory]
    [InlineData("Input.What", "", "Say what it was")]
    [InlineData("Input.Results[0].Percentile", "100", "A percentile is a whole number from 1 to 99")]
    [InlineData("Input.Results[7].Points", "12", "Say of which area this is")]
    [InlineData("Input.Results[6].Area", "Reading", "Each area stands there once")]
    public async Task Say_beside_the_field_what_is_wrong(string field, string value, string message)
    {
        var log = await NewYorkAsync();
        var page = await log.Guardian.GetAsync(Path(log) + "/new");
        using var answer = await log.Guardian.SubmitAsync(page, new()
        {
            ["Input.What"] = "Spring battery",
            ["Input.Date"] = "2026-03-03",
            ["Input.Results[1].Percentile"] = "50",
            ["Input.Results[6].Points"] = "7",
            ["Input.Results[6].Area"] = "listening",
            [field] = value,
        });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains(message, await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Refuse_a_paper_of_another_family()
    {
        var (log, other) = (await NewYorkAsync(), await Tenancy.Furnished.MakeAsync(server, "Birch"));
        var page = await log.Guardian.GetAsync(Path(log) + "/new");
        using var answer = await log.Guardian.SubmitAsync(page, new() { ["Input.What"] = "Battery", ["Input.Date"] = "2026-03-03", ["Input.PieceId"] = null }, more: [new("Input.PieceId", other.Piece.ToString())]);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public async Task Say_plainly_that_no_pathway_is_chosen()
    {
        var log = await KeptLog.OfAsync(server, "Linnet");
        Assert.Contains("No pathway is chosen for Linnet", (await log.Guardian.GetAsync(Path(log))).QuerySelector("main")!.Plain(), StringComparison.Ordinal);
    }
}
