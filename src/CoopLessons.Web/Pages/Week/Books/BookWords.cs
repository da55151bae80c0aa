using CoopLessons.Core.Prepare.Books;
using CoopLessons.Core.Units;
using CoopLessons.Data.Prepare;
using CoopLessons.Web.Pages.Today;

namespace CoopLessons.Web.Pages.Books;

/// <summary>How the pages speak of books.</summary>
public static class BookWords
{
    public static string Of(BookSource source) => source switch
    {
        BookSource.Own => "our own",
        BookSource.Library => "from the library",
        BookSource.Borrowed => "borrowed from somebody",
        _ => "to be bought",
    };

    public static string Of(BookUse use) => use switch
    {
        BookUse.Heard => "heard",
        BookUse.ReadAlone => "read alone",
        BookUse.ListenedTo => "listened to",
        _ => "looked through",
    };

    public static string Of(BookMeasure measure) => measure == BookMeasure.Pages ? "pages" : "recorded minutes";

    public static string Of(ReadingDays days) => days switch
    {
        ReadingDays.EveryEvening => "every evening",
        ReadingDays.TeachingDays => "evenings of our teaching days",
        _ => "these weekdays",
    };

    public static string Of(ErrandKind kind) => kind switch
    {
        ErrandKind.WriteDown => "Say where these come from",
        ErrandKind.PlaceHold => "Place holds",
        ErrandKind.Fetch => "Fetch",
        ErrandKind.Borrow => "Borrow",
        ErrandKind.Buy => "Buy",
        ErrandKind.Renew => "Renew",
        _ => "Take back",
    };

    /// <summary>Where a book is, in a few words.</summary>
    public static string State(BookTitle book, string? card, DateOnly today)
    {
        if (book.IsOut)
            return (book.Source == BookSource.Borrowed && book.Lender.Length > 0 ? $"from {book.Lender}, " : "") + (book.DueOn is { } due ? DueOn(due, today) : "in the house");
        if (book.IsOnHold)
            return $"on hold since {book.HoldPlacedOn!.Value.InWords(today)}";
        return book.Source switch
        {
            BookSource.Own => "on our shelf",
            BookSource.Library => card ?? "at the library",
            BookSource.Borrowed => book.Lender.Length > 0 ? $"at {book.Lender}’s" : "to borrow",
            _ => "to be bought",
        };
    }

    public static string DueOn(DateOnly due, DateOnly today) => $"{(due < today ? "was due on" : "due on")} {due.InWords(today)}";

    public static string By(DateOnly by, DateOnly today) => $"{(by < today ? "was to be by" : "by")} {by.InWords(today)}";

    /// <summary>“12 pages · 23 chapters”; empty where nothing is known.</summary>
    public static string Length(BookTitle book) => string.Join(" · ", new[]
    {
        book.Tenths > 0 ? LengthWords.Of(book.Tenths, book.Measure) : "",
        book.Chapters.Count > 0 ? book.Chapters.Count == 1 ? "1 chapter" : $"{book.Chapters.Count} chapters" : "",
    }.Where(w => w.Length > 0));

    /// <summary>Both forms of a number, where it has both.</summary>
    public static string Number(string isbn) => Isbn.TryRead(isbn, out var read, out _) ? read.Ten is { } ten ? $"{read.Digits}, formerly {ten}" : read.Digits : isbn;
}
