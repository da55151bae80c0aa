using CoopLessons.Core.Calendar;
using CoopLessons.Core.Prepare.Books;
using CoopLessons.Core.Units;
using CoopLessons.Data.Families;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Prepare;

/// <summary>A book that some days need: activities ask for it, or it is read aloud.</summary>
/// <param name="Title">The family's book; null where it has not written one down that answers.</param>
/// <param name="Asked">As the first activity asks for it.</param>
/// <param name="First">The first day that needs it.</param>
/// <param name="Last">The last one.</param>
/// <param name="For">Titles of the activities, or the reading aloud.</param>
/// <param name="Learners">Who takes part, in the family's order.</param>
public sealed record BookNeed(BookTitle? Title, Book Asked, DateOnly First, DateOnly Last, IReadOnlyList<string> For, IReadOnlyList<Learner> Learners)
{
    private const string Aloud = "reading aloud";

    /// <summary>The day by which it is to be in the house: the one before it is needed.</summary>
    public DateOnly ThereBy => First.AddDays(-1);

    /// <summary>The last day on which a hold is placed in time.</summary>
    public DateOnly HoldBy(LibraryCard? card) => First.AddDays(-(card?.HoldDays ?? LibraryCard.UsualHoldDays));

    /// <summary>The needs of a week and of so many weeks after it, the earliest first. What was read to the end is needed no more.</summary>
    public static async Task<IReadOnlyList<BookNeed>> LoadAsync(AppDb db, ReadyWeek week, int weeksAhead, DateOnly today, CancellationToken ct)
    {
        var asks = AsksOf(week).ToList();
        var next = week.Week;
        for (var i = 0; i < weeksAhead; i++)
            asks.AddRange(AsksOf(await ReadyWeek.LoadAsync(db, next = next.Next, ct)));
        var titles = await db.Books.AsNoTracking().OrderBy(b => b.Title).ThenBy(b => b.Id).ToListAsync(ct);
        var range = new DayRange(week.Week.Days.First, next.Days.Last);
        var aloud = (await ReadAloud.AllAsync(db, today, ct)).Where(r => !r.Now.IsRead && r.Plan.Days.Overlaps(range)).ToList();
        return Of(asks, titles, aloud);
    }

    /// <summary>How many weeks ahead a hold may have to be placed this week.</summary>
    public static async Task<int> WeeksAheadAsync(AppDb db, CancellationToken ct)
    {
        var days = await db.LibraryCards.Select(c => c.HoldDays).ToListAsync(ct);
        return (days.Append(LibraryCard.UsualHoldDays).Max() + 6) / 7;
    }

    private sealed record Ask(Book Book, string Activity, DateOnly Day, DateOnly Last, IReadOnlyList<Learner> Learners);

    private static IEnumerable<Ask> AsksOf(ReadyWeek week) =>
        week.Activities.SelectMany(a => a.Activity.Details.Books.Select(b => new Ask(b, a.Activity.Title, a.DayIn(week.Week), a.LastDayIn(week.Week), a.Learners)));

    private static IReadOnlyList<BookNeed> Of(IReadOnlyList<Ask> asks, IReadOnlyList<BookTitle> titles, IReadOnlyList<ReadAloud> aloud)
    {
        var groups = new List<(BookTitle? Title, List<Ask> Asks)>();
        foreach (var ask in asks)
        {
            var title = titles.FirstOrDefault(t => t.Answers(ask.Book));
            var known = groups.FindIndex(g => title is not null ? g.Title?.Id == title.Id : g.Title is null && Same(g.Asks[0].Book, ask.Book));
            if (known >= 0)
                groups[known].Asks.Add(ask);
            else
                groups.Add((title, [ask]));
        }

        var needs = groups.Select(g => new BookNeed(
            g.Title, g.Asks[0].Book, g.Asks.Min(a => a.Day), g.Asks.Max(a => a.Last), [.. g.Asks.OrderBy(a => a.Day).Select(a => a.Activity).Distinct()],
            [.. g.Asks.SelectMany(a => a.Learners).DistinctBy(l => l.Id).OrderBy(l => l.Order).ThenBy(l => l.Id)])).ToList();
        foreach (var reading in aloud)
        {
            var (first, last) = (reading.Plan.First, reading.Plan.Last);
            var known = needs.FindIndex(n => n.Title?.Id == reading.Book.Id);
            if (known >= 0)
                needs[known] = needs[known] with { First = Min(needs[known].First, first), Last = Max(needs[known].Last, last), For = [.. needs[known].For, Aloud] };
            else
                needs.Add(new BookNeed(reading.Book, new Book(reading.Book.Title, BookUse.Heard, reading.Book.Author), first, last, [Aloud], []));
        }

        return [.. needs.OrderBy(n => n.First).ThenBy(n => n.Asked.Title, StringComparer.Ordinal)];
    }

    private static bool Same(Book one, Book other) => PlainTitle.Same(
        (one.Title, one.Author ?? "", BookTitle.NumberOf(one)), (other.Title, other.Author ?? "", BookTitle.NumberOf(other)));

    private static DateOnly Min(DateOnly one, DateOnly other) => one < other ? one : other;

    private static DateOnly Max(DateOnly one, DateOnly other) => one > other ? one : other;
}
