using CoopLessons.Core.Calendar;
using CoopLessons.Core.Prepare.Books;
using CoopLessons.Data.Schedule;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Prepare;

/// <summary>A book that is read aloud as it stands on a day: what was read, what is left, and over which evenings.</summary>
/// <param name="Sittings">Newest first.</param>
/// <param name="AtFirst">The even plan as it was before anything was read: all chapters over all evenings.</param>
/// <param name="Now">What is left over the evenings that are left.</param>
public sealed record ReadAloud(
    BookTitle Book, ReadAloudPlan Plan, IReadOnlyList<ReadingSitting> Sittings, ReadingPace Pace, ReadingOutlook AtFirst, ReadingOutlook Now, IReadOnlyList<DateOnly> Missed)
{
    private const int MostLater = ChapterText.MostChapters;

    public int MinutesFor(int tenths) => Pace.MinutesFor(tenths, Book.Measure);

    /// <summary>What was read on a day, by number.</summary>
    public IReadOnlyList<int> ReadOn(DayRange days) => [.. Sittings.Where(s => days.Contains(s.Date)).SelectMany(s => Enumerable.Range(s.FromChapter, s.ToChapter - s.FromChapter + 1)).Distinct().Order()];

    /// <summary>Null where the book is not read aloud or has no chapters.</summary>
    public static async Task<ReadAloud?> LoadAsync(AppDb db, Guid bookId, DateOnly today, CancellationToken ct)
    {
        var all = await LoadAsync(db, db.Books.Where(b => b.Id == bookId), today, ct);
        return all.Count == 0 ? null : all[0];
    }

    /// <summary>All books that are read aloud and have chapters, by the day on which each is to end.</summary>
    public static Task<IReadOnlyList<ReadAloud>> AllAsync(AppDb db, DateOnly today, CancellationToken ct) => LoadAsync(db, db.Books, today, ct);

    private static async Task<IReadOnlyList<ReadAloud>> LoadAsync(AppDb db, IQueryable<BookTitle> which, DateOnly today, CancellationToken ct)
    {
        var read = await (from b in which.AsNoTracking() join p in db.ReadAloudPlans.AsNoTracking() on b.Id equals p.BookId orderby p.Last, b.Title, b.Id select new { b, p }).ToListAsync(ct);
        if (read.Count == 0)
            return [];
        var teaching = await TeachingDays.LoadAsync(db, ct);
        var sittings = await db.ReadingSittings.AsNoTracking().OrderByDescending(s => s.Date).ThenByDescending(s => s.FromChapter).ThenBy(s => s.Id).ToListAsync(ct);
        var paper = await db.Books.AsNoTracking().Where(b => b.Measure == BookMeasure.Pages).ToDictionaryAsync(b => b.Id, b => b.Chapters, ct);
        var timed = sittings.Where(s => s.Minutes is not null && paper.ContainsKey(s.BookId)).Select(s => (s.BookId, Sitting: Timed(s, paper[s.BookId]))).Where(s => s.Sitting.Tenths > 0).ToList();
        return
        [
            .. read.Where(r => r.b.Chapters.Count > 0).Select(r => Of(r.b, r.p, [.. sittings.Where(s => s.BookId == r.b.Id)], teaching, today,
                ReadingPace.Of([.. timed.Where(t => t.BookId == r.b.Id).Select(t => t.Sitting)], [.. timed.Select(t => t.Sitting)]))),
        ];
    }

    internal static ReadAloud Of(BookTitle book, ReadAloudPlan plan, IReadOnlyList<ReadingSitting> sittings, TeachingDays teaching, DateOnly today, ReadingPace pace)
    {
        var chapters = book.Chapters.Select((c, i) => new NumberedChapter(i + 1, c.Name, c.Tenths)).ToList();
        var evenings = plan.EveningsIn(plan.Days, teaching).ToList();
        var later = plan.Later(teaching, MostLater).Where(d => d >= today).ToList();
        // An evening on which something was read is over.
        bool IsLeft(DateOnly day) => day > today || day == today && !sittings.Any(s => s.Date == today);
        return new ReadAloud(
            book, plan, sittings, pace,
            ReadingOutlook.Of(chapters, evenings, later),
            ReadingOutlook.Of([.. chapters.Where(c => !sittings.Any(s => s.Holds(c.Number)))], [.. evenings.Where(IsLeft)], [.. later.Where(IsLeft)]),
            [.. evenings.Where(d => d < today && !sittings.Any(s => s.Date == d))]);
    }

    private static TimedSitting Timed(ReadingSitting sitting, List<BookChapter> chapters) =>
        new(chapters.Skip(sitting.FromChapter - 1).Take(sitting.ToChapter - sitting.FromChapter + 1).Sum(c => c.Tenths), sitting.Minutes!.Value);
}
