using CoopLessons.Core.Calendar;
using CoopLessons.Core.Prepare.Books;
using CoopLessons.Core.Units;
using CoopLessons.Data.Prepare;

namespace CoopLessons.Data.Scenario;

/// <summary>Writes the books of a family of the scenario. Ids come from no stream, so that the log's stay what they are.</summary>
/// <param name="today">What is told after it did not happen yet.</param>
internal sealed class BooksOfFamily(AppDb db, Household house, CoopBookcase told, DateOnly today)
{
    private readonly Dictionary<string, Guid> _learners = house.Children.ToDictionary(c => c.Child.Name, c => c.Id);

    /// <summary>Adds everything to the unit of work. Nothing is saved here.</summary>
    public void Add()
    {
        var cards = told.Cards.Select(c => new LibraryCard(Guid.CreateVersion7(), new CardFacts(c.Name, c.LoanDays, c.Renewals, c.MostBooks, c.MostHolds, c.HoldDays))).ToList();
        db.LibraryCards.AddRange(cards);
        foreach (var title in told.Books)
            Add(title, cards.Count > 0 ? cards[0].Id : null);
    }

    private void Add(CoopTitle title, Guid? card)
    {
        var book = new BookTitle(Guid.CreateVersion7(), new BookFacts(title.Title, title.Author, "", title.Measure, title.Length, title.Level, title.Source, title.Lender, card, title.Note));
        if (title.Loan is { } loan)
            book.SetLoan(new BookLoan(Ago(loan.HoldDaysAgo), Ago(loan.FetchedDaysAgo), Ago(-loan.DueInDays), loan.Renewed, null));
        foreach (var meeting in (title.Meetings ?? []).Where(m => m.BegunOn <= today))
        {
            var over = meeting.EndedOn <= today;
            db.BookMeetings.Add(new BookMeeting(Guid.CreateVersion7(), book.Id, new MeetingFacts(
                Learners(meeting.Learners), meeting.How, meeting.BegunOn, over ? meeting.EndedOn : null, over && meeting.Unfinished, over ? meeting.Note : "")));
        }

        if (title.Aloud is { } aloud)
            AddAloud(book, aloud);
        db.Books.Add(book);
    }

    private void AddAloud(BookTitle book, CoopAloud aloud)
    {
        if (!ChapterText.TryRead(aloud.Chapters, out var chapters, out var fault))
            throw new InvalidDataException($"books.json, {book.Title}: {fault}");
        book.HasChapters(chapters);
        var days = new DayRange(today.AddDays(-aloud.FirstDaysAgo), today.AddDays(aloud.LastInDays));
        db.ReadAloudPlans.Add(new ReadAloudPlan(book.Id, days, ReadingDays.EveryEvening, Weekdays.None));
        db.BookMeetings.Add(new BookMeeting(Guid.CreateVersion7(), book.Id, new MeetingFacts(Learners(aloud.Learners), BookUse.Heard, days.First, null, false, "")));
        foreach (var sitting in aloud.Read)
            db.ReadingSittings.Add(new ReadingSitting(Guid.CreateVersion7(), book.Id, today.AddDays(-sitting.DaysAgo), sitting.From, sitting.To, sitting.Minutes));
    }

    private DateOnly? Ago(int? days) => days is { } d ? today.AddDays(-d) : null;

    private List<Guid> Learners(IEnumerable<string> names) => [.. names.Select(n => _learners[n])];
}
