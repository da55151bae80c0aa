using CoopLessons.Core.Prepare;
using CoopLessons.Core.Prepare.Books;

namespace CoopLessons.Data.Prepare;

/// <summary>What a week's list says of books: holds, trips, renewals and returns, and what is read aloud.</summary>
public static class BookTasks
{
    private const string Trip = "/week/books/trip";

    /// <summary>
    /// What is due in the week, and on the list of the week that runs also what was due before and is still open. Errands of
    /// one sort on one card are one task, with the day of the first that is open.
    /// </summary>
    public static async Task<IReadOnlyList<ReadyTask>> OfAsync(AppDb db, ReadyWeek week, DateOnly today, CancellationToken ct)
    {
        var days = week.Week.Days;
        var errands = (await BookErrand.LoadAsync(db, week, today, ct))
            .Where(e => days.Contains(e.By) || !e.Done && e.By < days.First && days.Contains(today))
            .GroupBy(e => (e.Kind, Card: e.Card?.Id, Lender: e.Kind == ErrandKind.Borrow ? e.Title!.Lender : "", Together: e.Kind != ErrandKind.Renew || e.Title is null ? Guid.Empty : e.Title.Id))
            .Select(g => Task([.. g]));
        var aloud = (await ReadAloud.AllAsync(db, today, ct)).Select(r => Aloud(r, week, today)).OfType<ReadyTask>();
        return [.. errands.Concat(aloud).OrderBy(t => t.By).ThenBy(t => t.Kind)];
    }

    private static ReadyTask Task(IReadOnlyList<BookErrand> errands)
    {
        var open = errands.Where(e => !e.Done).ToList();
        var told = open.Count > 0 ? open : errands;
        var names = told.Count == 1 ? "" : string.Join(", ", told.Select(e => e.Name));
        return new ReadyTask(ReadyKind.Borrow, told.Min(e => e.By), Words(told), names.Length > 0 ? names : For(told[0]), told[0].Kind == ErrandKind.WriteDown ? "/week/books#asked" : Trip, open.Count == 0);
    }

    private static string For(BookErrand errand) => errand.Need is null ? "" : string.Join(", ", errand.Need.For);

    private static string Words(IReadOnlyList<BookErrand> errands)
    {
        var first = errands[0];
        var books = errands.Count == 1 ? $"“{first.Name}”" : $"{errands.Count} books";
        return first.Kind switch
        {
            ErrandKind.WriteDown => $"Say where {books} {(errands.Count == 1 ? "comes" : "come")} from",
            ErrandKind.PlaceHold => errands.Count == 1 ? $"Place a hold on {books}" : $"Place holds on {books}",
            ErrandKind.Fetch => $"Fetch {books} from {first.Card?.Name ?? "the library"}",
            ErrandKind.Borrow => $"Borrow {books}" + (first.Title!.Lender.Length > 0 ? $" from {first.Title.Lender}" : ""),
            ErrandKind.Buy => $"Buy {books}",
            ErrandKind.Renew => $"Renew {books}",
            _ => errands.All(e => e.Card is null) ? $"Give {books} back" : $"Take {books} back to {first.Card!.Name}",
        };
    }

    /// <summary>What was read in the week and what is planned for the rest of it; null where that is nothing.</summary>
    private static ReadyTask? Aloud(ReadAloud reading, ReadyWeek week, DateOnly today)
    {
        var days = week.Week.Days;
        var read = reading.ReadOn(days);
        var ahead = reading.Now.Evenings.Where(e => days.Contains(e.Date) && e.Date >= today && e.Chapters.Count > 0).ToList();
        var numbers = read.Concat(ahead.SelectMany(e => e.Chapters).Select(c => c.Number)).ToList();
        if (numbers.Count == 0)
            return null;
        var by = ahead.Count > 0 ? ahead[^1].Date : reading.Sittings.Where(s => days.Contains(s.Date)).Max(s => s.Date);
        return new ReadyTask(ReadyKind.ReadAloud, by, $"Read aloud: {LengthWords.Chapters(numbers)}", reading.Book.Title, $"/week/reading/{reading.Book.Id}", ahead.Count == 0);
    }
}
