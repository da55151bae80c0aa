using System.Text.Json;
using CoopLessons.Core.Prepare.Books;
using CoopLessons.Core.Units;
using CoopLessons.Data.Prepare;

namespace CoopLessons.Data.Scenario;

/// <summary>The books of the families of the co-op, as <c>seed-scenario/books.json</c> tells them.</summary>
internal sealed record CoopBooks(IReadOnlyDictionary<string, CoopBookcase> Families)
{
    public static CoopBooks Read() =>
        JsonSerializer.Deserialize<CoopBooks>(ScenarioFiles.Bytes("scenario/books.json"), Coop.Json) ?? throw new InvalidDataException("books.json holds nothing.");
}

internal sealed record CoopBookcase(IReadOnlyList<CoopCard> Cards, IReadOnlyList<CoopTitle> Books);

internal sealed record CoopCard(string Name, int LoanDays, int Renewals, int HoldDays, int? MostBooks = null, int? MostHolds = null);

/// <summary>A book; one from the library hangs on the family's first card.</summary>
internal sealed record CoopTitle(
    string Title, BookSource Source, string Author = "", BookMeasure Measure = BookMeasure.Pages, int? Length = null, string Level = "", string Lender = "", string Note = "",
    CoopLoan? Loan = null, CoopAloud? Aloud = null, IReadOnlyList<CoopMeetingOfBook>? Meetings = null);

/// <summary>A loan by days from the day on which the demo is made.</summary>
internal sealed record CoopLoan(int? HoldDaysAgo = null, int? FetchedDaysAgo = null, int? DueInDays = null, int Renewed = 0);

/// <summary>A book read aloud, by days from the day on which the demo is made; chapters as a parent writes them.</summary>
internal sealed record CoopAloud(string Chapters, int FirstDaysAgo, int LastInDays, IReadOnlyList<string> Learners, IReadOnlyList<CoopSitting> Read);

internal sealed record CoopSitting(int DaysAgo, int From, int To, int? Minutes = null);

internal sealed record CoopMeetingOfBook(IReadOnlyList<string> Learners, BookUse How, DateOnly BegunOn, DateOnly? EndedOn = null, bool Unfinished = false, string Note = "");
