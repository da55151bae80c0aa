using CoopLessons.Core.Prepare.Books;
using CoopLessons.Core.Units;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Prepare;

/// <summary>Where a book comes from: the family's shelf, the library, somebody who lends it, or a shop to come.</summary>
public enum BookSource { Own, Library, Borrowed, ToBuy }

/// <summary>What a family writes down of a book, set together.</summary>
/// <param name="Isbn">Thirteen digits, or empty.</param>
/// <param name="Length">Whole pages or minutes where no chapters are known; null where nobody said.</param>
/// <param name="Level">The reading level in the parent's words, or empty.</param>
/// <param name="Lender">Who lends it, where it is borrowed from somebody.</param>
/// <param name="CardId">The card on which it is fetched, where it comes from the library.</param>
public sealed record BookFacts(
    string Title, string Author, string Isbn, BookMeasure Measure, int? Length, string Level, BookSource Source, string Lender, Guid? CardId, string Note);

/// <summary>A book as the family knows it, written down once however often it is used.</summary>
public sealed class BookTitle : IFamilyOwned, IVersioned
{
    public const int LongestTitle = 200;
    public const int LongestAuthor = 120;
    public const int LongestLevel = 60;
    public const int LongestLender = 80;
    public const int LongestNote = 500;
    public const int MostLength = 5000;

    private BookTitle() { }

    public BookTitle(Guid id, BookFacts facts)
    {
        Id = id;
        Describe(facts);
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public string Title { get; private set; } = "";
    public string Author { get; private set; } = "";
    public string Isbn { get; private set; } = "";
    public BookMeasure Measure { get; private set; }
    public int? Length { get; private set; }
    public List<BookChapter> Chapters { get; private set; } = [];
    public string Level { get; private set; } = "";
    public BookSource Source { get; private set; }
    public string Lender { get; private set; } = "";
    public Guid? CardId { get; private set; }
    public string Note { get; private set; } = "";

    /// <summary>When a hold was placed on it, for the loan at hand.</summary>
    public DateOnly? HoldPlacedOn { get; private set; }

    /// <summary>When it came into the house, for the loan at hand.</summary>
    public DateOnly? FetchedOn { get; private set; }

    /// <summary>The last day on which it may be given back; null where nobody said.</summary>
    public DateOnly? DueOn { get; private set; }

    /// <summary>How often the loan at hand was renewed.</summary>
    public int Renewed { get; private set; }

    /// <summary>When it was given back; the days of that loan stay until the next one begins.</summary>
    public DateOnly? ReturnedOn { get; private set; }
    public int Version { get; private set; }

    public BookFacts Facts => new(Title, Author, Isbn, Measure, Length, Level, Source, Lender, CardId, Note);

    public BookLoan Loan => new(HoldPlacedOn, FetchedOn, DueOn, Renewed, ReturnedOn);

    public bool IsLent => Source is BookSource.Library or BookSource.Borrowed;

    /// <summary>Fetched and not given back.</summary>
    public bool IsOut => IsLent && FetchedOn is not null && ReturnedOn is null;

    /// <summary>A hold was placed and the book did not come yet.</summary>
    public bool IsOnHold => Source == BookSource.Library && HoldPlacedOn is not null && FetchedOn is null && ReturnedOn is null;

    /// <summary>It can be taken up today.</summary>
    public bool IsInTheHouse => Source == BookSource.Own || IsOut;

    /// <summary>Sum of the chapters, else the length that was written; 0 where neither is known.</summary>
    public int Tenths => Chapters.Count > 0 ? Chapters.Sum(c => c.Tenths) : (Length ?? 0) * 10;

    public void Describe(BookFacts facts)
    {
        (Title, Author, Isbn, Measure, Length) = (facts.Title, facts.Author, facts.Isbn, facts.Measure, facts.Length);
        (Level, Source, Note) = (facts.Level, facts.Source, facts.Note);
        Lender = facts.Source == BookSource.Borrowed ? facts.Lender : "";
        CardId = facts.Source == BookSource.Library ? facts.CardId : null;
    }

    public void HasChapters(IEnumerable<BookChapter> chapters) => Chapters = [.. chapters];

    /// <summary>The days of a loan as the parent sets them.</summary>
    public void SetLoan(BookLoan loan) =>
        (HoldPlacedOn, FetchedOn, DueOn, Renewed, ReturnedOn) = (loan.HoldPlacedOn, loan.FetchedOn, loan.DueOn, loan.Renewed, loan.ReturnedOn);

    /// <summary>A hold is placed: a new loan begins.</summary>
    public void PlaceHold(DateOnly on) => SetLoan(new BookLoan(on, null, null, 0, null));

    /// <summary>The book comes into the house, due after so many days; null where no day is known.</summary>
    public void Fetch(DateOnly on, int? days) => SetLoan(new BookLoan(ReturnedOn is null ? HoldPlacedOn : null, on, days is { } d ? on.AddDays(d) : null, 0, null));

    /// <summary>The loan is renewed for so many days from its due day, or from today where that has gone by.</summary>
    public void Renew(DateOnly today, int days)
    {
        DueOn = (DueOn is { } due && due > today ? due : today).AddDays(days);
        Renewed++;
    }

    public void Return(DateOnly on) => ReturnedOn = on;

    /// <summary>The card was taken out of use.</summary>
    public void LoseCard() => CardId = null;

    /// <summary>Whether an activity that asks for a book means this one.</summary>
    public bool Answers(Book asked) => PlainTitle.Same((Title, Author, Isbn), (asked.Title, asked.Author ?? "", NumberOf(asked)));

    /// <summary>The number of a book that an activity asks for, in thirteen digits; empty where it has none or a wrong one.</summary>
    public static string NumberOf(Book asked) => Core.Prepare.Books.Isbn.TryRead(asked.Isbn, out var isbn, out _) ? isbn.Digits : "";

    internal sealed class Mapping : IEntityTypeConfiguration<BookTitle>
    {
        public void Configure(EntityTypeBuilder<BookTitle> b)
        {
            b.HasKey(t => new { t.FamilyId, t.Id });
            b.Property(t => t.Title).HasMaxLength(LongestTitle);
            b.Property(t => t.Author).HasMaxLength(LongestAuthor);
            b.Property(t => t.Isbn).HasMaxLength(13);
            b.Property(t => t.Measure).HasConversion<string>().HasMaxLength(20);
            b.Property(t => t.Source).HasConversion<string>().HasMaxLength(20);
            b.Property(t => t.Level).HasMaxLength(LongestLevel);
            b.Property(t => t.Lender).HasMaxLength(LongestLender);
            b.Property(t => t.Note).HasMaxLength(LongestNote);
            b.Property(t => t.Chapters).AsJson();
            b.Ignore(t => t.Facts).Ignore(t => t.Loan).Ignore(t => t.IsLent).Ignore(t => t.IsOut).Ignore(t => t.IsOnHold).Ignore(t => t.IsInTheHouse).Ignore(t => t.Tenths);
            // No action rather than restrict: where the whole family goes, both go with it.
            b.HasOne<LibraryCard>().WithMany().HasForeignKey(t => new { t.FamilyId, t.CardId }).OnDelete(DeleteBehavior.NoAction);
        }
    }
}

/// <summary>The days of a loan.</summary>
public sealed record BookLoan(DateOnly? HoldPlacedOn, DateOnly? FetchedOn, DateOnly? DueOn, int Renewed, DateOnly? ReturnedOn);
