using System.Net;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using CoopLessons.Data.Log;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Phone;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Sealing;

[Collection(SharedServer.Name)]
public sealed class Correcting_a_sealed_year_late(TestServer server)
{
    [Fact]
    public async Task Is_asked_for_with_a_reason_and_loses_nothing_that_was_typed()
    {
        var year = await FinishedYear.MakeAsync(server);
        using var refused = await year.Guardian.SubmitAsync(await year.Guardian.GetAsync($"/log/{year.Bread}/change"), new() { ["Input.Length"] = "45", ["Input.Note"] = "rye, “two” loaves", ["Why"] = "looked it up" });
        Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
        var page = await Visitor.ParseAsync(refused);
        Assert.Equal("3 March 2025 lies in the school year 2024–25, which was sealed on 12 March 2026. Nothing was saved.", page.QuerySelector(".note.look")!.TextContent);
        Assert.Contains("rye, “two” loaves", page.QuerySelector("dl.facts")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(1, await RevisionsAsync(year));

        using var without = await year.Guardian.SubmitAsync(page, within: "#late");
        Assert.Equal(HttpStatusCode.Conflict, without.StatusCode);
        page = await Visitor.ParseAsync(without);
        Assert.Equal("Say why it is corrected late.", page.QuerySelector("#late-fault")!.TextContent);
        using var tooLong = await year.Guardian.SubmitAsync(page, new() { ["LateWhy"] = new string('x', 201) }, "#late");
        page = await Visitor.ParseAsync(tooLong);
        Assert.Equal("At most 200 signs.", page.QuerySelector("#late-fault")!.TextContent);
        Assert.Equal(new string('x', 201), page.QuerySelector<IHtmlInputElement>("#late-why")!.Value);
        Assert.Equal(1, await RevisionsAsync(year));

        using var saved = await year.Guardian.SubmitAsync(page, new() { ["LateWhy"] = "The kitchen clock was slow" }, "#late");
        Assert.Equal($"/log/{year.Bread}", saved.Headers.Location!.ToString());
        Assert.Equal("rye, “two” loaves", (await year.Family.FromDbAsync(db => db.HistoryAsync(year.Bread, default)))[^1].Note);
        var shown = (await year.Guardian.GetAsync(year.Page)).QuerySelector($"[data-learner='{year.Linnet}']")!.TextContent;
        Assert.Contains("The log still says what was sealed and amended", shown, StringComparison.Ordinal);
        Assert.Contains("Why: The kitchen clock was slow", shown, StringComparison.Ordinal);
        Assert.Contains("3 March 2025, Baked bread: 40 minutes before, 45 now", shown, StringComparison.Ordinal);
        Assert.Contains("by Iris Alder", shown, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Of_a_new_entry_a_mark_and_a_removal_goes_the_same_way()
    {
        var year = await FinishedYear.MakeAsync(server);
        var form = await year.Guardian.GetAsync("/log/new");
        var entry = form.QuerySelector<IHtmlInputElement>("input[name=EntryId]")!.Value;
        await LateAsync(year, await year.Guardian.SubmitAsync(form, new() { ["Input.What"] = "Sang", ["Input.Date"] = "2025-03-04", ["Input.Length"] = "20" }));
        Assert.Equal(1, await year.Family.FromDbAsync(db => db.LogEntries.CountAsync(e => e.Id == Guid.Parse(entry))));

        await LateAsync(year, await year.Guardian.SubmitAsync(await year.Guardian.GetAsync($"/records/day/{year.Linnet}/2025-03-10"), new() { ["Input.Wish"] = "Count" }));
        await LateAsync(year, await year.Guardian.SubmitAsync(await year.Guardian.GetAsync($"/log/{year.Bread}"), new() { ["why"] = "Never happened" }, "#why"));

        var amendments = await year.Family.FromDbAsync(db => db.Amendments.Where(a => a.LearnerId == year.Linnet).OrderBy(a => a.Number).ToListAsync());
        Assert.Equal([1, 2, 3], amendments.Select(a => a.Number));
        Assert.Contains(amendments[1].Changes, c => c.Now == "marked as a school day");
        Assert.True((await year.CheckAsync(year.Linnet)).Holds);
    }

    [Fact]
    public async Task Is_for_guardians()
    {
        var year = await FinishedYear.MakeAsync(server);
        var helper = await server.HelperAsync(year.Family);
        var form = await helper.GetAsync($"/log/{year.Bread}/change");
        using var refused = await helper.SubmitAsync(form, new() { ["Input.Length"] = "45", ["LateWhy"] = "I say so" });
        Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
        var page = await Visitor.ParseAsync(refused);
        Assert.Empty(page.QuerySelectorAll("#late"));
        Assert.Contains("can be corrected late by a guardian of the family", page.Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal(1, await RevisionsAsync(year));
    }

    [Fact]
    public async Task Never_moves_the_year_itself()
    {
        var year = await FinishedYear.MakeAsync(server);
        using var refused = await year.Guardian.SubmitAsync(await year.Guardian.GetAsync($"/family/years/{year.YearId}"), new() { ["Input.Name"] = "The first", ["LateWhy"] = "It sounds better" });
        Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
        Assert.Empty((await Visitor.ParseAsync(refused)).QuerySelectorAll("#late"));
        Assert.True((await year.CheckAsync(year.Wren)).Holds);
    }

    [Fact]
    public async Task Comes_back_to_a_phone_that_kept_it_with_a_sentence_and_is_not_lost_there()
    {
        var year = await FinishedYear.MakeAsync(server);
        var fields = Visitor.FieldsOf((await year.Guardian.GetAsync($"/log/{year.Bread}/change")).QuerySelector("main form")!)
            .Select(f => f.Key == "Input.Length" ? new KeyValuePair<string, string>(f.Key, "45") : f).ToList();
        var word = await year.Guardian.SendAsync($"/log/{year.Bread}/change", fields, Guid.NewGuid(), TestServer.Start.AddHours(-3), year.Family.Id);
        Assert.Equal((409, false), (word.Status, word.Answer!.Saved));
        Assert.Equal(
            "3 March 2025 lies in the school year 2024–25, which was sealed on 12 March 2026. Nothing was saved. Give it a day of an open year, or send it by hand and say why it is corrected late.",
            Assert.Single(word.Answer.Faults!).Says);
        Assert.Equal(1, await RevisionsAsync(year));

        // Mended by hand, it goes out as a plain form under its own id.
        var late = await year.Guardian.SendAsync($"/log/{year.Bread}/change", fields.Append(new("LateWhy", "The clock was slow")), Guid.NewGuid(), TestServer.Start.AddHours(-3), year.Family.Id);
        Assert.True(late.Answer!.Saved);
        Assert.True((await year.CheckAsync(year.Wren)).Holds);
    }

    [Fact]
    public async Task Stands_in_for_the_page_where_only_a_part_was_to_be_swapped()
    {
        var year = await FinishedYear.MakeAsync(server);
        var page = await year.Guardian.GetAsync("/family/subjects");
        using var refused = await year.Guardian.SubmitAsync(page, new() { ["Renamed.Name"] = "Physics" }, $"form[action*='{year.Science}']", htmx: true);
        Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
        Assert.Equal("#main", Assert.Single(refused.Headers.GetValues("HX-Retarget")));
        var text = await refused.Content.ReadAsStringAsync();
        Assert.DoesNotContain("<html", text, StringComparison.Ordinal);
        Assert.Contains("LateWhy", text, StringComparison.Ordinal);
    }

    private static Task<int> RevisionsAsync(FinishedYear year) => year.Family.FromDbAsync(db => db.LogRevisions.CountAsync(r => r.EntryId == year.Bread));

    private static async Task LateAsync(FinishedYear year, HttpResponseMessage refused)
    {
        Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
        using var saved = await year.Guardian.SubmitAsync(await Visitor.ParseAsync(refused), new() { ["LateWhy"] = "Found in the notebook" }, "#late");
        Assert.Equal(HttpStatusCode.Redirect, saved.StatusCode);
        refused.Dispose();
    }
}
