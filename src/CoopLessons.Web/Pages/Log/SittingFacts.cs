using CoopLessons.Core.Hours;
using CoopLessons.Core.Prepare.Books;
using CoopLessons.Core.Units;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Data.Prepare;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Log;

/// <summary>Chapters that were read aloud, as the log's form is filled with them. They count once the form is saved, and not before.</summary>
/// <param name="Minutes">Those that were written, else what the family's pace says.</param>
/// <param name="Last">How the last entry about this book counted; null without one.</param>
internal sealed record SittingFacts(DateOnly Date, string What, int Minutes, IReadOnlyList<Guid> Hearers, EntryFacts? Last)
{
    /// <summary>Null where the family has no such sitting.</summary>
    public static async Task<SittingFacts?> LoadAsync(AppDb db, Guid sittingId, DateOnly today, CancellationToken ct)
    {
        if (await db.ReadingSittings.AsNoTracking().SingleOrDefaultAsync(s => s.Id == sittingId, ct) is not { } sitting)
            return null;
        var book = await db.Books.AsNoTracking().SingleAsync(b => b.Id == sitting.BookId, ct);
        var heard = await db.BookMeetings.AsNoTracking().Where(m => m.BookId == book.Id && m.How == BookUse.Heard).OrderByDescending(m => m.BegunOn).ThenBy(m => m.Id).FirstOrDefaultAsync(ct);
        var aloud = await ReadAloud.LoadAsync(db, book.Id, today, ct);
        var chapters = Enumerable.Range(sitting.FromChapter, sitting.ToChapter - sitting.FromChapter + 1).ToList();
        var tenths = book.Chapters.Where((_, i) => chapters.Contains(i + 1)).Sum(c => c.Tenths);
        var begins = $"Read aloud: {book.Title}";
        var last = await db.Standing().Where(r => r.What.StartsWith(begins)).OrderByDescending(r => r.Date).ThenByDescending(r => r.WrittenAt).FirstOrDefaultAsync(ct);
        var told = $"{begins}, {LengthWords.Chapters(chapters)}";
        return new SittingFacts(
            sitting.Date, told.Length <= LogRevision.LongestWhat ? told : told[..LogRevision.LongestWhat],
            Math.Max(1, sitting.Minutes ?? (aloud?.Pace ?? ReadingPace.Usual).MinutesFor(tenths, book.Measure)), heard?.Learners ?? [], last?.Facts);
    }

    public EntryFacts Facts(EntryWords words, DateOnly day)
    {
        var subject = words.Subjects.FirstOrDefault(s => s.Code == FamilySubject.Reading && !s.Retired) ?? words.Subjects.FirstOrDefault(s => !s.Retired);
        var there = words.Learners.Where(l => Hearers.Count == 0 ? !l.SetAside : Hearers.Contains(l.Id));
        return new EntryFacts(
            day, null, What, Place.Home, "", [.. there.Select(l => new LearnerTime(l.Id, new Minutes(Minutes)))],
            Last?.Split ?? (subject is null ? [] : [new SubjectWeight(subject.Id, 1)]), Last?.Touches ?? []);
    }
}
