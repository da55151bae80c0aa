using System.Net;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using CoopLessons.Core.Credits;
using CoopLessons.Data.Credits;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Records.Courses;

/// <summary>Today is 12 March 2026; the school year runs from July to June.</summary>
[Collection(SharedServer.Name)]
public sealed class A_learners_courses(TestServer server)
{
    private static readonly DateOnly March = new(2026, 3, 2);

    private async Task<KeptLog> LogAsync()
    {
        var log = await KeptLog.OfAsync(server, "Linnet");
        await log.WriteAsync(March, 90, [("science", 2), ("writing", 1)], what: "Yeast under the microscope");
        await log.WriteAsync(March.AddDays(1), 400, [("science", 1)], what: "Built a model of the race");
        return log;
    }

    private static string Courses(KeptLog log) => $"/records/{log.Linnet}/courses";

    private static async Task<Guid> AddAsync(KeptLog log, string title, string? subject = "science", Dictionary<string, string?>? more = null)
    {
        var page = await log.Guardian.GetAsync($"{Courses(log)}/new/terms");
        var fill = new Dictionary<string, string?>(more ?? []) { ["Input.Title"] = title, ["Input.Area"] = "Science", ["Input.SubjectId"] = subject is null ? "" : log.Subjects[subject].ToString() };
        using var answer = await log.Guardian.SubmitAsync(page, fill);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        return Guid.Parse(answer.Headers.Location!.OriginalString.Split('/')[^1]);
    }

    private static async Task<HighSchoolCourse> RowAsync(KeptLog log, Guid id) => await log.Family.FromDbAsync(db => db.HighSchoolCourses.Include(c => c.Rules).SingleAsync(c => c.Id == id));

    [Fact]
    public async Task Take_their_minutes_from_the_log()
    {
        var log = await LogAsync();
        var id = await AddAsync(log, "Biology");
        var page = await log.Guardian.GetAsync($"{Courses(log)}/{id}");
        Assert.Contains("7:40 from the log", page.QuerySelector("main")!.Plain(), StringComparison.Ordinal);
        Assert.Contains("0.06 worked out, 1.00 aimed at; not awarded yet", page.QuerySelector("main")!.Plain(), StringComparison.Ordinal);
        // 120 hours less 7:40 over the 16 weeks from 12 March to 30 June, the begun one counted.
        Assert.Contains("112:20 of 120:00 hours, 7:02 in each of 16 weeks", page.QuerySelector("main")!.Plain(), StringComparison.Ordinal);
        var list = await log.Guardian.GetAsync(Courses(log));
        Assert.Contains("Writing0:30", list.QuerySelector("main")!.Plain(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Tell_what_two_of_them_ask_for_and_which_one_has_it()
    {
        var log = await LogAsync();
        var first = await AddAsync(log, "Biology");
        var second = await AddAsync(log, "Natural history");
        var page = await log.Guardian.GetAsync($"{Courses(log)}/{second}");
        Assert.Contains("Biology7:40 of these are counted there", page.QuerySelector("main")!.Plain(), StringComparison.Ordinal);

        var list = await log.Guardian.GetAsync(Courses(log));
        using var answer = await log.Guardian.SubmitAsync(list, within: $"main form:has([value='{second}'])");
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var turned = await log.Guardian.GetAsync($"{Courses(log)}/{first}");
        Assert.Contains("Natural history7:40 of these are counted there", turned.QuerySelector("main")!.Plain(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Have_what_a_parent_picks_for_them_and_lose_what_is_put_out()
    {
        var log = await LogAsync();
        var biology = await AddAsync(log, "Biology");
        var essays = await AddAsync(log, "Essays", subject: null);

        var entries = await log.Guardian.GetAsync($"{Courses(log)}/{essays}/entries?month=2026-03&subject={log.Subjects["writing"]}");
        using (var picked = await log.Guardian.SubmitAsync(entries, within: "#others > li form"))
            Assert.Equal(HttpStatusCode.Redirect, picked.StatusCode);
        Assert.Equal((460, 30), await MinutesAsync(log, biology, essays));

        entries = await log.Guardian.GetAsync($"{Courses(log)}/{biology}/entries?month=2026-03");
        using (var put = await log.Guardian.SubmitAsync(entries, within: "#in > li form"))
            Assert.Equal(HttpStatusCode.Redirect, put.StatusCode);
        Assert.Equal((400, 30), await MinutesAsync(log, biology, essays));

        entries = await log.Guardian.GetAsync($"{Courses(log)}/{essays}/entries?month=2026-03");
        Assert.Contains("picked by hand", entries.QuerySelector("#in")!.Plain(), StringComparison.Ordinal);
        using (var back = await log.Guardian.SubmitAsync(entries, within: "#in > li form"))
            Assert.Equal(HttpStatusCode.Redirect, back.StatusCode);
        Assert.Equal((400, 0), await MinutesAsync(log, biology, essays));
    }

    [Fact]
    public async Task Begin_their_list_of_entries_in_the_days_of_the_course()
    {
        var log = await LogAsync();
        var over = await AddAsync(log, "Algebra I", subject: null, more: new() { ["Input.First"] = "2025-08-04", ["Input.Last"] = "2026-01-30" });
        var running = await AddAsync(log, "Essays", subject: null);
        Assert.Equal("August 2025", (await log.Guardian.GetAsync($"{Courses(log)}/{over}/entries")).QuerySelector(".pager b")!.TextContent);
        Assert.Equal("March 2026", (await log.Guardian.GetAsync($"{Courses(log)}/{running}/entries")).QuerySelector(".pager b")!.TextContent);
    }

    private static Task<(int, int)> MinutesAsync(KeptLog log, Guid first, Guid second) => log.Family.FromDbAsync(async db =>
    {
        var all = (await LearnersCourses.LoadAsync(db, log.Linnet, TestServer.Today, default))!;
        Assert.Equal(all.Log.Ledger.Total.Value, all.Ledger.Courses.Sum(c => c.FromLog.Value) + all.Ledger.MinutesInNone.Value);
        return (all.Ledger[first].FromLog.Value, all.Ledger[second].FromLog.Value);
    });

    [Fact]
    public async Task Count_study_elsewhere_beside_the_log()
    {
        var log = await LogAsync();
        var id = await AddAsync(log, "Biology");
        var page = await log.Guardian.GetAsync($"{Courses(log)}/{id}/other/new");
        using (var answer = await log.Guardian.SubmitAsync(page, new() { ["Input.What"] = "Pond week", ["Input.With"] = "the mill", ["Input.Hours"] = "10" }))
            Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        // A second sending of the same form adds nothing.
        using (await log.Guardian.SubmitAsync(page, new() { ["Input.What"] = "Pond week", ["Input.With"] = "the mill", ["Input.Hours"] = "10" }))
        {
        }

        var course = await log.Guardian.GetAsync($"{Courses(log)}/{id}");
        Assert.Contains("7:40 from the log, 10:00 elsewhere, 17:40 in all", course.QuerySelector("main")!.Plain(), StringComparison.Ordinal);
        var study = await log.Family.FromDbAsync(db => db.OtherStudies.SingleAsync());
        using var faulty = await log.Guardian.SubmitAsync(await log.Guardian.GetAsync($"{Courses(log)}/{id}/other/{study.Id}"), new() { ["Input.Hours"] = "0", ["Input.Minutes"] = "0" });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, faulty.StatusCode);
        Assert.Contains("Say how long", await faulty.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Input.Title", "", "Say what the course is called")]
    [InlineData("Input.Aim", "lots", "at most two decimals")]
    [InlineData("Input.Last", "2020-01-01", "It ends on the day on which it begins, or later")]
    [InlineData("Input.Basis", "CollegeCourse", "Write how many credits the college gave")]
    public async Task Say_beside_the_field_what_is_wrong(string field, string value, string message)
    {
        var log = await KeptLog.OfAsync(server, "Linnet");
        var page = await log.Guardian.GetAsync($"{Courses(log)}/new/terms");
        using var answer = await log.Guardian.SubmitAsync(page, new() { ["Input.Title"] = "Biology", ["Input.Area"] = "Science", [field] = value });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains(message, await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Keep_a_change_that_came_first_and_show_the_form_again()
    {
        var log = await LogAsync();
        var id = await AddAsync(log, "Biology");
        var (mine, theirs) = (await log.Guardian.GetAsync($"{Courses(log)}/{id}/terms"), await log.Guardian.GetAsync($"{Courses(log)}/{id}/terms"));
        using (await log.Guardian.SubmitAsync(theirs, new() { ["Input.Title"] = "Botany" }))
        {
        }

        using var late = await log.Guardian.SubmitAsync(mine, new() { ["Input.Title"] = "Zoology" });
        Assert.Equal(HttpStatusCode.Conflict, late.StatusCode);
        Assert.Contains("value=\"Zoology\"", await late.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal("Botany", (await RowAsync(log, id)).Title);
    }

    [Fact]
    public async Task Are_removed_after_it_was_said_once_more_and_the_log_stays()
    {
        var log = await LogAsync();
        var id = await AddAsync(log, "Biology");
        var page = await log.Guardian.GetAsync($"{Courses(log)}/{id}/terms?remove=true");
        Assert.Contains("What was logged stays in the log", page.QuerySelector("main")!.Plain(), StringComparison.Ordinal);
        using var answer = await log.Guardian.SubmitAsync(page);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal((0, 2), await log.Family.FromDbAsync(async db => (await db.HighSchoolCourses.CountAsync(), await db.LogEntries.CountAsync())));
    }

    [Fact]
    public async Task Keep_rules_and_lines_of_what_is_lacking()
    {
        var log = await LogAsync();
        var id = await AddAsync(log, "Biology", subject: null);
        var page = await log.Guardian.GetAsync($"{Courses(log)}/{id}");
        using (await log.Guardian.SubmitAsync(page, new() { ["Rule.SubjectId"] = log.Subjects["writing"].ToString() }, within: "#subjects details form"))
        {
        }

        Assert.Equal(log.Subjects["writing"], Assert.Single((await RowAsync(log, id)).Rules).SubjectId);
        page = await log.Guardian.GetAsync($"{Courses(log)}/{id}");
        using (await log.Guardian.SubmitAsync(page, new() { ["Lines[0].What"] = "Laboratory book" }, within: "#lacking form"))
        {
        }

        Assert.Equal([new LackingLine("Laboratory book", false)], (await RowAsync(log, id)).Lacking);
        page = await log.Guardian.GetAsync($"{Courses(log)}/{id}");
        using (await log.Guardian.SubmitAsync(page, within: "#subjects .rows form"))
        {
        }

        Assert.Empty((await RowAsync(log, id)).Rules);
    }
}
