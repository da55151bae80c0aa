using CoopLessons.Core.Calendar;
using CoopLessons.Core.Prepare.Books;
using CoopLessons.Core.Units;
using CoopLessons.Data;
using CoopLessons.Data.Prepare;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Tenancy;

/// <summary>One of everything that a family keeps of books.</summary>
internal sealed class BookedWith
{
    public Guid Book { get; } = Guid.CreateVersion7();
    public Guid Card { get; } = Guid.CreateVersion7();
    public Guid Meeting { get; } = Guid.CreateVersion7();
    public Guid Sitting { get; } = Guid.CreateVersion7();

    public void AddTo(AppDb db, Guid learnerId)
    {
        db.Add(new LibraryCard(Card, new CardFacts("Town library", 21, 2, null, null, 21)));
        var book = new BookTitle(Book, new BookFacts("The Weir", "Olive", "9780110002224", BookMeasure.Pages, null, "", BookSource.Library, "", Card, ""));
        book.HasChapters([new("", 100), new("", 120)]);
        db.Add(book);
        db.Add(new BookMeeting(Meeting, Book, new MeetingFacts([learnerId], BookUse.Heard, TestServer.Today, null, false, "")));
        db.Add(new ReadAloudPlan(Book, new DayRange(TestServer.Today, TestServer.Today.AddDays(3)), ReadingDays.EveryEvening, Weekdays.None));
        db.Add(new ReadingSitting(Sitting, Book, TestServer.Today, 1, 1, 20));
    }
}
