using CoopLessons.Core.Calendar;
using CoopLessons.Core.Prepare.Books;
using CoopLessons.Data.Families;
using CoopLessons.Data.Sealing;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Prepare;

/// <summary>Reads a child's reading list of a year from the database.</summary>
public static class ListOfReading
{
    public static async Task<ReadingList> LoadAsync(AppDb db, Learner learner, SchoolYear year, DateOnly today, CancellationToken ct)
    {
        var kept = await db.SealedYearOfAsync(year.Days, ct);
        var family = kept?.FamilyName ?? await db.Families.Select(f => f.Name).SingleAsync(ct);
        var name = kept is null ? null : await db.SealedRecords.Where(r => r.SchoolYearId == kept.SchoolYearId && r.LearnerId == learner.Id).Select(r => r.LearnerName).SingleOrDefaultAsync(ct);
        return new ReadingList(family, name ?? learner.Name, year.Name, year.Days, today, await LinesAsync(db, learner.Id, year.Days, ct));
    }

    /// <summary>The books that a learner met on these days, by the day on which each was begun.</summary>
    public static async Task<IReadOnlyList<ReadingListLine>> LinesAsync(AppDb db, Guid learnerId, DayRange days, CancellationToken ct)
    {
        var (first, last) = (days.First, days.Last);
        var met = await (from m in db.BookMeetings.AsNoTracking()
                         join b in db.Books.AsNoTracking() on m.BookId equals b.Id
                         where m.BegunOn <= last && (m.EndedOn == null || m.EndedOn >= first)
                         orderby m.BegunOn, b.Title, m.Id
                         select new { Meeting = m, Book = b }).ToListAsync(ct);
        return
        [
            .. met.Where(m => m.Meeting.Learners.Contains(learnerId) && ReadingList.Holds(days, m.Meeting.BegunOn, m.Meeting.EndedOn)).Select(m => new ReadingListLine(
                m.Book.Title, m.Book.Author, m.Book.Isbn, m.Meeting.How, m.Meeting.BegunOn, m.Meeting.EndedOn, m.Meeting.Unfinished, m.Book.Level, m.Meeting.Note)),
        ];
    }
}
