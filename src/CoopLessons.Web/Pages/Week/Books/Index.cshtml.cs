using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Prepare.Books;
using CoopLessons.Data;
using CoopLessons.Data.Prepare;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Books;

/// <summary>A book that activities ask for, as it is written down in one tap.</summary>
public sealed class AskedInput
{
    [Required]
    [StringLength(BookTitle.LongestTitle)]
    public string Title { get; set; } = "";

    [StringLength(BookTitle.LongestAuthor)]
    public string? Author { get; set; }

    [StringLength(25)]
    public string? Isbn { get; set; }

    [EnumDataType(typeof(BookSource))]
    public BookSource Source { get; set; }
}

/// <summary>All books of the family: what is asked for, what is read aloud, and each title with where it is.</summary>
public sealed class IndexModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    private const int LongestSearch = 100;

    [BindProperty(SupportsGet = true, Name = "q")]
    public string? Search { get; set; }

    public IReadOnlyList<BookTitle> Books { get; private set; } = [];
    public int All { get; private set; }
    public IReadOnlyDictionary<Guid, string> Cards { get; private set; } = new Dictionary<Guid, string>();
    public IReadOnlyList<BookNeed> Asked { get; private set; } = [];
    public IReadOnlyList<ReadAloud> Aloud { get; private set; } = [];

    public async Task OnGetAsync()
    {
        var books = await Db.Books.AsNoTracking().OrderBy(b => b.Title).ThenBy(b => b.Author).ThenBy(b => b.Id).ToListAsync(Ct);
        All = books.Count;
        Books = [.. books.Where(Found)];
        Cards = await Db.LibraryCards.AsNoTracking().ToDictionaryAsync(c => c.Id, c => c.Name, Ct);
        Aloud = [.. (await ReadAloud.AllAsync(Db, Today, Ct)).Where(r => !r.Now.IsRead)];
        var week = await ReadyWeek.LoadAsync(Db, Core.Calendar.Week.Of(Today), Ct);
        Asked = [.. (await BookNeed.LoadAsync(Db, week, await BookNeed.WeeksAheadAsync(Db, Ct), Today, Ct)).Where(n => n.Title is null && n.Last >= Today)];
    }

    /// <summary>Writes down a book that is asked for; one that answers already is left as it is.</summary>
    public async Task<IActionResult> OnPostWriteDownAsync([FromForm] AskedInput asked)
    {
        if (!ModelState.IsValid)
            return BadRequest();
        var isbn = Isbn.TryRead(asked.Isbn, out var read, out _) ? read.Digits : "";
        var book = new Core.Units.Book(asked.Title, default, asked.Author, isbn);
        if ((await Db.Books.AsNoTracking().ToListAsync(Ct)).FirstOrDefault(b => b.Answers(book)) is { } known)
        {
            Say($"“{known.Title}” is written down.");
            return LocalRedirect("/week/books#asked");
        }

        var card = asked.Source == BookSource.Library ? await Db.LibraryCards.OrderBy(c => c.Name).ThenBy(c => c.Id).Select(c => (Guid?)c.Id).FirstOrDefaultAsync(Ct) : null;
        Db.Books.Add(new BookTitle(Guid.CreateVersion7(), new BookFacts(asked.Title, asked.Author ?? "", isbn, BookMeasure.Pages, null, "", asked.Source, "", card, "")));
        await Db.SaveChangesAsync(Ct);
        Say($"“{asked.Title}” is written down.");
        return LocalRedirect("/week/books#asked");
    }

    private bool Found(BookTitle book)
    {
        if (string.IsNullOrWhiteSpace(Search))
            return true;
        var wanted = Search.Length > LongestSearch ? Search[..LongestSearch] : Search;
        if (Isbn.TryRead(wanted, out var isbn, out _))
            return book.Isbn == isbn.Digits;
        var plain = PlainTitle.Of(wanted);
        return new[] { book.Title, book.Author, book.Level, book.Lender }.Any(t => PlainTitle.Of(t).Contains(plain, StringComparison.Ordinal));
    }
}
