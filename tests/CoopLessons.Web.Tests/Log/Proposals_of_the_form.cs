using System.Net;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using CoopLessons.Core.Hours;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Today;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Log;

[Collection(SharedServer.Name)]
public sealed class Proposals_of_the_form(TestServer server)
{
    [Fact]
    public async Task Begin_with_today_s_plan_and_hold_everything_an_entry_needs()
    {
        var day = await PlannedDay.MakeAsync(server);
        await DoneAsync(day, "Fed the hens", 25, -1);
        var offers = Offers(await day.Guardian.GetAsync("/log/new"));
        Assert.Equal(["Read aloud: chapter 7", "Start the sourdough", "Letters", "Fed the hens", "Reading"], offers.Take(5).Select(o => o.QuerySelector("b")!.TextContent));
        Assert.Contains("Wren and Linnet, 15\u00a0min each, Science 2 · Home arts 1, planned today", offers[1].TextContent, StringComparison.Ordinal);
        Assert.Contains($"\"session\":\"{day.Sourdough}\",\"minutes\":15,\"who\":[0,1],\"counts\":[[3,2],[12,1]],\"touches\":[5]", offers[1].GetAttribute("data-fill"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Are_listed_as_links_for_a_browser_without_scripts()
    {
        var day = await PlannedDay.MakeAsync(server);
        var form = await day.Guardian.GetAsync("/log/new");
        using var asked = await day.Guardian.PostAsync("/log/new?handler=LookUp", [new("Input.What", "sour"), Token(form)]);
        Assert.Equal("/log/new?what=sour", asked.Headers.Location!.OriginalString);
        var listed = await day.Guardian.GetAsync("/log/new?what=sour");
        Assert.Equal("sour", Value(listed, "Input.What"));
        var link = Assert.Single(listed.QuerySelectorAll<IHtmlAnchorElement>("main form .rows a"), a => a.TextContent.Contains("sourdough", StringComparison.Ordinal));
        Assert.Equal($"/log/new?session={day.Sourdough}", link.GetAttribute("href"));
        var filled = await day.Guardian.GetAsync(link.GetAttribute("href")!);
        Assert.Equal("Start the sourdough", Value(filled, "Input.What"));
    }

    [Fact]
    public async Task Make_the_entry_the_session_s_own()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var answer = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync("/log/new"), new() { ["Input.What"] = "Letters", ["Session"] = day.Letters.ToString(), ["Input.Length"] = "20" });
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal(SessionState.Done, (await day.SessionAsync(day.Letters)).State);
        using var again = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync("/log/new"), new() { ["Input.What"] = "Letters", ["Session"] = day.Letters.ToString(), ["Input.Length"] = "20" });
        Assert.Equal(HttpStatusCode.Conflict, again.StatusCode);
        Assert.Equal(1, await day.EntriesAsync());
    }

    [Fact]
    public async Task Carry_the_median_of_the_last_entries()
    {
        var day = await PlannedDay.MakeAsync(server);
        foreach (var (minutes, ago) in new[] { (30, -3), (45, -2), (200, -1) })
            await DoneAsync(day, "Fed the hens", minutes, ago);
        var offer = Offers(await day.Guardian.GetAsync("/log/new")).Single(o => o.QuerySelector("b")!.TextContent == "Fed the hens");
        Assert.Contains("\"minutes\":45,", offer.GetAttribute("data-fill"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Say_what_is_usual_on_this_weekday()
    {
        var day = await PlannedDay.MakeAsync(server);
        await DoneAsync(day, "Swept the mill", 20, -7);
        await DoneAsync(day, "Swept the mill", 20, -14);
        await DoneAsync(day, "Fed the hens", 20, -1);
        var offers = Offers(await day.Guardian.GetAsync("/log/new")).Select(o => o.TextContent.Trim()).ToList();
        Assert.EndsWith("usual on Thursdays", offers[3], StringComparison.Ordinal);
        Assert.StartsWith("Fed the hens", offers[4], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Take_minutes_and_names_out_of_a_sentence_and_leave_the_sentence()
    {
        var day = await PlannedDay.MakeAsync(server);
        await DoneAsync(day, "Baked bread", 60, -1);
        var page = await day.Guardian.GetAsync("/log/new?what=baked%20bread%20forty-five%20minutes%20with%20Linnet");
        Assert.Equal("baked bread forty-five minutes with Linnet", Value(page, "Input.What"));
        Assert.Equal("45", Value(page, "Input.OtherLength"));
        Assert.Equal(["Linnet"], There(page));
        Assert.Contains("Heard: 45\u00a0min · Linnet", page.QuerySelector(".heard")!.TextContent, StringComparison.Ordinal);
        var link = page.QuerySelector("main form .rows a")!;
        Assert.Contains("Baked bread", link.TextContent, StringComparison.Ordinal);
        var filled = await day.Guardian.GetAsync(link.GetAttribute("href")!);
        Assert.Equal(("Baked bread", "45"), (Value(filled, "Input.What"), Value(filled, "Input.OtherLength")));
        Assert.Equal(["Linnet"], There(filled));
    }

    [Fact]
    public async Task Tell_that_two_lengths_were_named()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var said = await day.Guardian.OpenAsync("/log/new?handler=said&Input.What=10%20min%20songs%20and%2020%20min%20drawing%20with%20Wren");
        var piece = await Visitor.ParseAsync(said);
        Assert.Contains("Heard: Wren", piece.Body!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Two lengths were named", piece.Body.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Say_nothing_where_nothing_is_heard()
    {
        var day = await PlannedDay.MakeAsync(server);
        using var said = await day.Guardian.OpenAsync("/log/new?handler=said&Input.What=letters");
        Assert.Empty((await Visitor.ParseAsync(said)).QuerySelectorAll(".heard"));
    }

    [Fact]
    public async Task Leave_out_retired_subjects_and_children_who_are_not_taught_now()
    {
        var day = await PlannedDay.MakeAsync(server);
        await DoneAsync(day, "Fed the hens", 25, -1);
        await day.Family.WithDbAsync(async db =>
        {
            (await db.Subjects.SingleAsync(s => s.Id == day.Subjects["science"])).Retire();
            (await db.Learners.SingleAsync(l => l.Id == day.Heron)).PutAside();
            await db.SaveChangesAsync();
        });
        var offer = Offers(await day.Guardian.GetAsync("/log/new")).Single(o => o.QuerySelector("b")!.TextContent == "Fed the hens");
        Assert.Contains("Wren and Linnet, 25\u00a0min each, Reading 1", offer.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Are_never_another_family_s()
    {
        var theirs = await PlannedDay.MakeAsync(server);
        await DoneAsync(theirs, "Fed their geese", 25, -1);
        var mine = await PlannedDay.MakeAsync(server);
        Assert.DoesNotContain("geese", (await mine.Guardian.GetAsync("/log/new")).Body!.InnerHtml, StringComparison.Ordinal);
        Assert.DoesNotContain("geese", (await mine.Guardian.GetAsync("/log/new?what=geese")).QuerySelector("ul.offers")?.InnerHtml ?? "", StringComparison.Ordinal);
    }

    [Fact]
    public async Task Stay_few_and_light_after_four_hundred_entries()
    {
        var day = await PlannedDay.MakeAsync(server);
        await day.Family.WithDbAsync(async db =>
        {
            for (var i = 0; i < 400; i++)
                db.LogEntries.Add(LogEntry.Write(Guid.CreateVersion7(), Facts(day, $"Something new, number {i}", 20 + i % 40, -i % 100), new Author(day.Family.GuardianId, "Iris"), TestServer.Start.UtcDateTime));
            await db.SaveChangesAsync();
        });
        var page = await day.Guardian.GetAsync("/log/new");
        Assert.Equal(100, Offers(page).Count);
        var length = page.QuerySelector("ul.offers")!.OuterHtml.Length;
        Assert.True(length < 75_000, $"The proposals take {length} signs.");
    }

    [Fact]
    public async Task Are_not_there_where_a_session_is_written_down_or_nobody_is_taught()
    {
        var day = await PlannedDay.MakeAsync(server);
        Assert.Null((await day.Guardian.GetAsync($"/log/new?session={day.Letters}")).QuerySelector("ul.offers"));
        var empty = await server.FamilyAsync("Birch");
        Assert.Contains("No children yet", (await empty.Guardian.GetAsync("/log/new?what=x")).Body!.TextContent, StringComparison.Ordinal);
    }

    private static Task DoneAsync(PlannedDay day, string what, int minutes, int inDays) => day.Family.WithDbAsync(async db =>
    {
        db.LogEntries.Add(LogEntry.Write(Guid.CreateVersion7(), Facts(day, what, minutes, inDays), new Author(day.Family.GuardianId, "Iris"), TestServer.Start.UtcDateTime.AddDays(inDays)));
        await db.SaveChangesAsync();
    });

    private static EntryFacts Facts(PlannedDay day, string what, int minutes, int inDays) => new(
        TestServer.Today.AddDays(inDays), null, what, Place.Home, "",
        [.. new[] { day.Wren, day.Linnet, day.Heron }.Select(l => new LearnerTime(l, new Minutes(minutes)))], [new SubjectWeight(day.Subjects["science"], 1)], []);

    private static List<IElement> Offers(IHtmlDocument page) => [.. page.QuerySelectorAll("#offers button")];

    private static List<string> There(IHtmlDocument page) => [.. page.QuerySelectorAll<IHtmlInputElement>(".who [data-name]").Where(b => b.IsChecked).Select(b => b.GetAttribute("data-name")!)];

    private static KeyValuePair<string, string> Token(IHtmlDocument page) => new("__RequestVerificationToken", page.QuerySelector("input[name=__RequestVerificationToken]")!.GetAttribute("value")!);

    private static string Value(IHtmlDocument page, string name) => page.QuerySelector<IHtmlInputElement>($"input[name='{name}']")!.Value;
}
