using System.Net;
using CoopLessons.Core.Units;
using CoopLessons.Data.Prepare;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Prepare;

[Collection(PlanningServer.Name)]
public sealed class A_book_written_down(TestServer server)
{
    [Fact]
    public async Task Is_kept_once_with_its_number_in_thirteen_digits()
    {
        var family = await BookFamily.MakeAsync(server);
        var page = await family.Guardian.GetAsync("/week/books/new");
        for (var i = 0; i < 2; i++)
        {
            // The number of the manual's worked example for ten signs.
            using var answer = await family.Guardian.SubmitAsync(page, new() { ["Input.Title"] = "A Loaf's Long Road", ["Input.Isbn"] = "0-8436-1072-7", ["Input.Level"] = "for Wren" });
            Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        }

        var book = await family.Family.FromDbAsync(db => db.Books.SingleAsync());
        Assert.Equal(("978084361072", "for Wren"), (book.Isbn[..12], book.Level));
        Assert.Contains("formerly 0843610727", (await family.Guardian.GetAsync($"/week/books/{book.Id}")).QuerySelector(".sub")!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Input.Isbn", "978-0-11-000222-5", "one digit is wrong, or two are swapped")]
    [InlineData("Input.Isbn", "978-0-11-00022", "10 or 13 digits; here are 11")]
    [InlineData("Input.Title", "", "Say what it is called")]
    [InlineData("Input.Length", "0", "whole number")]
    [InlineData("Input.Length", "long", "not understood")]
    [InlineData("Input.Source", "9", "not understood")]
    public async Task Is_not_saved_while_something_is_amiss(string field, string value, string why)
    {
        var family = await BookFamily.MakeAsync(server);
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/books/new"), new() { ["Input.Title"] = "The Weir", ["Input.Author"] = "Iris", [field] = value });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var shown = await Visitor.ParseAsync(answer);
        Assert.Contains(shown.QuerySelectorAll($"[data-valmsg-for='{field}'].field-validation-error, .field-validation-error"), f => f.TextContent.Contains(why, StringComparison.Ordinal));
        Assert.Equal("Iris", shown.QuerySelector("#Input_Author")!.GetAttribute("value"));
        if (field == "Input.Isbn")
            Assert.Equal(value, shown.QuerySelector("#Input_Isbn")!.GetAttribute("value"));
        Assert.Equal(0, await family.Family.FromDbAsync(db => db.Books.CountAsync()));
    }

    [Theory]
    [InlineData("Millers Long Afternoon", "", "")]
    [InlineData("Another name", "", "978-0-11-000222-4")]
    public async Task Is_not_written_down_twice(string title, string author, string isbn)
    {
        var family = await BookFamily.MakeAsync(server);
        var first = await family.BookAsync("The Miller's Long Afternoon", author: "Olive", isbn: "9780110002224");
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/books/new"), new() { ["Input.Title"] = title, ["Input.Author"] = author, ["Input.Isbn"] = isbn });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var shown = await Visitor.ParseAsync(answer);
        Assert.Contains("is written down already", shown.Body!.TextContent, StringComparison.Ordinal);
        Assert.NotNull(shown.QuerySelector($"a[href='/week/books/{first}']"));
    }

    [Fact]
    public async Task Is_found_by_title_level_and_number()
    {
        var family = await BookFamily.MakeAsync(server);
        var (weir, race) = (await family.BookAsync("The Weir", isbn: "9780110002224"), await family.BookAsync("Down the Race", author: "Élan"));
        async Task<IEnumerable<string?>> Found(string q) => (await family.Guardian.GetAsync($"/week/books?q={Uri.EscapeDataString(q)}")).QuerySelectorAll("#all a.row-link").Select(a => a.GetAttribute("href"));
        Assert.Equal([$"/week/books/{weir}"], await Found("weir"));
        Assert.Equal([$"/week/books/{race}"], await Found("élan"));
        Assert.Equal([$"/week/books/{weir}"], await Found("978-0-11-000222-4"));
        Assert.Empty(await Found("<script>"));
        Assert.Equal(2, (await Found("")).Count());
    }

    [Fact]
    public async Task Goes_with_its_lines_after_a_question()
    {
        var family = await BookFamily.MakeAsync(server);
        var book = await family.BookAsync("The Weir");
        await family.Plan.AddAsync(id => new BookMeeting(id, book, new MeetingFacts([family.Plan.Wren], BookUse.ReadAlone, TestServer.Today, null, false, "")));
        var page = await family.Guardian.GetAsync($"/week/books/{book}?remove=true");
        Assert.Contains("where it stands once", page.QuerySelector(".note.loss")!.TextContent, StringComparison.Ordinal);
        using var removed = await family.Guardian.SubmitAsync(page);
        Assert.Equal(HttpStatusCode.Redirect, removed.StatusCode);
        Assert.Equal((0, 0), (await family.Family.FromDbAsync(db => db.Books.CountAsync()), await family.Family.FromDbAsync(db => db.BookMeetings.CountAsync())));
        using var twice = await family.Guardian.SubmitAsync(page);
        Assert.Equal(HttpStatusCode.NotFound, twice.StatusCode);
    }

    [Fact]
    public async Task Takes_no_card_and_no_child_of_another_family()
    {
        var (family, other) = (await BookFamily.MakeAsync(server), await BookFamily.MakeAsync(server));
        var (book, card) = (await family.BookAsync("The Weir"), await other.CardAsync());
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/week/books/{book}"), new() { ["Input.CardId"] = card.ToString() }, "#Input_Title");
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        foreach (var path in new[] { $"/week/books/{book}/readers/new", $"/week/reading/{book}/plan" })
        {
            using var child = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(path), new() { ["Input.Learners"] = other.Plan.Wren.ToString(), ["Input.Chapters"] = "3 x 10" });
            Assert.Equal(HttpStatusCode.NotFound, child.StatusCode);
        }
    }
}
