using System.Globalization;
using System.Net;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Prepare.Books;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Files;
using CoopLessons.Data.Log;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Log;

[Collection(SharedServer.Name)]
public sealed class SundayNight(TestServer server)
{
    private const string Path = "/log/catch-up";

    [Fact]
    public async Task Days_without_a_word_come_back_with_what_was_planned_and_what_is_usual()
    {
        var week = await AForgottenWeek.MakeAsync(server);
        var page = await week.Guardian.GetAsync(Path);
        Assert.Equal(["Wednesday 11 March", "Tuesday 10 March"], page.QuerySelectorAll(".given-day h2").Select(h => h.TextContent));
        Assert.Equal(["Mill walk", "Letters", "Swept the mill"], page.QuerySelectorAll(".given legend").Select(l => l.FirstChild!.TextContent.Trim()));
        Assert.Contains("Heron, Linnet, Wren and Finch, 45\u00a0min each, Science 1, planned", Given(page, "Mill walk").TextContent, StringComparison.Ordinal);
        Assert.Contains("usual on Tuesdays", Given(page, "Swept the mill").TextContent, StringComparison.Ordinal);
        // Nothing is answered beforehand.
        Assert.DoesNotContain(page.QuerySelectorAll<IHtmlInputElement>(".given [type=radio], .whole input"), i => i.IsChecked);
        var today = await week.Guardian.GetAsync("/today");
        Assert.Contains("2 days of the last two weeks", today.QuerySelector($"a[href='{Path}']")!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("overdue", today.Body!.TextContent, StringComparison.OrdinalIgnoreCase);
        Assert.NotNull((await week.Guardian.GetAsync("/log")).QuerySelector($"a[href='{Path}']"));
    }

    [Fact]
    public async Task Yes_writes_it_on_its_day_and_no_leaves_it_to_be_moved()
    {
        var week = await AForgottenWeek.MakeAsync(server);
        var page = await week.Guardian.GetAsync(Path);
        using var answer = await week.Guardian.SubmitAsync(page, Answers(page, ("Mill walk", "yes"), ("Letters", "no")));
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var written = Assert.Single(await week.WrittenAsync(AForgottenWeek.Wednesday));
        Assert.Equal(("Mill walk", 4, TestServer.Start.UtcDateTime), (written.What, written.Times.Count, written.WrittenAt));
        Assert.Equal((SessionState.Done, SessionState.NotDone), ((await week.SessionAsync(week.Walk)).State, (await week.SessionAsync(week.Letters)).State));
        Assert.Empty(await week.WrittenAsync(AForgottenWeek.Tuesday));
        var next = await week.Guardian.GetAsync(Path);
        Assert.Equal(["Tuesday 10 March"], next.QuerySelectorAll(".given-day h2").Select(h => h.TextContent));
        Assert.Contains("written on Thursday 12 March", (await week.Guardian.GetAsync("/log")).QuerySelector("section.sheet")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Blanks_stay_blank_and_count_nothing()
    {
        var week = await AForgottenWeek.MakeAsync(server);
        using var answer = await week.Guardian.SubmitAsync(await week.Guardian.GetAsync(Path));
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Empty(await week.WrittenAsync(AForgottenWeek.Wednesday));
        Assert.Equal(SessionState.Planned, (await week.SessionAsync(week.Walk)).State);
    }

    [Fact]
    public async Task As_planned_all_of_it_says_yes_where_nothing_else_is_said()
    {
        var week = await AForgottenWeek.MakeAsync(server);
        var page = await week.Guardian.GetAsync(Path);
        Assert.Single(page.QuerySelectorAll(".whole"));
        var answers = Answers(page, ("Letters", "no"));
        answers["Whole"] = "2026-03-11";
        using var answer = await week.Guardian.SubmitAsync(page, answers);
        Assert.Equal("Mill walk", Assert.Single(await week.WrittenAsync(AForgottenWeek.Wednesday)).What);
        Assert.Equal(SessionState.NotDone, (await week.SessionAsync(week.Letters)).State);
        Assert.Empty(await week.WrittenAsync(AForgottenWeek.Tuesday));
    }

    [Fact]
    public async Task Changed_opens_minutes_and_children_in_place()
    {
        var week = await AForgottenWeek.MakeAsync(server);
        var page = await week.Guardian.GetAsync(Path);
        var answers = Answers(page, ("Swept the mill", "changed"));
        var line = Number(page, "Swept the mill");
        answers[$"Lines[{line}].Minutes"] = "15";
        answers[$"Lines[{line}].Who"] = week.Children[1].ToString();
        using var answer = await week.Guardian.SubmitAsync(page, answers);
        var written = Assert.Single(await week.WrittenAsync(AForgottenWeek.Tuesday));
        Assert.Equal((week.Children[1], 15), (Assert.Single(written.Times).LearnerId, written.Times[0].Minutes));
    }

    [Theory]
    [InlineData("0", true, "from 1 to 1440")]
    [InlineData("1441", true, "from 1 to 1440")]
    [InlineData("a while", true, "from 1 to 1440")]
    [InlineData("20", false, "at least one child")]
    public async Task What_cannot_be_is_refused_beside_its_line_and_nothing_is_lost(string minutes, bool somebody, string message)
    {
        var week = await AForgottenWeek.MakeAsync(server);
        var page = await week.Guardian.GetAsync(Path);
        var answers = Answers(page, ("Mill walk", "yes"), ("Letters", "changed"));
        var line = Number(page, "Letters");
        answers[$"Lines[{line}].Minutes"] = minutes;
        answers[$"Lines[{line}].Who"] = somebody ? week.Children[0].ToString() : null;
        using var answer = await week.Guardian.SubmitAsync(page, answers);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var again = await Visitor.ParseAsync(answer);
        Assert.Contains(message, Given(again, "Letters").QuerySelector(".fault")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(minutes, Given(again, "Letters").QuerySelector<IHtmlInputElement>("[type=number]")!.GetAttribute("value"));
        Assert.Equal("yes", Given(again, "Mill walk").QuerySelectorAll<IHtmlInputElement>("[type=radio]").Single(r => r.IsChecked).Value);
        Assert.Empty(await week.WrittenAsync(AForgottenWeek.Wednesday));
    }

    [Fact]
    public async Task A_form_sent_twice_changes_nothing_more()
    {
        var week = await AForgottenWeek.MakeAsync(server);
        var page = await week.Guardian.GetAsync(Path);
        var answers = Answers(page, ("Mill walk", "yes"), ("Letters", "no"), ("Swept the mill", "yes"));
        using var first = await week.Guardian.SubmitAsync(page, answers);
        using var second = await week.Guardian.SubmitAsync(page, answers);
        Assert.Equal((HttpStatusCode.Redirect, HttpStatusCode.Redirect), (first.StatusCode, second.StatusCode));
        Assert.Single(await week.WrittenAsync(AForgottenWeek.Wednesday));
        Assert.Single(await week.WrittenAsync(AForgottenWeek.Tuesday));
    }

    [Fact]
    public async Task What_somebody_logged_meanwhile_is_not_counted_twice()
    {
        var week = await AForgottenWeek.MakeAsync(server);
        var page = await week.Guardian.GetAsync(Path);
        var helper = await server.HelperAsync(week.Family);
        using var theirs = await helper.SubmitAsync(await helper.GetAsync($"/log/new?session={week.Walk}"));
        using var mine = await week.Guardian.SubmitAsync(page, Answers(page, ("Mill walk", "yes"), ("Letters", "yes")));
        Assert.Equal(HttpStatusCode.Conflict, mine.StatusCode);
        var again = await Visitor.ParseAsync(mine);
        Assert.Equal("yes", Given(again, "Letters").QuerySelectorAll<IHtmlInputElement>("[type=radio]").Single(r => r.IsChecked).Value);
        Assert.Single(await week.WrittenAsync(AForgottenWeek.Wednesday));
    }

    [Fact]
    public async Task Another_family_s_ids_are_not_there()
    {
        var (theirs, mine) = (await AForgottenWeek.MakeAsync(server), await AForgottenWeek.MakeAsync(server));
        var page = await mine.Guardian.GetAsync(Path);
        var line = Number(page, "Mill walk");
        foreach (var (field, value) in new[] { ($"Lines[{line}].Of", $"020260311{theirs.Walk:N}"), ($"Lines[{line}].Who", theirs.Children[0].ToString()) })
        {
            var answers = Answers(page, ("Mill walk", "changed"));
            answers[field] = value;
            using var answer = await mine.Guardian.SubmitAsync(page, answers);
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        }

        Assert.Equal(SessionState.Planned, (await theirs.SessionAsync(theirs.Walk)).State);
    }

    [Theory]
    [InlineData("")]
    [InlineData("9202603110000000000000000000000000000000000")]
    [InlineData("02026031100000000")]
    [InlineData("020269999aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa")]
    public async Task A_line_that_no_page_made_is_refused(string of)
    {
        var week = await AForgottenWeek.MakeAsync(server);
        var page = await week.Guardian.GetAsync(Path);
        var answers = Answers(page, ("Mill walk", "yes"));
        answers[$"Lines[{Number(page, "Mill walk")}].Of"] = of;
        using var answer = await week.Guardian.SubmitAsync(page, answers);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    [Fact]
    public async Task A_day_out_of_the_two_weeks_is_not_offered_and_not_taken()
    {
        var week = await AForgottenWeek.MakeAsync(server);
        var page = await week.Guardian.GetAsync(Path);
        var answers = Answers(page, ("Mill walk", "yes"));
        answers[$"Lines[{Number(page, "Mill walk")}].Of"] = $"020250311{week.Walk:N}";
        using var answer = await week.Guardian.SubmitAsync(page, answers);
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Equal(SessionState.Planned, (await week.SessionAsync(week.Walk)).State);
    }

    [Fact]
    public async Task Lessons_out_sittings_and_loose_photos_remind()
    {
        var week = await AForgottenWeek.MakeAsync(server);
        var (book, photo) = (Guid.CreateVersion7(), Guid.CreateVersion7());
        await week.Family.WithDbAsync(async db =>
        {
            db.Add(new Appointment(Guid.CreateVersion7(), new AppointmentFacts("Choir", AppointmentKind.LessonOut, [week.Children[0]], [], AForgottenWeek.Tuesday, 15 * 60, 60, "", [], week.Subjects["music"])));
            db.Add(new Appointment(Guid.CreateVersion7(), new AppointmentFacts("Nap", AppointmentKind.Nap, [week.Children[3]], [], AForgottenWeek.Tuesday, 13 * 60, 60, "", [], null)));
            var file = new StoredFile(new string('b', 64), StoredKind.Jpeg, 1000, 1, "Iris", TestServer.Start.UtcDateTime);
            db.Add(file);
            db.Add(new Piece(photo, PieceKind.Photo, new PieceFiles("wheel.jpg", file), 10 * 60 + 40, new PieceFacts(AForgottenWeek.Tuesday, [], null, null, "The wheel turns"), new Author(week.Family.GuardianId, "Iris"), TestServer.Start.UtcDateTime));
            await db.SaveChangesAsync();
        });
        var page = await week.Guardian.GetAsync(Path);
        Assert.Contains("Heron, 1\u00a0h, Music 1, lesson out", Given(page, "Choir").TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain(page.QuerySelectorAll(".given legend"), l => l.TextContent.Contains("Nap", StringComparison.Ordinal));
        var glimpse = page.QuerySelector(".glimpses li")!;
        Assert.Equal("10:40 The wheel turns", glimpse.TextContent.Trim());
        Assert.Equal($"/evidence/{photo}/small", glimpse.QuerySelector("img")!.GetAttribute("src"));
    }

    [Fact]
    public async Task A_day_that_was_decided_or_left_before_the_beginning_is_not_offered()
    {
        var week = await AForgottenWeek.MakeAsync(server);
        await week.Family.WithDbAsync(async db =>
        {
            foreach (var session in await db.PlannedSessions.Where(s => s.Date == AForgottenWeek.Wednesday).ToListAsync())
                session.NotToday();
            await db.SaveChangesAsync();
        });
        Assert.Equal(["Tuesday 10 March"], (await week.Guardian.GetAsync(Path)).QuerySelectorAll(".given-day h2").Select(h => h.TextContent));
        var fresh = await server.FamilyAsync("Birch");
        Assert.Contains("Every day has its word", (await fresh.Guardian.GetAsync(Path)).Body!.TextContent, StringComparison.Ordinal);
        Assert.Null((await fresh.Guardian.GetAsync("/today")).QuerySelector($"a[href='{Path}']"));
    }

    [Fact]
    public async Task A_helper_gives_days_back_as_well()
    {
        var week = await AForgottenWeek.MakeAsync(server);
        var helper = await server.HelperAsync(week.Family);
        var page = await helper.GetAsync(Path);
        using var answer = await helper.SubmitAsync(page, Answers(page, ("Mill walk", "yes")));
        Assert.Equal("Basil", Assert.Single(await week.WrittenAsync(AForgottenWeek.Wednesday)).AuthorName);
    }

    [Fact]
    public async Task Ten_days_with_twelve_lines_each_stay_light()
    {
        var week = await AForgottenWeek.MakeAsync(server);
        await week.Family.WithDbAsync(async db =>
        {
            var activity = (await db.PlannedSessions.FirstAsync(s => s.Id == week.Walk)).ActivityId!.Value;
            for (var day = 1; day <= 14; day++)
            {
                for (var n = 0; n < 12; n++)
                    db.Add(new PlannedSession(Guid.CreateVersion7(), activity, TestServer.Today.AddDays(-day), null, n, week.Children));
            }

            await db.SaveChangesAsync();
        });
        var page = await week.Guardian.GetAsync(Path);
        Assert.Equal(10, page.QuerySelectorAll(".given-day").Length);
        var length = page.QuerySelector("form.catch-up")!.OuterHtml.Length;
        Assert.True(length < 260_000, $"The days take {length} signs.");
        using var answer = await week.Guardian.SubmitAsync(page, more: page.QuerySelectorAll(".whole input").Select(b => new KeyValuePair<string, string>("Whole", b.GetAttribute("value")!)));
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.True(await week.Family.FromDbAsync(db => db.LogEntries.CountAsync()) > 120);
    }

    [Fact]
    public async Task What_was_written_on_a_phone_says_when_it_was_written_and_when_it_came()
    {
        var week = await AForgottenWeek.MakeAsync(server);
        var id = Guid.CreateVersion7();
        await week.Family.WithDbAsync(async db =>
        {
            // Sunday 8 March, on which the clocks went forward: 03:30 UTC on Monday is 22:30 in Chicago.
            var author = new Author(week.Family.GuardianId, "Iris", new DateTime(2026, 3, 9, 3, 30, 0, DateTimeKind.Utc));
            db.LogEntries.Add(LogEntry.Write(id, new EntryFacts(new DateOnly(2026, 3, 6), null, "Kneading", Place.Home, "", [new LearnerTime(week.Children[0], new Minutes(30))], [new SubjectWeight(week.Subjects["science"], 1)], []), author, TestServer.Start.UtcDateTime));
            await db.SaveChangesAsync();
        });
        var text = (await week.Guardian.GetAsync($"/log/{id}")).Body!.TextContent;
        Assert.Contains("Written on Sunday 8 March", text, StringComparison.Ordinal);
        Assert.Contains("reached the server on Thursday 12 March, 10:00", text, StringComparison.Ordinal);
    }

    private static IElement Given(IHtmlDocument page, string what) => page.QuerySelectorAll(".given").Single(g => g.QuerySelector("legend")!.TextContent.Trim().StartsWith(what, StringComparison.Ordinal));

    private static int Number(IHtmlDocument page, string what)
    {
        var name = Given(page, what).QuerySelector("input[type=hidden]")!.GetAttribute("name")!;
        return int.Parse(name[6..name.IndexOf(']', StringComparison.Ordinal)], CultureInfo.InvariantCulture);
    }

    private static Dictionary<string, string?> Answers(IHtmlDocument page, params (string What, string Answer)[] answers) =>
        answers.ToDictionary(a => $"Lines[{Number(page, a.What)}].Answer", a => (string?)a.Answer);
}
