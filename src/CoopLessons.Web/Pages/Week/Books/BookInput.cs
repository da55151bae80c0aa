using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Prepare.Books;
using CoopLessons.Data.Prepare;
using CoopLessons.Web.Pages.Account;

namespace CoopLessons.Web.Pages.Books;

/// <summary>What a parent writes about a book.</summary>
public sealed class BookInput
{
    [Required(ErrorMessage = "Say what it is called.")]
    [StringLength(BookTitle.LongestTitle, ErrorMessage = "At most {1} signs here.")]
    [Visible]
    public string Title { get; set; } = "";

    [StringLength(BookTitle.LongestAuthor, ErrorMessage = "At most {1} signs here.")]
    public string? Author { get; set; }

    [StringLength(40, ErrorMessage = "An ISBN has 10 or 13 digits.")]
    public string? Isbn { get; set; }

    [EnumDataType(typeof(BookMeasure), ErrorMessage = "Choose one of the two.")]
    public BookMeasure Measure { get; set; }

    [Range(1, BookTitle.MostLength, ErrorMessage = "Give a whole number from {1} to {2}, or leave this empty.")]
    public int? Length { get; set; }

    [StringLength(BookTitle.LongestLevel, ErrorMessage = "At most {1} signs here.")]
    public string? Level { get; set; }

    [EnumDataType(typeof(BookSource), ErrorMessage = "Choose where it comes from.")]
    public BookSource Source { get; set; }

    [StringLength(BookTitle.LongestLender, ErrorMessage = "At most {1} signs here.")]
    public string? Lender { get; set; }

    public Guid? CardId { get; set; }

    [StringLength(BookTitle.LongestNote, ErrorMessage = "A note has at most {1} signs.")]
    public string? Note { get; set; }

    public static BookInput Of(BookTitle book) => new()
    {
        Title = book.Title,
        Author = book.Author,
        Isbn = book.Isbn,
        Measure = book.Measure,
        Length = book.Length,
        Level = book.Level,
        Source = book.Source,
        Lender = book.Lender,
        CardId = book.CardId,
        Note = book.Note,
    };

    /// <summary>The form was found sound: the number is right or there is none.</summary>
    public BookFacts Read() => new(
        Title, Author ?? "", Core.Prepare.Books.Isbn.TryRead(Isbn, out var isbn, out _) ? isbn.Digits : "", Measure, Length, Level ?? "", Source, Lender ?? "", CardId, Note ?? "");
}
