using System.Net;
using CoopLessons.Data.Prepare;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Prepare;

[Collection(PlanningServer.Name)]
public sealed class A_loan(TestServer server)
{
    private static string Tap(string handler) => $"button[formaction$='handler={handler}']";

    private static async Task<HttpResponseMessage> TapAsync(BookFamily family, Guid book, string handler)
    {
        var page = await family.Guardian.GetAsync($"/week/books/{book}");
        var button = page.QuerySelector(Tap(handler))!;
        var form = button.Closest("form")!;
        return await family.Guardian.PostAsync(button.GetAttribute("formaction")!, form.QuerySelectorAll("input").Select(i => new KeyValuePair<string, string>(i.GetAttribute("name")!, i.GetAttribute("value")!)));
    }

    [Fact]
    public async Task Goes_from_the_hold_to_the_shelf_and_back_in_four_taps()
    {
        var family = await BookFamily.MakeAsync(server);
        var book = await family.BookAsync("The Weir", BookSource.Library, await family.CardAsync(loanDays: 21, renewals: 1));
        foreach (var (handler, loan) in new (string, BookLoan)[]
        {
            ("Hold", new(TestServer.Today, null, null, 0, null)),
            ("Fetch", new(TestServer.Today, TestServer.Today, new(2026, 4, 2), 0, null)),
            ("Renew", new(TestServer.Today, TestServer.Today, new(2026, 4, 23), 1, null)),
            ("Return", new(TestServer.Today, TestServer.Today, new(2026, 4, 23), 1, TestServer.Today)),
        })
        {
            using var answer = await TapAsync(family, book, handler);
            Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
            Assert.Equal(loan, (await family.BookOf(book)).Loan);
        }

        // The next loan begins anew.
        using var again = await TapAsync(family, book, "Hold");
        Assert.Equal(new BookLoan(TestServer.Today, null, null, 0, null), (await family.BookOf(book)).Loan);
    }

    [Fact]
    public async Task Is_renewed_no_oftener_than_its_card_allows()
    {
        var family = await BookFamily.MakeAsync(server);
        var due = new DateOnly(2026, 3, 20);
        var book = await family.BookAsync("The Weir", BookSource.Library, await family.CardAsync(renewals: 1), new(null, new(2026, 3, 1), due, 1, null));
        using var answer = await TapAsync(family, book, "Renew");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("allows 1 renewal, and it is used", (await Visitor.ParseAsync(answer)).QuerySelector("#renewed-fault")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(due, (await family.BookOf(book)).DueOn);
    }

    [Fact]
    public async Task Is_renewed_once_by_a_tap_that_is_sent_twice()
    {
        var family = await BookFamily.MakeAsync(server);
        var book = await family.BookAsync("The Weir", BookSource.Library, await family.CardAsync(renewals: 5, loanDays: 14), new(null, new(2026, 3, 1), new(2026, 3, 15), 0, null));
        var page = await family.Guardian.GetAsync($"/week/books/{book}");
        var fields = page.QuerySelector(Tap("Renew"))!.Closest("form")!.QuerySelectorAll("input").Select(i => new KeyValuePair<string, string>(i.GetAttribute("name")!, i.GetAttribute("value")!)).ToList();
        for (var i = 0; i < 2; i++)
        {
            using var answer = await family.Guardian.PostAsync($"/week/books/{book}/loan?handler=Renew", fields);
            Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        }

        Assert.Equal((1, new DateOnly(2026, 3, 29)), ((await family.BookOf(book)).Renewed, (await family.BookOf(book)).DueOn));
    }

    [Theory]
    [InlineData("Input.FetchedOn", "2026-02-01", "before the hold was placed")]
    [InlineData("Input.DueOn", "2026-03-01", "before it came")]
    [InlineData("Input.ReturnedOn", "2026-03-01", "before it came")]
    [InlineData("Input.FetchedOn", "", "only a book that is here is due")]
    [InlineData("Input.HoldPlacedOn", "1999-01-01", "from the year 2000 on")]
    [InlineData("Input.Renewed", "", "0 for not yet")]
    [InlineData("Input.Renewed", "21", "from 0 to 20")]
    [InlineData("Input.DueOn", "31.3.", "not understood")]
    public async Task Has_no_days_that_cannot_be(string field, string value, string why)
    {
        var family = await BookFamily.MakeAsync(server);
        var loan = new BookLoan(new(2026, 3, 1), new(2026, 3, 5), new(2026, 3, 26), 0, null);
        var book = await family.BookAsync("The Weir", BookSource.Library, await family.CardAsync(), loan);
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/week/books/{book}/loan"), new() { [field] = value });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var shown = await Visitor.ParseAsync(answer);
        Assert.Contains(shown.QuerySelectorAll(".field-validation-error"), f => f.TextContent.Contains(why, StringComparison.Ordinal));
        Assert.Equal(loan, (await family.BookOf(book)).Loan);
    }

    [Fact]
    public async Task Is_not_overwritten_by_somebody_who_saw_an_older_one()
    {
        var family = await BookFamily.MakeAsync(server);
        var book = await family.BookAsync("The Weir", BookSource.Library, await family.CardAsync());
        var page = await family.Guardian.GetAsync($"/week/books/{book}/loan");
        using var tap = await TapAsync(family, book, "Fetch");
        using var answer = await family.Guardian.SubmitAsync(page, new() { ["Input.HoldPlacedOn"] = "2026-03-02" });
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Equal("2026-03-02", (await Visitor.ParseAsync(answer)).QuerySelector("#Input_HoldPlacedOn")!.GetAttribute("value"));
        Assert.Null((await family.BookOf(book)).HoldPlacedOn);
    }

    [Fact]
    public async Task Stays_written_down_when_its_card_is_removed()
    {
        var family = await BookFamily.MakeAsync(server);
        var card = await family.CardAsync();
        var book = await family.BookAsync("The Weir", BookSource.Library, card);
        var page = await family.Guardian.GetAsync($"/week/books/cards/{card}?remove=true");
        Assert.Contains("1 book that hangs on it stays written down", page.QuerySelector(".note.loss")!.TextContent, StringComparison.Ordinal);
        using var removed = await family.Guardian.SubmitAsync(page);
        Assert.Equal(HttpStatusCode.Redirect, removed.StatusCode);
        Assert.Null((await family.BookOf(book)).CardId);
    }

    [Theory]
    [InlineData("Input.Name", "", "Say what it is called")]
    [InlineData("Input.LoanDays", "0", "from 1 to 365")]
    [InlineData("Input.HoldDays", "121", "from 0 to 120")]
    [InlineData("Input.MostBooks", "0", "from 1 to 999")]
    [InlineData("Input.Renewals", "often", "not understood")]
    public async Task Hangs_on_no_card_that_cannot_be(string field, string value, string why)
    {
        var family = await BookFamily.MakeAsync(server);
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/books/cards/new"), new() { ["Input.Name"] = "Town library", [field] = value });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains((await Visitor.ParseAsync(answer)).QuerySelectorAll(".field-validation-error"), f => f.TextContent.Contains(why, StringComparison.Ordinal));
        Assert.Equal(0, await family.Family.FromDbAsync(db => db.LibraryCards.CountAsync()));
    }
}
