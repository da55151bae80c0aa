using System.Net;
using AngleSharp.Html.Dom;
using CoopLessons.Core.Families;
using CoopLessons.Core.Units;
using CoopLessons.Data.Families;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Today;

[Collection(PlanningServer.Name)]
public sealed class ADayOnPaper(TestServer server)
{
    private const string Sheet = "/today/2026-03-12/sheet";

    private static string[] Lines(IHtmlDocument page) => [.. page.QuerySelectorAll(".stand-in-day > li").Select(l => l.Text("p").Replace('\u00a0', ' '))];

    [Fact]
    public async Task Tells_a_helper_who_does_what_from_when_to_when_and_when_to_look()
    {
        var day = await PlannedDay.MakeAsync(server);
        var helper = await server.HelperAsync(day.Family);
        var lines = Lines(await helper.GetAsync(Sheet));

        Assert.Equal(4, lines.Length);
        Assert.StartsWith("8:30 stop at 9:00 Wren, Linnet and Heron: Read aloud: chapter 7 · 30 min · somebody beside", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("9:00 stop at 9:15 Wren and Linnet: Start the sourdough · 15 min · an adult's hands on", lines[1].Replace('’', '\''), StringComparison.Ordinal);
        Assert.Equal("10:45 Look: Start the sourdough. The starter rises until about now: see whether it is ready.", lines[2]);
        Assert.StartsWith("when it suits Wren: Letters · 20 min", lines[3], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Tells_what_to_do_at_each_one_s_level_with_cautions_and_what_to_take_out()
    {
        var day = await PlannedDay.MakeAsync(server);
        var line = Lines(await day.Guardian.GetAsync(Sheet))[1];

        Assert.Contains("Stir flour and water. Cover it.", line, StringComparison.Ordinal);
        Assert.Contains("Wren Stirs and names what it smells like.", line, StringComparison.Ordinal);
        Assert.Contains("Linnet Weighs the flour and writes it down.", line, StringComparison.Ordinal);
        Assert.Contains("In it: Wheat flour (wheat).", line, StringComparison.Ordinal);
        Assert.Contains("small parts: Lid rings are small enough to swallow.", line, StringComparison.Ordinal);
        // A hundred grams for each of two, two jars for the family.
        Assert.Contains("Take out: 200 g Rye flour, 2 Jar. It lies:", line, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Names_each_child_s_allergies_and_the_numbers_to_call()
    {
        var day = await PlannedDay.MakeAsync(server);
        await day.Family.WithDbAsync(async db =>
        {
            var wren = await db.Learners.SingleAsync(l => l.Id == day.Wren);
            wren.Describe("Wren", wren.BirthDate, [Allergen.Peanuts, Allergen.TreeNuts], "kiwi makes her lips swell");
            db.Add(new TeachingAdult(Guid.CreateVersion7(), "Iris", null, "555-0142", 0));
            db.Add(new TeachingAdult(Guid.CreateVersion7(), "Basil", null, "", 1));
            await db.SaveChangesAsync();
        });
        var page = await day.Guardian.GetAsync(Sheet);
        var children = page.QuerySelectorAll("#children ~ ul li").Select(l => l.TextContent.Squeezed()).ToList();

        Assert.Equal("Wren, 6: allergic to tree nuts and peanuts. The parents write: kiwi makes her lips swell", children[0]);
        Assert.Equal("Linnet, 9: no allergy is written down", children[1]);
        Assert.Equal("Heron, 2: allergic to wheat.", children[2]);
        Assert.Equal(["Iris: 555-0142", "Emergency (United States): 911", "Another number:"], page.QuerySelectorAll("#numbers ~ ul li").Select(l => l.TextContent.Squeezed()));
    }

    [Fact]
    public async Task Warns_where_a_child_meets_what_it_is_allergic_to()
    {
        var day = await PlannedDay.MakeAsync(server);
        await day.Family.WithDbAsync(async db =>
        {
            var linnet = await db.Learners.SingleAsync(l => l.Id == day.Linnet);
            linnet.Describe("Linnet", linnet.BirthDate, [Allergen.Wheat], "");
            await db.SaveChangesAsync();
        });
        Assert.Contains("Look Wheat flour holds wheat, and Linnet is allergic to it.", Lines(await day.Guardian.GetAsync(Sheet))[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Holds_the_appointments_of_the_day_at_their_time()
    {
        var day = await PlannedDay.MakeAsync(server);
        await day.Family.WithDbAsync(async db =>
        {
            var iris = new TeachingAdult(Guid.CreateVersion7(), "Iris", null, "", 0);
            db.Add(iris);
            db.Add(new Appointment(Guid.CreateVersion7(), new AppointmentFacts("Nap", AppointmentKind.Nap, [day.Heron], [], new DateOnly(2026, 3, 2), 12 * 60 + 45, 105, "FREQ=DAILY", [], null)));
            db.Add(new Appointment(Guid.CreateVersion7(), new AppointmentFacts("Music lesson", AppointmentKind.LessonOut, [day.Linnet], [iris.Id], new DateOnly(2026, 3, 12), 9 * 60, 30, "", [], null)));
            db.Add(new Appointment(Guid.CreateVersion7(), new AppointmentFacts("Swimming", AppointmentKind.LessonOut, [day.Linnet], [], new DateOnly(2026, 3, 13), 9 * 60, 30, "", [], null)));
            await db.SaveChangesAsync();
        });
        var lines = Lines(await day.Guardian.GetAsync(Sheet));
        Assert.Equal("9:00 stop at 9:30 Music lesson: Linnet and Iris", lines[1]);
        Assert.Equal("12:45 stop at 14:30 Nap: Heron", lines[4]);
        Assert.Equal(6, lines.Length);
    }

    [Fact]
    public async Task Leaves_out_what_is_done_and_what_was_let_go()
    {
        var day = await PlannedDay.MakeAsync(server);
        await day.Guardian.SubmitAsync(await day.TodayAsync(), within: PlannedDay.Form(day.ReadAloud, "Done")).RedirectedAsync();
        await day.Family.WithDbAsync(async db =>
        {
            (await db.PlannedSessions.SingleAsync(s => s.Id == day.Letters)).LetGo();
            await db.SaveChangesAsync();
        });
        Assert.Equal(2, Lines(await day.Guardian.GetAsync(Sheet)).Length);
    }

    [Fact]
    public async Task Tells_a_lesson_of_a_course_by_its_number()
    {
        var day = await PlannedDay.MakeAsync(server);
        await day.Family.WithDbAsync(async db =>
        {
            var course = new Course(Guid.CreateVersion7(), new CourseFacts("Mathematics", day.Subjects["mathematics"], [day.Linnet], 30, 5, AdultNeed.Beside, null, 61, true));
            db.Add(course);
            db.Add(PlannedSession.OfCourse(Guid.CreateVersion7(), course.Id, TestServer.Today, 10 * 60, 3, [day.Linnet]));
            await db.SaveChangesAsync();
        });
        Assert.Equal("10:00 stop at 10:30 Linnet: Mathematics, lesson 61 · 30 min · somebody beside What to do stands in the course’s own book.", Lines(await day.Guardian.GetAsync(Sheet))[2]);
    }

    [Fact]
    public async Task Is_set_smaller_where_there_is_much_to_read()
    {
        var day = await PlannedDay.MakeAsync(server);
        Assert.Null((await day.Guardian.GetAsync(Sheet)).QuerySelector(".stand-in.is-long"));
        await day.Family.WithDbAsync(async db =>
        {
            var letters = await db.Activities.SingleAsync(a => a.Code == "letters");
            letters.Describe(new(1, 3, letters.Title, letters.Kind, new string('a', 3000), letters.AdultNeed, 20, 0, ""), letters.Details);
            await db.SaveChangesAsync();
        });
        Assert.NotNull((await day.Guardian.GetAsync(Sheet)).QuerySelector(".stand-in.is-long"));
    }

    [Fact]
    public async Task Is_told_of_any_day_and_says_when_there_is_nothing()
    {
        var day = await PlannedDay.MakeAsync(server);
        Assert.Contains("Nothing is planned", (await day.Guardian.GetAsync("/today/2026-04-02/sheet")).Text("main"), StringComparison.Ordinal);
        foreach (var date in new[] { "2026-02-30", "tomorrow", "1066-10-14" })
        {
            using var answer = await day.Guardian.OpenAsync($"/today/{date}/sheet");
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        }
    }

    [Fact]
    public async Task Is_one_s_own_family_s_alone()
    {
        var day = await PlannedDay.MakeAsync(server);
        var other = await server.FamilyAsync("Birch");
        var text = (await other.Guardian.GetAsync(Sheet)).Text("main");
        Assert.DoesNotContain("sourdough", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Wren", text, StringComparison.Ordinal);
        Assert.NotNull((await day.TodayAsync()).QuerySelector($"a[href='{Sheet}']"));
    }
}
