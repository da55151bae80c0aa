using System.Net;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using CoopLessons.Core.Calendar;
using CoopLessons.Data.Hours;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Log;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Week;

[Collection(PlanningServer.Name)]
public sealed class WeAreIll(TestServer server)
{
    private const string Begin = "form[action$='handler=Begin']";
    private const string Well = "form[action$='handler=Well']";

    [Fact]
    public async Task One_tap_lets_the_plan_rest_and_another_takes_it_back()
    {
        var week = await AForgottenWeek.MakeAsync(server);
        using var tapped = await week.Guardian.SubmitAsync(await week.Guardian.GetAsync("/today"), within: Begin);
        Assert.Equal("/today", tapped.Headers.Location!.OriginalString);
        var today = await week.Guardian.GetAsync("/today");
        Assert.Contains("We are ill from today on", today.QuerySelector(".ill")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("your family's doctor", today.QuerySelector(".ill")!.TextContent, StringComparison.Ordinal);
        Assert.Null(today.QuerySelector(Begin));
        using var undone = await week.Guardian.SubmitAsync(today, within: "form[action$='handler=Undo'] input[name=spellId]");
        Assert.Null((await week.Guardian.GetAsync("/today")).QuerySelector(".ill"));
        Assert.Equal(0, await week.Family.FromDbAsync(db => db.IllSpells.CountAsync()));
    }

    [Fact]
    public async Task A_tap_sent_twice_is_one_spell()
    {
        var week = await AForgottenWeek.MakeAsync(server);
        var page = await week.Guardian.GetAsync("/today");
        await Task.WhenAll(Enumerable.Range(0, 3).Select(_ => week.Guardian.SubmitAsync(page, within: Begin)));
        using var later = await week.Guardian.SubmitAsync(page, within: Begin);
        Assert.Equal(HttpStatusCode.Redirect, later.StatusCode);
        Assert.Equal(1, await week.Family.FromDbAsync(db => db.IllSpells.CountAsync()));
    }

    [Fact]
    public async Task What_is_heard_goes_on_and_the_rest_asks_for_nothing_unless_the_family_says_so()
    {
        var week = await AForgottenWeek.MakeAsync(server);
        await IllSinceAsync(week, "2026-03-11");
        var wednesday = await week.Guardian.GetAsync("/today/2026-03-11");
        Assert.Equal("rests", Line(wednesday, week.Letters).QuerySelector(".state")!.TextContent);
        Assert.Null(Line(wednesday, week.Letters).QuerySelector("form[action$='handler=Done']"));
        var today = await week.Guardian.GetAsync("/today");
        Assert.NotNull(Line(today, week.Aloud).QuerySelector("form[action$='handler=Done']"));

        using var kept = await week.Guardian.SubmitAsync(wednesday, within: $"#line-{week.Letters:N} form[action$='handler=Keep'] input[name=keep]");
        Assert.Equal("/today/2026-03-11", kept.Headers.Location!.OriginalString);
        Assert.NotNull(Line(await week.Guardian.GetAsync("/today/2026-03-11"), week.Letters).QuerySelector("form[action$='handler=Done']"));
        using var rests = await week.Guardian.SubmitAsync(today, within: $"#line-{week.Aloud:N} form[action$='handler=Keep'] input[name=keep]");
        Assert.Equal("rests", Line(await week.Guardian.GetAsync("/today"), week.Aloud).QuerySelector(".state")!.TextContent);
    }

    [Fact]
    public async Task What_rests_is_neither_undecided_nor_not_done()
    {
        var week = await AForgottenWeek.MakeAsync(server);
        Assert.Contains("Mill walk", (await week.Guardian.GetAsync("/log/catch-up")).Body!.TextContent, StringComparison.Ordinal);
        await IllSinceAsync(week, "2026-03-10");
        // Neither the planned day nor the one with nothing but habits is asked for.
        Assert.Empty((await week.Guardian.GetAsync("/log/catch-up")).QuerySelectorAll(".given-day"));
        Assert.Equal(SessionState.Planned, (await week.SessionAsync(week.Walk)).State);
    }

    [Fact]
    public async Task No_day_counts_unless_something_is_logged()
    {
        var week = await AForgottenWeek.MakeAsync(server);
        await IllSinceAsync(week, "2026-03-10");
        var year = new DayRange(new DateOnly(2025, 7, 1), new DateOnly(2026, 6, 30));
        async Task<int> DaysAsync() => await week.Family.FromDbAsync(async db => (await LearnerYear.LoadAsync(db, week.Children[0], year, default))!.Ledger.Entries.Select(e => e.Date).Distinct().Count(d => d >= new DateOnly(2026, 3, 10)));
        Assert.Equal(0, await DaysAsync());
        using var done = await week.Guardian.SubmitAsync(await week.Guardian.GetAsync("/today"), within: $"#line-{week.Aloud:N} form[action$='handler=Done'] input[name=entryId]");
        Assert.Equal(1, await DaysAsync());
    }

    [Fact]
    public async Task With_one_child_ill_a_session_of_several_goes_on()
    {
        var week = await AForgottenWeek.MakeAsync(server);
        await IllSinceAsync(week, "2026-03-11", week.Children[2]);
        var wednesday = await week.Guardian.GetAsync("/today/2026-03-11");
        Assert.Contains("Wren is ill since Wednesday 11 March", wednesday.QuerySelector(".ill")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("rests", Line(wednesday, week.Letters).QuerySelector(".state")!.TextContent);
        Assert.NotNull(Line(wednesday, week.Walk).QuerySelector("form[action$='handler=Done']"));
        Assert.Contains("Mill walk", (await week.Guardian.GetAsync("/log/catch-up")).Body!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Well_again_leads_to_the_three_ways_over_the_days_of_it()
    {
        var week = await AForgottenWeek.MakeAsync(server);
        await IllSinceAsync(week, "2026-03-10");
        using var well = await week.Guardian.SubmitAsync(await week.Guardian.GetAsync("/today"), within: Well);
        Assert.Equal("/week/ways/2026-03-10?to=2026-03-11", well.Headers.Location!.OriginalString);
        Assert.Contains("Tuesday 10 March to Wednesday 11 March fell through", (await week.Guardian.GetAsync(well.Headers.Location.OriginalString)).QuerySelector("h1")!.TextContent, StringComparison.Ordinal);
        var today = await week.Guardian.GetAsync("/today");
        Assert.Null(today.QuerySelector(".ill"));
        Assert.NotNull(today.QuerySelector(Begin));
        // The days behind still say that the plan rested.
        Assert.Contains("We were ill from Tuesday 10 March to Wednesday 11 March", (await week.Guardian.GetAsync("/today/2026-03-11")).QuerySelector(".ill")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task After_one_child_s_illness_only_what_was_that_child_s_is_asked_about()
    {
        var week = await AForgottenWeek.MakeAsync(server);
        await IllSinceAsync(week, "2026-03-11", week.Children[2]);
        using var well = await week.Guardian.SubmitAsync(await week.Guardian.GetAsync("/today"), within: Well);
        var spell = await week.Family.FromDbAsync(db => db.IllSpells.AsNoTracking().SingleAsync());
        Assert.Equal($"/week/ways/2026-03-11?ill={spell.Id}", well.Headers.Location!.OriginalString);
        Assert.Contains("while somebody was ill", (await week.Guardian.GetAsync(well.Headers.Location.OriginalString)).QuerySelector("h1")!.TextContent, StringComparison.Ordinal);
        var upset = await week.Family.FromDbAsync(db => Data.Planning.Futures.Upset.OfDaysAsync(db, new DayRange(new DateOnly(2026, 3, 11), new DateOnly(2026, 3, 11)), "Ill", spell, default));
        Assert.Equal(week.Letters, Assert.Single(upset.Hit).Id);
        Assert.Empty(upset.Lost);
    }

    [Fact]
    public async Task Well_again_on_the_very_day_was_no_illness_of_the_plan()
    {
        var week = await AForgottenWeek.MakeAsync(server);
        await IllSinceAsync(week, "2026-03-12");
        using var well = await week.Guardian.SubmitAsync(await week.Guardian.GetAsync("/today"), within: Well);
        Assert.Equal("/today", well.Headers.Location!.OriginalString);
        Assert.Equal(0, await week.Family.FromDbAsync(db => db.IllSpells.CountAsync()));
    }

    [Theory]
    [InlineData("2026-03-09")]
    [InlineData("2026-03-14")]
    [InlineData("soon")]
    [InlineData("")]
    public async Task A_day_of_being_well_that_cannot_be_is_refused_beside_its_field(string date)
    {
        var week = await AForgottenWeek.MakeAsync(server);
        await IllSinceAsync(week, "2026-03-10");
        using var refused = await week.Guardian.SubmitAsync(await week.Guardian.GetAsync("/week/ill"), new() { ["date"] = date }, within: Well);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains("from Tuesday 10 March to tomorrow", (await Visitor.ParseAsync(refused)).QuerySelector("#fault-date")!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2026-03-13")]
    [InlineData("2025-11-01")]
    [InlineData("long ago")]
    public async Task A_first_day_that_cannot_be_is_refused_beside_its_field(string from)
    {
        var week = await AForgottenWeek.MakeAsync(server);
        using var refused = await week.Guardian.SubmitAsync(await week.Guardian.GetAsync("/week/ill"), new() { ["from"] = from }, within: Begin);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        var page = await Visitor.ParseAsync(refused);
        Assert.Equal(from, page.QuerySelector<IHtmlInputElement>("#from")!.GetAttribute("value"));
        Assert.NotEmpty(page.QuerySelector("#fault-from")!.TextContent);
    }

    [Fact]
    public async Task A_long_spell_asks_only_for_its_last_three_weeks()
    {
        var week = await AForgottenWeek.MakeAsync(server);
        await IllSinceAsync(week, "2026-02-02");
        using var well = await week.Guardian.SubmitAsync(await week.Guardian.GetAsync("/today"), within: Well);
        Assert.Equal("/week/ways/2026-02-19?to=2026-03-11", well.Headers.Location!.OriginalString);
    }

    [Fact]
    public async Task A_helper_sees_it_and_changes_nothing_of_it()
    {
        var week = await AForgottenWeek.MakeAsync(server);
        await IllSinceAsync(week, "2026-03-11");
        var helper = await server.HelperAsync(week.Family);
        var today = await helper.GetAsync("/today");
        Assert.Contains("We are ill since Wednesday 11 March", today.QuerySelector(".ill")!.TextContent, StringComparison.Ordinal);
        Assert.Empty(today.QuerySelectorAll("form[action^='/week/ill']"));
        using var refused = await helper.OpenAsync("/week/ill");
        Assert.Equal(HttpStatusCode.Forbidden, refused.StatusCode);
    }

    [Fact]
    public async Task The_week_says_that_the_plan_rests_and_is_not_laid_out_onto_days_gone_by()
    {
        var week = await AForgottenWeek.MakeAsync(server);
        await IllSinceAsync(week, "2026-03-10");
        var page = await week.Guardian.GetAsync("/week");
        Assert.Contains("ill, the plan rests", page.QuerySelector("[data-day='2026-03-11']")!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("rests", page.QuerySelector("[data-day='2026-03-13']")!.TextContent, StringComparison.Ordinal);
        var days = await week.Family.FromDbAsync(async db => (await Data.Planning.WeekReading.LoadAsync(db, CoopLessons.Core.Calendar.Week.Of(TestServer.Today), TestServer.Today, 10 * 60, Data.Planning.WeekAsk.Plain, default))!.Problem.Days);
        Assert.Equal([new DateOnly(2026, 3, 13)], days);
    }

    [Fact]
    public async Task A_family_without_children_is_not_asked()
    {
        var family = await server.FamilyAsync("Birch");
        Assert.Null((await family.Guardian.GetAsync("/today")).QuerySelector(Begin));
        Assert.Contains("Everybody is well", (await family.Guardian.GetAsync("/week/ill")).Body!.TextContent, StringComparison.Ordinal);
    }

    private static async Task IllSinceAsync(AForgottenWeek week, string from, params Guid[] learners)
    {
        using var begun = await week.Guardian.SubmitAsync(
            await week.Guardian.GetAsync("/week/ill"), new() { ["from"] = from }, within: Begin, more: learners.Select(l => new KeyValuePair<string, string>("learners", l.ToString())));
        Assert.Equal("/today", begun.Headers.Location?.OriginalString);
    }

    private static AngleSharp.Dom.IElement Line(IHtmlDocument page, Guid session) => page.QuerySelector($"#line-{session:N}")!;
}
