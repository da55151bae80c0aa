using System.Globalization;
using System.Net;
using AngleSharp.Html.Dom;
using CoopLessons.Core.Prepare;
using CoopLessons.Core.Units;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Prepare;

/// <summary>
/// 23 chapters from Tuesday 10 to Friday 20 March 2026, every evening: eleven evenings, of which Tuesday and Wednesday went
/// by without reading, so that nine are left on Thursday.
/// </summary>
[Collection(PlanningServer.Name)]
public sealed class A_read_aloud_over_eleven_evenings(TestServer server)
{
    private const string Contents = "12 14 9 11 13 8 15 10 12 11\n9 14 13 7 16 11 12 10 9 13\n12 14 11";
    private static readonly int[] Pages = [12, 14, 9, 11, 13, 8, 15, 10, 12, 11, 9, 14, 13, 7, 16, 11, 12, 10, 9, 13, 12, 14, 11];

    private static async Task<(BookFamily Family, Guid Book)> BegunAsync(TestServer server)
    {
        var family = await BookFamily.MakeAsync(server);
        var book = await family.BookAsync("The Miller's Long Afternoon");
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/week/reading/{book}/plan"), new()
        {
            ["Input.Chapters"] = Contents,
            ["Input.First"] = "2026-03-10",
            ["Input.Last"] = "2026-03-20",
        });
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        return (family, book);
    }

    private static List<(string Date, int Chapters, int Pages)> Evenings(IHtmlDocument page) => [.. page.QuerySelectorAll("[data-evening]").Select(e => (
        e.GetAttribute("data-evening")!, int.Parse(e.GetAttribute("data-chapters")!, CultureInfo.InvariantCulture), int.Parse(e.GetAttribute("data-tenths")!, CultureInfo.InvariantCulture) / 10))];

    /// <summary>The shortest longest evening, by trying each limit from the longest chapter up: a way of its own beside the product's.</summary>
    private static int ShortestLongest(IReadOnlyList<int> pages, int evenings) => Enumerable.Range(pages.Max(), pages.Sum()).First(limit =>
    {
        var (used, tonight) = (1, 0);
        foreach (var chapter in pages)
            (used, tonight) = tonight + chapter > limit ? (used + 1, chapter) : (used, tonight + chapter);
        return used <= evenings;
    });

    [Fact]
    public async Task Of_which_two_were_missed_has_its_new_pace_at_once_and_exactly()
    {
        var (family, book) = await BegunAsync(server);
        var page = await family.Guardian.GetAsync($"/week/reading/{book}");
        var (before, now) = (ShortestLongest(Pages, 11), ShortestLongest(Pages, 9));
        Assert.True(now > before);
        Assert.Equal($"23 chapters over 11 evenings, none longer than {before} pages", page.QuerySelector("#at-first")!.TextContent);
        // Thirty pages an hour: two minutes a page.
        Assert.StartsWith($"23 chapters over 9 evenings, none longer than {now} pages, about 1\u00a0h", page.QuerySelector("#now")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("2 evenings: Tuesday 10 March and Wednesday 11 March", page.QuerySelector("#missed")!.TextContent, StringComparison.Ordinal);

        var evenings = Evenings(page);
        Assert.Equal(Enumerable.Range(12, 9).Select(d => $"2026-03-{d}"), evenings.Select(e => e.Date));
        Assert.Equal(23, evenings.Sum(e => e.Chapters));
        Assert.Equal(now, evenings.Max(e => e.Pages));
        var from = 0;
        Assert.All(evenings, e => Assert.Equal(Pages.Skip((from += e.Chapters) - e.Chapters).Take(e.Chapters).Sum(), e.Pages));
    }

    [Fact]
    public async Task Says_what_becomes_of_the_end_with_less_tonight()
    {
        var (family, book) = await BegunAsync(server);
        var page = await family.Guardian.GetAsync($"/week/reading/{book}");
        var limit = ShortestLongest(Pages, 9);
        // The fewest chapters tonight with which eight evenings no longer than now hold the rest; one fewer needs a ninth.
        var least = Enumerable.Range(0, 23).First(n => ShortestLongest([.. Pages.Skip(n)], 8) <= limit);
        string[] words = ["no", "one", "two", "three", "four"];
        var tonight = Evenings(page)[0].Chapters;
        var said = page.QuerySelector("#tonight")!.TextContent;
        Assert.StartsWith($"Read {words[tonight]} chapters tonight,{(least == tonight ? "" : $" {words[least]} at the least,")} or the book ends on Saturday 21 March instead of Friday 20 March.", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Moves_on_with_one_tap_and_counts_a_tap_sent_twice_once()
    {
        var (family, book) = await BegunAsync(server);
        var page = await family.Guardian.GetAsync($"/week/reading/{book}");
        var tonight = Evenings(page)[0];
        for (var i = 0; i < 2; i++)
        {
            using var answer = await family.Guardian.SubmitAsync(page, new() { ["Input.Minutes"] = "60" }, "#read");
            Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        }

        var sitting = await family.Family.FromDbAsync(db => db.ReadingSittings.SingleAsync());
        Assert.Equal((1, tonight.Chapters, (int?)60, TestServer.Today), (sitting.FromChapter, sitting.ToChapter, sitting.Minutes, sitting.Date));
        var after = Evenings(await family.Guardian.GetAsync($"/week/reading/{book}"));
        Assert.Equal("2026-03-13", after[0].Date);
        Assert.Equal(23 - tonight.Chapters, after.Sum(e => e.Chapters));
        Assert.Equal(ShortestLongest([.. Pages.Skip(tonight.Chapters)], 8), after.Max(e => e.Pages));
        // Nothing of it stands in the log.
        Assert.Equal(0, await family.Family.FromDbAsync(db => db.LogEntries.CountAsync()));
    }

    [Fact]
    public async Task Opens_the_log_with_the_words_filled_in()
    {
        var (family, book) = await BegunAsync(server);
        using var read = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/week/reading/{book}"), new() { ["Input.From"] = "1", ["Input.To"] = "2", ["Input.Minutes"] = "50" }, "#read");
        var page = await family.Guardian.GetAsync($"/week/reading/{book}");
        var form = await family.Guardian.GetAsync(page.QuerySelector("a[href^='/log/new?sitting=']")!.GetAttribute("href")!);
        Assert.Equal("Read aloud: The Miller's Long Afternoon, chapters 1–2", form.QuerySelector("[name='Input.What']")!.GetAttribute("value"));
        using var logged = await family.Guardian.SubmitAsync(form);
        Assert.Equal(HttpStatusCode.Redirect, logged.StatusCode);
        var revision = await family.Family.FromDbAsync(db => db.LogRevisions.Include(r => r.Times).Include(r => r.Subjects).SingleAsync());
        Assert.Equal([50, 50], revision.Facts.Times.Select(t => t.Minutes.Value));
        Assert.Equal([family.Plan.Subjects["reading"]], revision.Facts.Split.Select(s => s.SubjectId));
    }

    [Fact]
    public async Task Is_on_the_week_s_list_until_the_week_is_read()
    {
        var (family, book) = await BegunAsync(server);
        var evenings = Evenings(await family.Guardian.GetAsync($"/week/reading/{book}"));
        var untilSunday = evenings.Where(e => string.CompareOrdinal(e.Date, "2026-03-15") <= 0).Sum(e => e.Chapters);
        var task = Assert.Single(await family.TasksAsync(), t => t.Kind == ReadyKind.ReadAloud);
        Assert.Equal(new ReadyTask(ReadyKind.ReadAloud, new(2026, 3, 15), $"Read aloud: chapters 1–{untilSunday}", "The Miller's Long Afternoon", $"/week/reading/{book}", false), task);
        var next = Assert.Single(await family.TasksAsync(week: BookFamily.Monday.AddDays(7)), t => t.Kind == ReadyKind.ReadAloud);
        Assert.Equal((new DateOnly(2026, 3, 20), $"Read aloud: chapters {untilSunday + 1}–23"), (next.By, next.What));

        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/week/reading/{book}"), new() { ["Input.To"] = "23" }, "#read");
        Assert.True(Assert.Single(await family.TasksAsync(), t => t.Kind == ReadyKind.ReadAloud).Done);
        Assert.DoesNotContain(await family.TasksAsync(week: BookFamily.Monday.AddDays(7)), t => t.Kind == ReadyKind.ReadAloud);
    }

    [Fact]
    public async Task Is_finished_on_the_reading_lists_with_its_last_chapter_and_goes_on_when_that_was_not_read()
    {
        var (family, book) = await BegunAsync(server);
        Task<Data.Prepare.BookMeeting> Heard() => family.Family.FromDbAsync(db => db.BookMeetings.AsNoTracking().SingleAsync());
        Assert.Equal((BookUse.Heard, (DateOnly?)null, 2), ((await Heard()).How, (await Heard()).EndedOn, (await Heard()).Learners.Count));
        using var all = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/week/reading/{book}"), new() { ["Input.To"] = "23" }, "#read");
        var page = await family.Guardian.GetAsync($"/week/reading/{book}");
        Assert.Equal("It is read to the end.", page.QuerySelector("#tonight")!.TextContent);
        Assert.Equal(TestServer.Today, (await Heard()).EndedOn);
        using var back = await family.Guardian.SubmitAsync(page, within: "form[action*='TakeBack']");
        Assert.Null((await Heard()).EndedOn);
        Assert.Equal(9, Evenings(await family.Guardian.GetAsync($"/week/reading/{book}")).Count);
    }

    [Theory]
    [InlineData("Input.From", "")]
    [InlineData("Input.From", "0")]
    [InlineData("Input.To", "24")]
    [InlineData("Input.To", "many")]
    [InlineData("Input.Date", "2026-03-13")]
    [InlineData("Input.Date", "1999-12-31")]
    [InlineData("Input.Minutes", "481")]
    [InlineData("Input.Minutes", "-1")]
    public async Task Takes_no_sitting_that_cannot_be(string field, string value)
    {
        var (family, book) = await BegunAsync(server);
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/week/reading/{book}"), new() { ["Input.Minutes"] = "45", [field] = value }, "#read");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var shown = await Visitor.ParseAsync(answer);
        Assert.NotEmpty(shown.QuerySelector($"[name='{field}']")!.ParentElement!.QuerySelector(".field-validation-error")!.TextContent);
        Assert.Equal(field == "Input.Minutes" ? value : "45", shown.QuerySelector("[name='Input.Minutes']")!.GetAttribute("value"));
        Assert.Equal(0, await family.Family.FromDbAsync(db => db.ReadingSittings.CountAsync()));
    }

    [Theory]
    [InlineData("Input.Chapters", "", "Write at least one chapter")]
    [InlineData("Input.Chapters", "The mill wheel", "Line 1:")]
    [InlineData("Input.Last", "2026-03-09", "on or after the first")]
    [InlineData("Input.Last", "2027-03-11", "within a year")]
    [InlineData("Input.Last", "soon", "not understood")]
    [InlineData("Input.First", "", "Say when reading begins")]
    [InlineData("Input.On", "Chosen", "Tick the weekdays")]
    [InlineData("Input.On", "9", "not understood")]
    public async Task Has_no_evenings_while_something_is_amiss(string field, string value, string why)
    {
        var family = await BookFamily.MakeAsync(server);
        var book = await family.BookAsync("The Miller's Long Afternoon");
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/week/reading/{book}/plan"), new()
        {
            ["Input.Chapters"] = Contents,
            ["Input.First"] = "2026-03-10",
            ["Input.Last"] = "2026-03-20",
            [field] = value,
        });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var shown = await Visitor.ParseAsync(answer);
        Assert.Contains(shown.QuerySelectorAll(".field-validation-error"), f => f.TextContent.Contains(why, StringComparison.Ordinal));
        Assert.Equal(field == "Input.Chapters" ? value : Contents, ((IHtmlTextAreaElement)shown.QuerySelector("textarea")!).Value.TrimStart('\n').ReplaceLineEndings("\n"));
        Assert.Equal(0, await family.Family.FromDbAsync(db => db.ReadAloudPlans.CountAsync()));
    }

    [Fact]
    public async Task Reads_on_chosen_weekdays_or_teaching_days_alone()
    {
        var (family, book) = await BegunAsync(server);
        async Task<IEnumerable<string>> On(string on, params string[] days)
        {
            using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/week/reading/{book}/plan"), new() { ["Input.On"] = on },
                more: days.Select(d => new KeyValuePair<string, string>("Input.Weekdays", d)));
            Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
            return Evenings(await family.Guardian.GetAsync($"/week/reading/{book}")).Select(e => e.Date);
        }

        Assert.Equal(["2026-03-12", "2026-03-13", "2026-03-16", "2026-03-17", "2026-03-18", "2026-03-19", "2026-03-20"], await On("TeachingDays"));
        Assert.Equal(["2026-03-14", "2026-03-18"], await On("Chosen", "Saturday", "Wednesday"));
    }

    [Fact]
    public async Task Cannot_lose_chapters_that_were_read()
    {
        var (family, book) = await BegunAsync(server);
        using var read = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/week/reading/{book}"), new() { ["Input.To"] = "3" }, "#read");
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/week/reading/{book}/plan"), new() { ["Input.Chapters"] = "12 14" });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("Chapter 3 was read already; these are only 2.", (await Visitor.ParseAsync(answer)).Body!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Measures_the_family_s_own_pace_from_three_sittings_on()
    {
        var (family, book) = await BegunAsync(server);
        foreach (var (chapter, minutes) in new[] { ("1", "20"), ("2", "20"), ("3", "20") })
        {
            Assert.Contains("until three sittings have their minutes", (await family.Guardian.GetAsync($"/week/reading/{book}")).QuerySelector("#pace")!.TextContent, StringComparison.Ordinal);
            using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/week/reading/{book}"),
                new() { ["Input.From"] = chapter, ["Input.To"] = chapter, ["Input.Date"] = "2026-03-11", ["Input.Minutes"] = minutes }, "#read");
        }

        // 12 + 14 + 9 pages in 60 minutes.
        Assert.Contains("35, measured with this book", (await family.Guardian.GetAsync($"/week/reading/{book}")).QuerySelector("#pace")!.TextContent, StringComparison.Ordinal);
    }
}
