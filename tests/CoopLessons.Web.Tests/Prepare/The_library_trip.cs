using System.Net;
using AngleSharp.Dom;
using CoopLessons.Core.Prepare;
using CoopLessons.Data.Prepare;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Prepare;

/// <summary>On Thursday 12 March 2026 of the week of Monday the 9th; a unit of six weeks runs from that Monday.</summary>
[Collection(PlanningServer.Name)]
public sealed class The_library_trip(TestServer server)
{
    private static IElement Line(IDocument page, string title) => page.QuerySelectorAll("main .rows > li").Single(l => l.TextContent.Contains(title, StringComparison.Ordinal));

    [Fact]
    public async Task Places_a_hold_so_many_days_before_the_first_day_that_needs_the_book()
    {
        var family = await BookFamily.MakeAsync(server);
        // Needed on Monday 23 March, the third week of the unit; a hold takes ten days.
        await family.AsksAsync((3, "The Weir", null));
        await family.BookAsync("The Weir", BookSource.Library, await family.CardAsync(holdDays: 10));
        var page = await family.Guardian.GetAsync("/week/books/trip");
        Assert.Equal(["2026-03-13", "2026-03-22"], page.QuerySelectorAll("[data-by]").Select(b => b.GetAttribute("data-by")).Order(StringComparer.Ordinal));

        Assert.Equal(
            [new ReadyTask(ReadyKind.Borrow, new(2026, 3, 13), "Place a hold on “The Weir”", "Talk about The Weir", "/week/books/trip", false)], await family.TasksAsync());
        // In the week before it is needed it is fetched; the hold is that week's matter no more.
        Assert.Equal([(new DateOnly(2026, 3, 22), "Fetch “The Weir” from Millrace town library")], (await family.TasksAsync(week: BookFamily.Monday.AddDays(7))).Select(t => (t.By, t.What)));
    }

    [Fact]
    public async Task Keeps_a_hold_that_is_late_on_the_list_of_this_week()
    {
        var family = await BookFamily.MakeAsync(server);
        await family.AsksAsync((2, "The Weir", null));
        var book = await family.BookAsync("The Weir", BookSource.Library, await family.CardAsync(holdDays: 14));
        var task = (await family.TasksAsync()).Single(t => t.What.StartsWith("Place", StringComparison.Ordinal));
        Assert.Equal((new DateOnly(2026, 3, 2), false), (task.By, task.Done));
        Assert.Contains("was to be by Monday 2 March", Line(await family.Guardian.GetAsync("/week/books/trip"), "was to be by").TextContent, StringComparison.Ordinal);

        await family.Family.WithDbAsync(async db =>
        {
            (await db.Books.SingleAsync(b => b.Id == book)).PlaceHold(TestServer.Today);
            await db.SaveChangesAsync();
        });
        Assert.DoesNotContain(await family.TasksAsync(), t => t.What.StartsWith("Place", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Renews_by_the_due_day_what_is_needed_after_it_and_takes_back_the_rest()
    {
        var family = await BookFamily.MakeAsync(server);
        var card = await family.CardAsync(renewals: 1);
        await family.AsksAsync((1, "The Weir", new(2026, 3, 10)), (2, "The Race", null));
        BookLoan Due(int day, int renewed) => new(null, new(2026, 2, 20), new(2026, 3, day), renewed, null);
        await family.BookAsync("The Weir", BookSource.Library, card, Due(13, 0));
        await family.BookAsync("The Race", BookSource.Library, card, Due(14, 0));
        await family.BookAsync("Nobody Asks", BookSource.Library, card, Due(11, 0));
        var tasks = (await family.TasksAsync()).Where(t => !t.Done).ToList();
        Assert.Equal(
            [(new DateOnly(2026, 3, 11), "Take 2 books back to Millrace town library", "Nobody Asks, The Weir"), (new DateOnly(2026, 3, 14), "Renew “The Race”", "Talk about The Race")],
            tasks.Select(t => (t.By, t.What, t.For)));
        Assert.Contains("was to be by Wednesday 11 March", Line(await family.Guardian.GetAsync("/week/books/trip"), "Nobody Asks").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Says_what_goes_back_too_soon_and_cannot_be_renewed()
    {
        var family = await BookFamily.MakeAsync(server);
        await family.AsksAsync((2, "The Race", null));
        await family.BookAsync("The Race", BookSource.Library, await family.CardAsync(renewals: 1), new(null, new(2026, 2, 1), new(2026, 3, 14), 1, null));
        Assert.Contains("needed until Sunday 22 March and cannot be renewed again", Line(await family.Guardian.GetAsync("/week/books/trip"), "The Race").TextContent, StringComparison.Ordinal);
        Assert.Contains(await family.TasksAsync(), t => t.What == "Take “The Race” back to Millrace town library");
    }

    [Fact]
    public async Task Joins_what_is_fetched_on_one_card_and_is_done_when_all_is_there()
    {
        var family = await BookFamily.MakeAsync(server);
        var card = await family.CardAsync(holdDays: 0);
        await family.AsksAsync((1, "The Weir", new(2026, 3, 13)), (1, "The Race", new(2026, 3, 14)), (1, "Own Book", new(2026, 3, 14)));
        var books = new[] { await family.BookAsync("The Weir", BookSource.Library, card), await family.BookAsync("The Race", BookSource.Library, card) };
        await family.BookAsync("Own Book");
        Task<ReadyTask> Fetch() => family.TasksAsync().ContinueWith(t => t.Result.Single(x => x.What.StartsWith("Fetch", StringComparison.Ordinal)), TaskScheduler.Default);
        Assert.Equal(new ReadyTask(ReadyKind.Borrow, new(2026, 3, 12), "Fetch 2 books from Millrace town library", "The Weir, The Race", "/week/books/trip", false), await Fetch());
        foreach (var book in books)
        {
            await family.Family.WithDbAsync(async db =>
            {
                (await db.Books.SingleAsync(b => b.Id == book)).Fetch(TestServer.Today, 21);
                await db.SaveChangesAsync();
            });
        }

        Assert.True((await Fetch()).Done);
    }

    [Fact]
    public async Task Writes_down_in_one_tap_what_is_asked_for()
    {
        var family = await BookFamily.MakeAsync(server);
        var card = await family.CardAsync();
        await family.AsksAsync((1, "The Weir", null), (2, "The Weir", null), (2, "The Race", null));
        var page = await family.Guardian.GetAsync("/week/books");
        Assert.Equal(2, page.QuerySelectorAll("#asked li").Length);
        Assert.Contains(await family.TasksAsync(), t => t.What == "Say where 2 books come from" && t.Link == "/week/books#asked");
        for (var i = 0; i < 2; i++)
        {
            using var answer = await family.Guardian.SubmitAsync(page, new() { ["asked.Title"] = "The Weir", ["asked.Source"] = "Library" }, "#asked form");
            Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        }

        var book = await family.Family.FromDbAsync(db => db.Books.SingleAsync());
        Assert.Equal(("The Weir", BookSource.Library, card), (book.Title, book.Source, book.CardId));
        Assert.Single((await family.Guardian.GetAsync("/week/books")).QuerySelectorAll("#asked li"));
    }

    [Fact]
    public async Task Makes_a_bought_book_the_family_s_own_in_one_tap()
    {
        var family = await BookFamily.MakeAsync(server);
        await family.AsksAsync((2, "The Weir", null));
        var book = await family.BookAsync("The Weir", BookSource.ToBuy);
        Assert.Equal([(new DateOnly(2026, 3, 15), "Buy “The Weir”")], (await family.TasksAsync()).Select(t => (t.By, t.What)));
        var button = (await family.Guardian.GetAsync("/week/books/trip")).QuerySelector("button[formaction$='handler=Bought']")!;
        using var answer = await family.Guardian.PostAsync(button.GetAttribute("formaction")!, button.Closest("form")!.QuerySelectorAll("input").Select(i => new KeyValuePair<string, string>(i.GetAttribute("name")!, i.GetAttribute("value")!)));
        Assert.Equal("/week/books/trip", answer.Headers.Location!.OriginalString);
        Assert.Equal(BookSource.Own, (await family.BookOf(book)).Source);
        Assert.Empty(await family.TasksAsync());
    }

    [Fact]
    public async Task Shows_nothing_of_another_family()
    {
        var (family, other) = (await BookFamily.MakeAsync(server), await BookFamily.MakeAsync(server));
        await other.BookAsync("Their Book", BookSource.Library, await other.CardAsync(), new(null, new(2026, 3, 1), new(2026, 3, 13), 0, null));
        foreach (var path in new[] { "/week/books", "/week/books/trip", "/week/books/cards" })
        {
            var text = (await family.Guardian.GetAsync(path)).Body!.TextContent;
            Assert.DoesNotContain("Their Book", text, StringComparison.Ordinal);
            Assert.DoesNotContain("Millrace town library", text, StringComparison.Ordinal);
        }

        Assert.Empty(await family.TasksAsync());
    }
}
