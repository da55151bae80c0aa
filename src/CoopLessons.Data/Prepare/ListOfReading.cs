using CoopLessons.Core.Prepare.Books;
using CoopLessons.Data.Families;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Prepare;

/// <summary>Reads a child's reading list of a year from the database.</summary>
public static class ListOfReading
{
    public static async Task<ReadingList> LoadAsync(AppDb db, Learner learner, SchoolYear year, DateOnly today, CancellationToken ct)
    {
        var family = await db.Families.Select(f => f.Name).SingleAsync(ct);
        var (first, last) = (year.First, year.Last);
        var met = await (from m in db.BookMeetings.AsNoTracking()
                         join b in db.Books.AsNoTracking() on m.BookId equals b.Id
                         where m.BegunOn <= last && (m.EndedOn == null || m.EndedOn >= first)
                         orderby m.BegunOn, b.Title, m.Id
                         select new { Meeting = m, Book = b }).ToListAsync(ct);
        return new ReadingList(family, learner.Name, year.Name, year.Days, today,
        [
            .. met.Where(m => m.Meeting.Learners.Contains(learner.Id) && ReadingList.Holds(year.Days, m.Meeting.BegunOn, m.Meeting.EndedOn)).Select(m => new ReadingListLine(
                m.Book.Title, m.Book.Author, m.Book.Isbn, m.Meeting.How, m.Meeting.BegunOn, m.Meeting.EndedOn, m.Meeting.Unfinished, m.Book.Level, m.Meeting.Note)),
        ]);
    }
}
