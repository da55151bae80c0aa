using System.Net;
using CoopLessons.Core.Hours;
using CoopLessons.Data.Planning;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Planning;

[Collection(PlanningServer.Name)]
public sealed class Appointments_on_their_days(TestServer server)
{
    private static Task<Guid> AddAsync(PlanningFamily family, AppointmentKind kind = AppointmentKind.LessonOut, string title = "Fiddle lesson", string rule = "FREQ=WEEKLY;BYDAY=TH", DateOnly[]? except = null) =>
        family.AddAsync(id => new Appointment(id, new AppointmentFacts(
            title, kind, [family.Wren], [], TestServer.Today.AddDays(-7), 14 * 60, 45, rule, except ?? [], family.Subjects["music"])));

    [Fact]
    public async Task Stand_in_the_week_and_on_the_day_in_the_order_of_time()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var course = await family.CourseAsync();
        await AddAsync(family);
        await family.LessonAsync(course, TestServer.Today, 14 * 60 + 50);
        await family.LessonAsync(course, TestServer.Today, 9 * 60);
        Assert.Equal(["9:00", "14:00", "14:50"], (await family.TodayAsync()).QuerySelectorAll(".strip > li .strip-time").Select(t => t.TextContent));
        var day = (await family.Guardian.GetAsync("/week")).QuerySelector(".day.is-today")!;
        Assert.Equal(["Mathematics, lesson 61", "Fiddle lesson", "Mathematics, lesson 62"], day.QuerySelectorAll(".row-main a").Select(a => a.TextContent));
        Assert.Empty((await family.Guardian.GetAsync("/today/2026-03-13")).QuerySelectorAll(".strip-fixed"));
    }

    [Fact]
    public async Task Are_left_out_where_the_family_says_so()
    {
        var family = await PlanningFamily.MakeAsync(server);
        await AddAsync(family, except: [TestServer.Today]);
        Assert.Empty((await family.TodayAsync()).QuerySelectorAll(".strip-fixed"));
        Assert.Single((await family.Guardian.GetAsync("/today/2026-03-19")).QuerySelectorAll(".strip-fixed"));
    }

    [Fact]
    public async Task Are_logged_with_one_tap_into_a_form_that_is_filled_in()
    {
        var family = await PlanningFamily.MakeAsync(server);
        await AddAsync(family, AppointmentKind.CoOp, "At the mill");
        var path = (await family.TodayAsync()).QuerySelector(".strip-fixed a")!.GetAttribute("href")!;
        var form = await family.Guardian.GetAsync(path);
        Assert.Equal("At the mill", form.QuerySelector("#Input_What")!.GetAttribute("value"));
        using var answer = await family.Guardian.SubmitAsync(form);
        Assert.Equal("/today/2026-03-12", answer.Headers.Location!.OriginalString);
        var entry = await family.Family.FromDbAsync(db => db.LogRevisions.Include(r => r.Times).Include(r => r.Subjects).SingleAsync());
        Assert.Equal((Place.Coop, 14 * 60, TestServer.Today), (entry.Place, entry.StartsAt!.Value, entry.Date));
        Assert.Equal((family.Wren, 45), entry.Times.Select(t => (t.LearnerId, t.Minutes)).Single());
        Assert.Equal(family.Subjects["music"], Assert.Single(entry.Subjects).SubjectId);
        // Logged, it offers no second log.
        Assert.Empty((await family.TodayAsync()).QuerySelectorAll(".strip-fixed a"));
    }

    [Fact]
    public async Task Count_as_the_last_one_of_their_name_did()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var id = await AddAsync(family);
        var path = $"/log/new?appointment={id}&date=2026-03-05";
        var form = await family.Guardian.GetAsync(path);
        var rows = form.QuerySelectorAll("input[name$='.SubjectId']").Select(i => i.GetAttribute("value")).ToList();
        var (music, art) = (rows.IndexOf(family.Subjects["music"].ToString()), rows.IndexOf(family.Subjects["art"].ToString()));
        using var answer = await family.Guardian.SubmitAsync(form, new() { [$"Input.Counts[{music}].Weight"] = "", [$"Input.Counts[{art}].Weight"] = "1" });
        Assert.Equal("/today/2026-03-05", answer.Headers.Location!.OriginalString);
        var next = await family.Guardian.GetAsync($"/log/new?appointment={id}&date=2026-03-12");
        Assert.Equal("1", next.QuerySelector($"input[name='Input.Counts[{art}].Weight']")!.GetAttribute("value"));
    }

    [Fact]
    public async Task Offer_no_log_for_a_nap_or_a_day_to_come()
    {
        var family = await PlanningFamily.MakeAsync(server);
        await AddAsync(family, AppointmentKind.Nap, "Wren sleeps");
        await AddAsync(family, AppointmentKind.Away, "Away");
        var lesson = await AddAsync(family);
        Assert.Equal([$"/log/new?appointment={lesson}&date=2026-03-12"], (await family.TodayAsync()).QuerySelectorAll(".strip-fixed a").Select(a => a.GetAttribute("href")!));
        Assert.Single((await family.TodayAsync()).QuerySelectorAll(".strip-fixed.is-quiet"));
        Assert.Empty((await family.Guardian.GetAsync("/today/2026-03-19")).QuerySelectorAll(".strip-fixed a"));
    }

    [Fact]
    public async Task Are_read_and_logged_by_a_helper_who_plans_nothing()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var id = await AddAsync(family);
        var course = await family.CourseAsync();
        var helper = await server.HelperAsync(family.Family);
        var path = (await helper.GetAsync("/today")).QuerySelector(".strip-fixed a")!.GetAttribute("href")!;
        Assert.Equal("Fiddle lesson", (await helper.GetAsync(path)).QuerySelector("#Input_What")!.GetAttribute("value"));
        foreach (var closed in new[] { "", "/courses/new", $"/courses/{course}", "/loops/new", $"/appointments/{id}", "/adults/new", "/hours", $"/hours/{family.Wren}", "/sittings", "/wishes/new" })
        {
            using var answer = await helper.OpenAsync("/week/plan" + closed);
            Assert.True(answer.StatusCode is HttpStatusCode.Redirect or HttpStatusCode.Forbidden or HttpStatusCode.NotFound, $"{closed} answered {answer.StatusCode}");
            Assert.NotEqual(HttpStatusCode.OK, answer.StatusCode);
        }
    }

    [Fact]
    public async Task Of_another_family_fill_no_form()
    {
        var (family, other) = (await PlanningFamily.MakeAsync(server), await PlanningFamily.MakeAsync(server));
        using var answer = await family.Guardian.OpenAsync($"/log/new?appointment={await AddAsync(other)}&date=2026-03-12");
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }
}
