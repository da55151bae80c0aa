using CoopLessons.Core.Prepare.Books;
using CoopLessons.Data;
using CoopLessons.Data.Prepare;
using CoopLessons.Web.Pages.Planning;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Books;

/// <summary>One book: what it is, where it is, and who meets it.</summary>
public sealed class BookModel(AppDb db, TimeProvider clock) : PlanThingPage<BookTitle, BookInput>(db, clock)
{
    public IReadOnlyList<LibraryCard> Cards { get; private set; } = [];
    public IReadOnlyList<BookMeeting> Meetings { get; private set; } = [];
    public bool IsReadAloud { get; private set; }

    /// <summary>The same book, written down before.</summary>
    public BookTitle? Before { get; private set; }

    public LibraryCard? Card => Cards.FirstOrDefault(c => c.Id == Row?.CardId);

    protected override string Overview => "/week/books";

    protected override string After(Guid id) => $"/week/books/{id}";

    protected override IQueryable<BookTitle> Rows(Guid id)
    {
        Cards = [.. Db.LibraryCards.AsNoTracking().OrderBy(c => c.Name).ThenBy(c => c.Id)];
        Meetings = [.. Db.BookMeetings.AsNoTracking().Where(m => m.BookId == id).OrderByDescending(m => m.BegunOn).ThenBy(m => m.Id)];
        IsReadAloud = Db.ReadAloudPlans.Any(p => p.BookId == id);
        return Db.Books.Where(b => b.Id == id);
    }

    protected override BookInput FormOf(BookTitle row) => BookInput.Of(row);

    protected override string TitleOf(BookTitle row) => row.Title;

    protected override bool NamesOwn() => Input.CardId is not { } id || OwnCards().Any(c => c.Id == id);

    protected override async Task BeginAsync()
    {
        Cards = await Db.LibraryCards.AsNoTracking().OrderBy(c => c.Name).ThenBy(c => c.Id).ToListAsync(Ct);
        Input.CardId = Cards.Count > 0 ? Cards[0].Id : null;
    }

    protected override void Check()
    {
        OwnCards();
        var read = default(Isbn);
        if (!string.IsNullOrWhiteSpace(Input.Isbn) && !Isbn.TryRead(Input.Isbn, out read, out var fault))
            ModelState.AddModelError("Input.Isbn", fault);
        if (!ModelState.IsValid)
            return;
        var asked = new Core.Units.Book(Input.Title, default, Input.Author, read?.Digits);
        Before = Db.Books.AsNoTracking().ToList().FirstOrDefault(b => b.Id != Row?.Id && b.Id != NewId && b.Answers(asked));
        if (Before is not null)
            ModelState.AddModelError(Before.Isbn.Length > 0 && Before.Isbn == read?.Digits ? "Input.Isbn" : "Input.Title", $"“{Before.Title}” is written down already. A book stands here once, however often it is read.");
    }

    protected override Task<BookTitle> MakeAsync(Guid id) => Task.FromResult(new BookTitle(id, Input.Read()));

    protected override void Write(BookTitle row) => row.Describe(Input.Read());

    protected override Task<IReadOnlyList<string>> BecomesAsync(BookTitle row)
    {
        var sittings = Db.ReadingSittings.Count(s => s.BookId == row.Id);
        return Task.FromResult<IReadOnlyList<string>>(
        [
            Meetings.Count == 0 ? "It stands on no reading list." : $"It goes from the reading lists of the year’s records, where it stands {(Meetings.Count == 1 ? "once" : $"{Meetings.Count} times")}.",
            .. sittings == 0 ? Array.Empty<string>() : [$"What was read aloud of it goes too: {(sittings == 1 ? "1 sitting" : $"{sittings} sittings")}. The log stays as it is written."],
        ]);
    }

    private IReadOnlyList<LibraryCard> OwnCards() => Cards = [.. Db.LibraryCards.AsNoTracking().OrderBy(c => c.Name).ThenBy(c => c.Id)];
}
