using CoopLessons.Core.Prepare;
using CoopLessons.Core.Prepare.Books;
using CoopLessons.Core.Units;
using CoopLessons.Data.Prepare;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Units;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Planning;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Prepare;

/// <summary>A family with two children, books, a library card, and a unit of six weeks that asks for books.</summary>
internal sealed class BookFamily
{
    /// <summary>Monday of the week in which the tests' clock stands.</summary>
    public static readonly DateOnly Monday = new(2026, 3, 9);

    private BookFamily(PlanningFamily family) => Plan = family;

    public PlanningFamily Plan { get; }
    public TestFamily Family => Plan.Family;
    public Visitor Guardian => Plan.Guardian;

    public static async Task<BookFamily> MakeAsync(TestServer server) => new(await PlanningFamily.MakeAsync(server));

    public Task<Guid> CardAsync(int holdDays = 14, int renewals = 1, int loanDays = 21) =>
        Plan.AddAsync(id => new LibraryCard(id, new CardFacts("Millrace town library", loanDays, renewals, 30, 10, holdDays)));

    public Task<Guid> BookAsync(string title, BookSource source = BookSource.Own, Guid? card = null, BookLoan? loan = null, string author = "", string isbn = "") => Plan.AddAsync(id =>
    {
        var book = new BookTitle(id, new BookFacts(title, author, isbn, BookMeasure.Pages, null, "", source, "", card, ""));
        if (loan is not null)
            book.SetLoan(loan);
        return book;
    });

    /// <summary>The unit, taken from this week on; each activity in its week asks for one book, and the first is planned on a day.</summary>
    public async Task AsksAsync(params (int Week, string Title, DateOnly? Date)[] asks) => await Family.WithDbAsync(async db =>
    {
        var unit = new Unit(Guid.CreateVersion7(), "By the mill", "Six weeks by the water.", 6);
        foreach (var (i, (week, title, date)) in asks.Index())
        {
            var activity = new Activity(Guid.CreateVersion7(), $"a{i}", new ActivityFacts(week, i + 1, $"Talk about {title}", ActivityKind.Talk, "Talk.", AdultNeed.Beside, 20, 0, ""),
                ActivityDetails.Empty with { Subjects = [new ActivitySubject(Plan.Subjects["reading"], 1)], Books = [new Book(title, BookUse.Heard)] });
            unit.Add(activity);
            if (date is { } day)
                db.Add(new PlannedSession(Guid.CreateVersion7(), activity.Id, day, null, i, [Plan.Linnet]));
        }

        unit.Hold(Plan.Subjects["reading"]);
        unit.Take(Monday);
        db.Add(unit);
        await db.SaveChangesAsync();
    });

    public Task<IReadOnlyList<ReadyTask>> TasksAsync(DateOnly? today = null, DateOnly? week = null) => Family.FromDbAsync(async db =>
        await BookTasks.OfAsync(db, await ReadyWeek.LoadAsync(db, Core.Calendar.Week.Of(week ?? Monday), default), today ?? TestServer.Today, default));

    public Task<BookTitle> BookOf(Guid id) => Family.FromDbAsync(db => db.Books.AsNoTracking().SingleAsync(b => b.Id == id));
}
