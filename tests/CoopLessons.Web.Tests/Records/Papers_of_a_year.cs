using System.Net;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using CoopLessons.Data.Requirements;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Records;

/// <summary>
/// New York (8 NYCRR § 100.10): notice by 1 July, the plan within four weeks of the form or by 15 August, four reports on
/// dates set in the plan, an assessment with the fourth. Today is 12 March 2026; the year runs from July to June, so
/// that its four even parts end on 30 September, 31 December, 31 March and 30 June.
/// </summary>
[Collection(SharedServer.Name)]
public sealed class Papers_of_a_year(TestServer server)
{
    private const string Notice = "US-NY/home-instruction/notice/1";
    private const string Third = "US-NY/home-instruction/quarterly-reports/3";
    private const string Plan = "US-NY/home-instruction/plan/1";

    [Fact]
    public async Task Are_listed_by_the_state_of_their_date()
    {
        var log = await NewYorkAsync();
        var page = await log.Guardian.GetAsync("/records/papers");

        Assert.Equal(
            ["Look at these now", "Ahead", "Waiting for a date from you", "Without a date in the law", "Records to keep"],
            page.Texts("main section.sheet > h2"));
        Assert.Equal(("Look at these now", "1 July 2025 overdue"), Standing(page, Notice));
        Assert.Equal(("Look at these now", "30 September 2025, proposed has passed"), Standing(page, "US-NY/home-instruction/quarterly-reports/1"));
        Assert.Equal(("Ahead", "31 March 2026, proposed"), Standing(page, Third));
        Assert.Equal(("Ahead", "30 June 2026, proposed"), Standing(page, "US-NY/home-instruction/quarterly-reports/4"));
        Assert.Equal(("Ahead", "30 June 2026, proposed"), Standing(page, "US-NY/home-instruction/assessment-4-8/1"));
        Assert.Equal(("Waiting for a date from you", ""), Standing(page, Plan));
        Assert.Equal(("Without a date in the law", ""), Standing(page, "US-NY/home-instruction/form/1"));
        Assert.DoesNotContain("assessment-9-12", page.QuerySelector("main")!.InnerHtml, StringComparison.Ordinal);
        Assert.All(page.QuerySelectorAll("main section.sheet > ul > li"), l => Assert.Contains("8 NYCRR § 100.10", l.Plain(), StringComparison.Ordinal));
        var dates = page.QuerySelectorAll("main section.sheet").Select(s => s.QuerySelectorAll("ul > li .row-side .num").Select(d => DateOnly.Parse(d.Plain().Split(',')[0], null)).ToList());
        Assert.All(dates, d => Assert.Equal(d.Order(), d));
    }

    [Fact]
    public async Task Are_done_in_one_tap_and_open_again_in_another()
    {
        var log = await NewYorkAsync();
        var done = await TapAsync(log, await log.Guardian.GetAsync("/records/papers"), Notice, "Done");
        Assert.Equal(("Done", "1 July 2025 done 12 March 2026"), Standing(done, Notice));
        Assert.Equal("Linnet: notice of intention to instruct at home is done.", done.QuerySelector("[role=status]")!.Plain());
        Assert.Equal(TestServer.Today, (await MarkAsync(log))!.DoneOn);

        var open = await TapAsync(log, done, Notice, "Open");
        Assert.Equal(("Look at these now", "1 July 2025 overdue"), Standing(open, Notice));
        Assert.Null(await MarkAsync(log));
    }

    [Fact]
    public async Task Sent_twice_are_done_once_and_keep_the_day_on_which_they_were()
    {
        var log = await NewYorkAsync();
        var page = await log.Guardian.GetAsync("/records/papers");
        await TapAsync(log, page, Notice, "Done");
        await TapAsync(log, page, Notice, "Done");
        Assert.NotNull(await MarkAsync(log));
        await TellAsync(log, Notice, new() { ["Input.DoneOn"] = "2025-06-30" });
        await TapAsync(log, page, Notice, "Done");
        Assert.Equal(new DateOnly(2025, 6, 30), (await MarkAsync(log))!.DoneOn);
    }

    [Theory]
    [InlineData("2026-03-11", "Look at these now", "11 March 2026, your date overdue")]
    [InlineData("2026-03-12", "Look at these now", "12 March 2026, your date due today")]
    [InlineData("2026-03-13", "Look at these now", "13 March 2026, your date 1 day left")]
    [InlineData("2026-03-26", "Look at these now", "26 March 2026, your date 14 days left")]
    [InlineData("2026-03-27", "Ahead", "27 March 2026, your date")]
    public async Task Go_by_the_familys_own_date_and_come_near_fourteen_days_before(string date, string heading, string words)
    {
        var log = await NewYorkAsync();
        var page = await TellAsync(log, Third, new() { ["Input.SetDue"] = date });
        Assert.Equal((heading, words), Standing(page, Third));
        Assert.Equal(date, Field(page, Third, "SetDue").GetAttribute("value"));
        var back = await TellAsync(log, Third, new() { ["Input.SetDue"] = "" });
        Assert.Equal(("Ahead", "31 March 2026, proposed"), Standing(back, Third));
        Assert.Null(await MarkAsync(log));
    }

    [Theory]
    [InlineData("Sent by post, receipt in the blue folder")]
    [InlineData("<script>x</script>=1+1\u202E🌾")]
    public async Task Keep_a_note_as_it_was_written(string note)
    {
        var log = await NewYorkAsync();
        var page = await TellAsync(log, Notice, new() { ["Input.Note"] = note });
        Assert.Contains(note, Row(page, Notice).QuerySelectorAll("bdi").Select(b => b.TextContent));
        Assert.Equal(note, Field(page, Notice, "Note").GetAttribute("value"));
        Assert.Empty(page.QuerySelectorAll("main script"));
        Assert.Equal(note, (await MarkAsync(log))!.Note);
    }

    [Fact]
    public async Task That_wait_for_an_event_lead_to_telling_it()
    {
        var log = await NewYorkAsync();
        var page = await log.Guardian.GetAsync("/records/papers");
        var tell = Row(page, Plan).QuerySelectorAll("a").Single(a => a.Plain().StartsWith("Tell the day: the office’s form came", StringComparison.Ordinal));
        var form = await log.Guardian.GetAsync(tell.GetAttribute("href")!);
        Assert.Contains("Linnet", form.QuerySelector("main")!.Plain(), StringComparison.Ordinal);
        await log.AddAsync(new RecordedLegalEvent(Guid.CreateVersion7(), log.Linnet, Core.Requirements.LegalEvent.FormReceived, new(2025, 8, 1)));
        // Four weeks from 1 August are 29 August, later than 15 August.
        Assert.Equal(("Look at these now", "29 August 2025 overdue"), Standing(await log.Guardian.GetAsync("/records/papers"), Plan));
    }

    [Theory]
    [InlineData("Input.DoneOn", "2026-13-40")]
    [InlineData("Input.DoneOn", "1066-10-14")]
    [InlineData("Input.SetDue", "soon")]
    [InlineData("Input.SetDue", "2201-01-01")]
    [InlineData("Input.Note", null)]
    public async Task Told_wrongly_come_back_as_typed_with_a_message_beside_the_field(string field, string? value)
    {
        var log = await NewYorkAsync();
        var typed = value ?? new string('n', DutyMark.LongestNote + 1);
        var fill = new Dictionary<string, string?> { ["Input.DoneOn"] = "2026-03-01", ["Input.SetDue"] = "2026-03-02", ["Input.Note"] = "blue folder" };
        fill[field] = typed;
        var answer = await log.Guardian.SubmitAsync(await log.Guardian.GetAsync("/records/papers"), fill, TellForm(Notice));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var page = await Visitor.ParseAsync(answer);

        Assert.All(fill, f => Assert.Equal(f.Value, Field(page, Notice, f.Key["Input.".Length..]).GetAttribute("value")));
        Assert.NotEqual("", Row(page, Notice).QuerySelector($".field-validation-error[data-valmsg-for='{field}']")?.Plain() ?? "");
        Assert.True(Row(page, Notice).QuerySelector("details")!.HasAttribute("open"));
        Assert.Equal("", Field(page, Third, "Note").GetAttribute("value") ?? "");
        Assert.Null(await MarkAsync(log));
    }

    [Theory]
    [InlineData("")]
    [InlineData("nothing")]
    [InlineData("US-NY/home-instruction/notice/2")]
    [InlineData("US-MO/home-school/withdrawal/1")]
    public async Task Of_which_the_year_knows_nothing_are_not_there(string key)
    {
        var log = await NewYorkAsync();
        foreach (var handler in new[] { "Done", "Open", "Tell" })
            Assert.Equal(HttpStatusCode.NotFound, (await PostAsync(log, handler, key, $"&learner={log.Linnet}&year={log.YearId}")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await PostAsync(log, "Done", new string('k', 10_000), $"&learner={log.Linnet}&year={log.YearId}")).StatusCode);
        Assert.Null(await MarkAsync(log));
    }

    [Fact]
    public async Task Are_told_of_no_learner_no_year_and_without_a_token_not_at_all()
    {
        var log = await NewYorkAsync();
        foreach (var query in new[] { $"&year={log.YearId}", $"&learner={Guid.NewGuid()}&year={log.YearId}", $"&learner={log.Linnet}&year={Guid.NewGuid()}", $"&learner=x&year={log.YearId}" })
            Assert.Equal(HttpStatusCode.NotFound, (await PostAsync(log, "Done", Notice, query)).StatusCode);
        var answer = await log.Guardian.PostAsync($"/records/papers?handler=Done&learner={log.Linnet}&year={log.YearId}", [new("Input.Key", Notice)]);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Null(await MarkAsync(log));
    }

    [Fact]
    public async Task Of_all_children_stand_in_one_list_and_of_one_by_a_link()
    {
        var log = await NewYorkAsync("Linnet", "Wren");
        var all = await log.Guardian.GetAsync("/records/papers");
        Assert.Equal(2, all.QuerySelectorAll($"form[action*='handler=Done'] input[value='{Notice}']").Length);
        var one = await log.Guardian.GetAsync(all.QuerySelectorAll("nav[aria-label=Learner] a").Single(a => a.Plain() == "Wren").GetAttribute("href")!);
        Assert.Single(one.QuerySelectorAll($"form[action*='handler=Done'] input[value='{Notice}']"));
        Assert.DoesNotContain("Linnet:", one.QuerySelector("main")!.Plain(), StringComparison.Ordinal);

        var done = await TapAsync(log, one, Notice, "Done");
        Assert.Single(done.QuerySelectorAll($"input[value='{Third}'][name='Input.Key']").Select(i => i.Closest("li")).Distinct());
        Assert.Equal(log.Learners["Wren"], (await MarkAsync(log))!.LearnerId);
        var both = await log.Guardian.GetAsync("/records/papers");
        Assert.Equal(["Look at these now", "Done"], both.QuerySelectorAll($"form[action*='handler'] > input[value='{Notice}']").Select(i => i.Closest("section")!.QuerySelector("h2")!.Plain()).Distinct());
    }

    [Fact]
    public async Task Keep_their_marks_apart_by_family_and_by_year()
    {
        var (theirs, mine) = (await NewYorkAsync(), await NewYorkAsync());
        await TellAsync(theirs, Notice, new() { ["Input.Note"] = "their note", ["Input.DoneOn"] = "2025-06-30" });
        var page = await mine.Guardian.GetAsync("/records/papers");
        Assert.Equal(("Look at these now", "1 July 2025 overdue"), Standing(page, Notice));
        Assert.DoesNotContain("their note", page.Source.Text, StringComparison.Ordinal);

        var next = new Data.Families.SchoolYear(Guid.CreateVersion7(), "2026–27", new(new DateOnly(2026, 7, 1), new DateOnly(2027, 6, 30)), Core.Calendar.Weekdays.MondayToFriday);
        await theirs.AddAsync(next);
        var later = await theirs.Guardian.GetAsync($"/records/papers?year={next.Id}");
        Assert.Equal(("Ahead", "1 July 2026"), Standing(later, Notice));
        Assert.Equal(("Done", "1 July 2025 done 30 June 2025"), Standing(await theirs.Guardian.GetAsync("/records/papers"), Notice));
    }

    [Fact]
    public async Task Print_without_their_forms_and_links()
    {
        var log = await NewYorkAsync("Linnet", "Wren");
        var page = await log.Guardian.GetAsync("/records/papers");
        Assert.NotEmpty(page.QuerySelectorAll("main form"));
        Assert.All(page.QuerySelectorAll("main form, main details, main nav, main button:not([data-print])"), e => Assert.NotNull(e.Closest(".no-print")));
        Assert.All(page.QuerySelectorAll("main button, main summary"), e => Assert.NotEqual("", e.Plain()));
        Assert.Equal(page.QuerySelectorAll("main button:not([data-print]):not([class='button']), main summary").Select(Plainly).Distinct().Count(), page.QuerySelectorAll("main button:not([data-print]):not([class='button']), main summary").Length);
        Assert.All(page.QuerySelectorAll("[id]").GroupBy(e => e.Id), ids => Assert.Single(ids));
    }

    [Fact]
    public async Task Name_the_records_to_keep_once_for_children_who_keep_the_same()
    {
        var log = await NewYorkAsync("Linnet", "Wren");
        await log.AddAsync(new Data.Families.Learner(Guid.CreateVersion7(), "Rook", new(2014, 5, 2), 3));
        var page = await log.Guardian.GetAsync("/records/papers");
        Assert.Equal(["Linnet, Wren"], page.Texts("main section.sheet > h3"));
        // 8 NYCRR § 100.10: attendance (f)(4), hours of each quarter (g)(1), a portfolio (h)(2)(iii); copies of papers by prudence.
        Assert.Equal(4, page.QuerySelectorAll("main section.sheet:has(> h3) > ul > li").Length);
    }

    private async Task<KeptLog> NewYorkAsync(params string[] learners)
    {
        var log = await KeptLog.OfAsync(server, learners.Length == 0 ? ["Linnet"] : learners);
        foreach (var learner in log.Learners.Keys)
        {
            await log.StandAsync("US-NY", "home-instruction", LogUnderLaw.July, learner: learner);
            await log.GradeAsync(4, learner);
        }

        return log;
    }

    private static async Task<IHtmlDocument> TapAsync(KeptLog log, IHtmlDocument page, string key, string handler) =>
        await FollowAsync(log, await log.Guardian.SubmitAsync(page, within: $"form[action*='handler={handler}'] input[value='{key}']"));

    private static async Task<IHtmlDocument> TellAsync(KeptLog log, string key, Dictionary<string, string?> fill) =>
        await FollowAsync(log, await log.Guardian.SubmitAsync(await log.Guardian.GetAsync("/records/papers"), fill, TellForm(key)));

    private static async Task<IHtmlDocument> FollowAsync(KeptLog log, HttpResponseMessage answer)
    {
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        return await log.Guardian.GetAsync(answer.Headers.Location!.OriginalString);
    }

    private static async Task<HttpResponseMessage> PostAsync(KeptLog log, string handler, string key, string query) =>
        await log.Guardian.PostAsync($"/records/papers?handler={handler}{query}", [new("__RequestVerificationToken", await log.Guardian.TokenAsync()), new("Input.Key", key)]);

    private static Task<DutyMark?> MarkAsync(KeptLog log) => log.Family.FromDbAsync(db => db.DutyMarks.AsNoTracking().SingleOrDefaultAsync());

    private static string TellForm(string key) => $"form[action*='handler=Tell'] input[value='{key}']";

    private static IElement Row(IHtmlDocument page, string key) => page.QuerySelector(TellForm(key))!.Closest("li")!;

    private static IElement Field(IHtmlDocument page, string key, string name) => Row(page, key).QuerySelector($"input[name='Input.{name}']")!;

    private static (string Heading, string Side) Standing(IHtmlDocument page, string key) => (
        Row(page, key).Closest("section")!.QuerySelector("h2")!.Plain(),
        string.Join(' ', Row(page, key).QuerySelectorAll(".row-side > span").Select(Plainly)));

    private static string Plainly(IElement element) => element.Plain();
}
