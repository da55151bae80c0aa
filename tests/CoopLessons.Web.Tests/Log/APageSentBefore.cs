using System.Net;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Today;

namespace CoopLessons.Web.Tests.Log;

/// <summary>The way back in the browser shows a form that was sent already.</summary>
[Collection(SharedServer.Name)]
public sealed class APageSentBefore(TestServer server)
{
    [Theory]
    [InlineData("Input.What", "Fed the goats")]
    [InlineData("Input.Note", "and gave them straw")]
    [InlineData("Input.Length", "60")]
    [InlineData("Input.Who[1].Own", "25")]
    [InlineData("Input.Who[2].There", null)]
    [InlineData("Input.Place", "Coop")]
    [InlineData("Input.Date", "2026-03-11")]
    [InlineData("Input.Start", "10:30")]
    [InlineData("Input.Counts[3].Weight", "2")]
    [InlineData("Input.Counts[5].Touched", "true")]
    public async Task Sent_with_other_words_it_is_not_said_to_be_logged_and_saving_once_more_logs_it(string field, string? value)
    {
        var day = await PlannedDay.MakeAsync(server);
        var form = await day.Guardian.GetAsync("/log/new");
        using var first = await day.Guardian.SubmitAsync(form, new() { ["Input.What"] = "Fed the hens" });
        using var second = await day.Guardian.SubmitAsync(form, new() { ["Input.What"] = "Fed the hens", [field] = value });
        Assert.Equal(HttpStatusCode.Conflict, second.StatusCode);
        Assert.Equal(1, await day.EntriesAsync());
        var page = await Visitor.ParseAsync(second);
        Assert.Contains("This page was sent before with other words. To log this as well, save once more.", page.QuerySelector(".validation-summary-errors")!.TextContent, StringComparison.Ordinal);
        Assert.NotEqual(Id(form), Id(page));
        using var third = await day.Guardian.SubmitAsync(page);
        Assert.Equal(HttpStatusCode.Redirect, third.StatusCode);
        Assert.Equal(2, await day.EntriesAsync());
    }

    [Fact]
    public async Task Sent_with_what_cannot_be_it_is_refused_beside_the_field()
    {
        var day = await PlannedDay.MakeAsync(server);
        var form = await day.Guardian.GetAsync("/log/new");
        using var first = await day.Guardian.SubmitAsync(form, new() { ["Input.What"] = "Fed the hens" });
        using var second = await day.Guardian.SubmitAsync(form, new() { ["Input.What"] = "" });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, second.StatusCode);
        Assert.Equal(1, await day.EntriesAsync());
    }

    [Fact]
    public async Task Sent_alike_after_the_entry_was_changed_it_is_answered_as_the_first_time()
    {
        var day = await PlannedDay.MakeAsync(server);
        var form = await day.Guardian.GetAsync("/log/new");
        using var first = await day.Guardian.SubmitAsync(form, new() { ["Input.What"] = "Fed the hens" });
        using var changed = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync($"/log/{Id(form)}/change"), new() { ["Input.Length"] = "60" });
        Assert.Equal(HttpStatusCode.Redirect, changed.StatusCode);
        using var second = await day.Guardian.SubmitAsync(form, new() { ["Input.What"] = "Fed the hens" });
        Assert.Equal(first.Headers.Location, second.Headers.Location);
        Assert.Equal(1, await day.EntriesAsync());
    }

    [Fact]
    public async Task Sent_with_other_words_for_a_planned_line_it_leads_to_the_entry_that_stands()
    {
        var day = await PlannedDay.MakeAsync(server);
        var form = await day.Guardian.GetAsync($"/log/new?session={day.Letters}");
        using var first = await day.Guardian.SubmitAsync(form);
        using var second = await day.Guardian.SubmitAsync(form, new() { ["Input.Note"] = "She wrote two pages" });
        Assert.Equal(HttpStatusCode.Conflict, second.StatusCode);
        var page = await Visitor.ParseAsync(second);
        Assert.Equal($"/log/{Id(form)}", page.QuerySelector(".note.look a")!.GetAttribute("href"));
        Assert.Equal("She wrote two pages", page.QuerySelector<IHtmlTextAreaElement>("textarea")!.Value);
        Assert.Equal(1, await day.EntriesAsync());
    }

    [Fact]
    public async Task Different_words_that_arrive_together_are_never_both_said_to_be_logged_when_one_is()
    {
        var day = await PlannedDay.MakeAsync(server);
        var form = await day.Guardian.GetAsync("/log/new");
        var answers = await Task.WhenAll(Enumerable.Range(0, 4).Select(i => day.Guardian.SubmitAsync(form, new() { ["Input.What"] = $"Fed hen {i}" })));
        Assert.Single(answers, a => a.StatusCode == HttpStatusCode.Redirect);
        Assert.Equal(3, answers.Count(a => a.StatusCode == HttpStatusCode.Conflict));
        Assert.Equal(1, await day.EntriesAsync());
    }

    private static string Id(IHtmlDocument page) => page.QuerySelector<IHtmlInputElement>("input[name='EntryId']")!.Value;
}
