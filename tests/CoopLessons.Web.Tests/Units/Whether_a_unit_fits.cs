using System.Net;
using AngleSharp.Html.Dom;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Schedule;
using CoopLessons.Core.Units;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Units;
using CoopLessons.Web.Charts;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Units;

/// <summary>
/// Wren and Linnet in the usual hours, five hours on each of five days, and Iris with an hour and a half on Mondays and nothing
/// else. The songs of the mill ask for 20 minutes beside somebody and 30 alone in week 1, with a look after the paint has
/// dried, and for 40 minutes of hands in week 2.
/// </summary>
[Collection(PlanningServer.Name)]
public class Whether_a_unit_fits(TestServer server)
{
    private static readonly DateOnly NextMonday = new(2026, 3, 16);

    private sealed record Home(TestFamily Family, MillSongs Songs, Guid Wren, Guid Linnet, Guid Iris)
    {
        public Task<IHtmlDocument> PageAsync(string query = "") => Family.Guardian.GetAsync($"/units/{Songs.Id}{query}");

        public Task AddAsync(params object[] rows) => Family.WithDbAsync(async db =>
        {
            db.AddRange(rows);
            await db.SaveChangesAsync();
        });
    }

    private async Task<Home> HomeAsync(int handsMinutes = 90)
    {
        var family = await server.FamilyAsync();
        var home = new Home(
            family, await family.MillSongsAsync(), await family.LearnerAsync("Wren", new DateOnly(2019, 5, 2)), await family.LearnerAsync("Linnet", new DateOnly(2016, 9, 14)), Guid.CreateVersion7());
        await home.AddAsync(
            new TeachingAdult(home.Iris, "Iris", null, "", 0),
            new DayPattern(home.Iris, new WeekHours(new Dictionary<DayOfWeek, IReadOnlyList<Stretch>> { [DayOfWeek.Monday] = [new Stretch(9 * 60, 9 * 60 + handsMinutes)] })));
        return home;
    }

    private static string Bars(IHtmlDocument page) => page.Text("#fit .bars li");

    private static string[] Row(IHtmlDocument page, string name) =>
        [.. page.QuerySelectorAll("#fit tbody tr").Single(r => r.QuerySelector("th")!.TextContent == name).QuerySelectorAll("td").Select(c => c.TextContent)];

    [Fact]
    public async Task Stands_beside_what_there_is_for_each_child_and_for_the_hands()
    {
        var home = await HomeAsync();
        var page = await home.PageAsync();
        // 40 of 90 minutes of hands are a greater share than 55 of 1,500 of a child: week 2 is fuller.
        Assert.Contains("Week 2, if the unit were taken as proposed, from Monday 23 March, is the fullest: it fits on paper.", page.Text("#fit > p"), StringComparison.Ordinal);
        Assert.Equal(
            "Wren 40 min of 25 h, 24 h 20 to spare Linnet 40 min of 25 h, 24 h 20 to spare The grown-ups’ hands 40 min of 1 h 30, 50 min to spare",
            Bars(page));
        Assert.Equal("wk 1: fits wk 2: fits", page.Text("#fit nav a").Replace('\u00a0', ' '));
    }

    [Fact]
    public async Task Is_shown_for_the_week_that_is_asked_for()
    {
        var home = await HomeAsync();
        var page = await home.PageAsync("?week=1");
        // 20 and 30 minutes and five for the look; of the hands only the look.
        Assert.StartsWith("Wren 55 min of 25 h", Bars(page), StringComparison.Ordinal);
        Assert.EndsWith("The grown-ups’ hands 5 min of 1 h 30, 1 h 25 to spare", Bars(page), StringComparison.Ordinal);
        Assert.Equal(["true", null], page.QuerySelectorAll("#fit nav a").Select(a => a.GetAttribute("aria-current")));
        Assert.Contains("Week 2", (await home.PageAsync("?week=9")).Text("#fit > p"), StringComparison.Ordinal);
        Assert.Contains("Week 2", (await home.PageAsync("?week=soon")).Text("#fit > p"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_put_in_place_alone_where_only_another_week_was_chosen()
    {
        var home = await HomeAsync();
        var link = (await home.PageAsync()).QuerySelector("#fit nav a")!.GetAttribute("hx-get")!;
        var answer = await home.Family.Guardian.OpenAsync(link);
        var part = await Visitor.ParseAsync(answer);
        Assert.Null(part.QuerySelector("#plan"));
        Assert.Equal("Week 1: fits", part.QuerySelector("#fit")!.GetAttribute("data-announce"));
    }

    [Fact]
    public async Task Does_not_where_hands_are_missing_and_one_tap_leaves_out_what_is_too_much()
    {
        var home = await HomeAsync(handsMinutes: 30);
        var page = await home.PageAsync("?week=2");
        Assert.Contains("too much for the grown-ups’ hands", page.Text("#fit > p"), StringComparison.Ordinal);
        Assert.Contains("40 min of 30 min, 10 min too much", Bars(page), StringComparison.Ordinal);
        Assert.Equal("What would help the grown-ups’ hands", page.Text("#fit h3"));
        Assert.Contains("with somebody beside instead of an adult’s hands gives 40 min back, and nothing is lost.", page.Text("#fit .rows"), StringComparison.Ordinal);
        Assert.NotNull(page.QuerySelector($"#fit .rows a[href='/units/{home.Songs.Id}/activities/{home.Songs.Wheel}/edit']"));

        var after = await home.Family.Guardian.SubmitAsync(page, within: "#fit .rows", htmx: true).AnsweredAsync(HttpStatusCode.OK);
        Assert.Contains("0 min of 30 min, 30 min to spare", Bars(after), StringComparison.Ordinal);
        Assert.EndsWith("; week 2: fits", after.QuerySelector("#plan")!.GetAttribute("data-announce"), StringComparison.Ordinal);
        Assert.True((await home.Family.UnitAsync(home.Songs.Id)).Activities.Single(a => a.Id == home.Songs.Wheel).LeftOut);
    }

    [Fact]
    public async Task Keeps_the_week_that_was_asked_for_without_scripts_too()
    {
        var home = await HomeAsync(handsMinutes: 30);
        var next = await home.Family.Guardian.SubmitAsync(await home.PageAsync("?week=2"), within: "#fit .rows").RedirectedAsync();
        Assert.Equal($"/units/{home.Songs.Id}?week=2#a-{home.Songs.Wheel}", next);
    }

    [Fact]
    public async Task Changes_at_once_with_the_subjects_that_are_taken()
    {
        var home = await HomeAsync();
        var music = await home.Family.SubjectAsync("music");
        var after = await home.Family.Guardian.SubmitAsync(await home.PageAsync("?week=1"), new() { ["taken"] = null }, "#choose-button", htmx: true, more: [new("taken", music.ToString())])
            .AnsweredAsync(HttpStatusCode.OK);
        // The picture counts for music as well and stays; science has gone with the wheel of week 2.
        Assert.StartsWith("Wren 55 min of 25 h", Bars(after), StringComparison.Ordinal);
        var none = await home.Family.Guardian.SubmitAsync(after, new() { ["taken"] = null }, "#choose-button", htmx: true).AnsweredAsync(HttpStatusCode.OK);
        Assert.StartsWith("Wren 0 min of 25 h", Bars(none), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Counts_courses_and_loops_apart_and_takes_appointments_off_the_hours()
    {
        var home = await HomeAsync();
        var subject = await home.Family.SubjectAsync("mathematics");
        await home.AddAsync(
            new Course(Guid.CreateVersion7(), new CourseFacts("Mathematics", subject, [home.Wren], 30, 5, AdultNeed.Beside, null, 61, true)),
            new Course(Guid.CreateVersion7(), new CourseFacts("Letters", subject, [home.Linnet], 20, 4, AdultNeed.Alone, 12, 11, true)),
            new LessonLoop(Guid.CreateVersion7(), new LoopFacts("Afternoons", [new LoopStep(Guid.CreateVersion7(), "Songs", subject)], 25, 2, [home.Wren, home.Linnet], AdultNeed.HandsOn, false)),
            new Appointment(Guid.CreateVersion7(), new AppointmentFacts("Music lesson", AppointmentKind.LessonOut, [home.Wren], [home.Iris], new DateOnly(2026, 3, 2), 9 * 60 + 30, 60, "FREQ=WEEKLY", [], null)));
        var page = await home.PageAsync("?week=2");

        // Wren: 40, 150 and 50 of 1,500 less an hour of music. Linnet has only two lessons left: 40.
        Assert.Equal(["40 min", "2 h 30", "50 min", "4 h", "24 h", "20 h to spare"], Row(page, "Wren"));
        Assert.Equal(["40 min", "40 min", "50 min", "2 h 10", "25 h", "22 h 50 to spare"], Row(page, "Linnet"));
        // Iris is away from 9:30 to 10:30 as well and keeps the half hour before.
        Assert.Equal(["40 min", "0 min", "50 min", "1 h 30", "30 min", "1 h too much"], Row(page, "The grown-ups’ hands"));
        Assert.Contains("No one thing is enough", page.Text("#fit"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Says_so_where_the_week_lies_in_a_break()
    {
        var home = await HomeAsync();
        await home.Family.WithDbAsync(async db =>
        {
            (await db.SchoolYears.Include(y => y.Breaks).SingleAsync()).AddBreak(Guid.CreateVersion7(), "Spring", new DayRange(NextMonday, NextMonday.AddDays(6)));
            (await db.Units.SingleAsync()).Take(NextMonday);
            await db.SaveChangesAsync();
        });
        var page = await home.PageAsync();
        Assert.Contains("Week 1, from Monday 16 March, is the fullest: your calendar has no teaching day in it.", page.Text("#fit > p"), StringComparison.Ordinal);
        Assert.Equal("wk 1: no teaching day wk 2: fits", page.Text("#fit nav a").Replace('\u00a0', ' '));
    }

    [Fact]
    public async Task Holds_what_other_units_ask_for_in_the_same_week_and_leads_to_them()
    {
        var home = await HomeAsync(handsMinutes: 60);
        var (otherId, bake) = (Guid.CreateVersion7(), Guid.CreateVersion7());
        var science = await home.Family.SubjectAsync("science");
        var other = new Unit(otherId, "Bread", "", 1);
        other.Add(new Activity(bake, "bake", new ActivityFacts(1, 1, "Bake", ActivityKind.Cooking, "Bake.", AdultNeed.HandsOn, 35, 0, ""), UnitSamples.Counting((science, 1))));
        other.Take(NextMonday.AddDays(7));
        var shelved = new Unit(Guid.CreateVersion7(), "Later", "", 1);
        shelved.Add(new Activity(Guid.CreateVersion7(), "late", new ActivityFacts(1, 1, "Late", ActivityKind.Cooking, "Late.", AdultNeed.HandsOn, 300, 0, ""), UnitSamples.Counting((science, 1))));
        await home.AddAsync(other, shelved);
        var page = await home.PageAsync("?week=2");

        Assert.Equal("1 h 15", Row(page, "The grown-ups’ hands")[0]);
        Assert.Contains("Leaving out “Bake” gives 35 min back, in Bread.", page.Text("#fit .rows"), StringComparison.Ordinal);
        Assert.NotNull(page.QuerySelector($"#fit .rows a[href='/units/{otherId}#a-{bake}']"));
        Assert.Null(page.QuerySelector($"#fit [name=activity][value='{bake}']"));
    }

    [Fact]
    public async Task Asks_for_children_where_there_are_none()
    {
        var family = await server.FamilyAsync();
        var songs = await family.MillSongsAsync();
        var page = await family.Guardian.GetAsync($"/units/{songs.Id}");
        Assert.NotNull(page.QuerySelector("#fit a[href='/family/learners/new']"));
        // Nobody is written down who teaches: somebody is taken to be there in the usual hours.
        Assert.Equal("The grown-ups’ hands 40 min of 25 h, 24 h 20 to spare", Bars(page));
    }

    [Fact]
    public void Draws_two_bars_to_one_scale_with_what_is_too_much_apart()
    {
        Assert.Equal(new PairedBar(50, 0, 100), PairedBar.Of(60, 120, 120));
        Assert.Equal(new PairedBar(25, 75, 25), PairedBar.Of(120, 30, 120));
        Assert.Equal(new PairedBar(0, 0, 0), PairedBar.Of(0, 0, 0));
    }
}
