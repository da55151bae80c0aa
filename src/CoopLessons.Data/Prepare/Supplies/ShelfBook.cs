using CoopLessons.Core.Prepare.Supplies;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Prepare.Supplies;

/// <summary>What changed the shelf: counts and purchases as written, and what activities that were done have used. Nothing of it is stored twice.</summary>
public sealed class ShelfBook
{
    private readonly ILookup<string, ShelfEvent> _events;
    private readonly GoodBook _goods;

    private ShelfBook(GoodBook goods, IEnumerable<(string Key, ShelfEvent Event)> events) =>
        (_goods, _events) = (goods, events.ToLookup(e => e.Key, e => e.Event, StringComparer.Ordinal));

    /// <summary>Keys of the goods that were counted or bought, by key.</summary>
    public IReadOnlyList<string> Keys => [.. _events.Where(e => e.Any(x => x is not Used)).Select(e => e.Key).Order(StringComparer.Ordinal)];

    public IEnumerable<ShelfEvent> EventsOf(string key) => _events[key].OrderBy(e => e.Day).ThenBy(e => e.At);

    /// <summary>Whether anybody ever counted or bought it.</summary>
    public bool Knows(string key) => _events[key].Any(e => e is not Used);

    public OnShelf Of(string key, Measure measure) => ShelfReckoning.Of(_events[key], measure, _goods.GramsPerCup(key));

    /// <summary>The measure in which a good is counted: the last count's, else the pack's, else the last purchase's.</summary>
    public Measure? MeasureOf(string key) =>
        EventsOf(key).OfType<Counted>().LastOrDefault()?.Amount.Measure ?? _goods.Find(key)?.Pack?.Measure ?? EventsOf(key).OfType<Bought>().LastOrDefault()?.Amount.Measure;

    /// <param name="before">What is planned from today to the day before this one is taken as used: it is promised to those days. Null for the shelf as it is today.</param>
    public static async Task<ShelfBook> LoadAsync(AppDb db, GoodBook goods, DateOnly today, DateOnly? before, CancellationToken ct)
    {
        var counts = await db.ShelfCounts.AsNoTracking().ToListAsync(ct);
        var purchases = await db.Purchases.AsNoTracking().ToListAsync(ct);
        var events = counts.Select(c => (c.GoodId, Event: (ShelfEvent)new Counted(c.Day, c.At, c.Amount)))
            .Concat(purchases.Select(p => (p.GoodId, Event: (ShelfEvent)new Bought(p.Day, p.At, p.Amount))))
            .Where(e => goods.Find(e.GoodId) is not null).Select(e => (Key: goods.KeyOf(goods.Find(e.GoodId)!.Key), e.Event)).ToList();
        if (events.Count == 0)
            return new ShelfBook(goods, []);
        var uses = await UsesAsync(db, goods, events.Min(e => e.Event.Day), today, before, ct);
        return new ShelfBook(goods, events.Concat(uses).Concat(await HandsAsync(db, goods, today, before, ct)));
    }

    /// <summary>
    /// One use an activity, in however many sessions and weeks it was done: a loaf shared by two sittings is one loaf. What is
    /// counted by learner is used once more by those who come later.
    /// </summary>
    private static async Task<IEnumerable<(string Key, ShelfEvent Event)>> UsesAsync(AppDb db, GoodBook goods, DateOnly since, DateOnly today, DateOnly? before, CancellationToken ct)
    {
        var sessions = await db.PlannedSessions.AsNoTracking()
            .Where(s => s.ActivityId != null && (s.State == SessionState.Done && s.Date >= since || s.State == SessionState.Planned && s.Date >= today && s.Date < before)).ToListAsync(ct);
        var ids = sessions.Select(s => s.ActivityId!.Value).ToHashSet();
        sessions.AddRange(await db.PlannedSessions.AsNoTracking()
            .Where(s => s.State == SessionState.Done && s.Date < since && s.ActivityId != null && ids.Contains(s.ActivityId.Value)).ToListAsync(ct));
        var activities = await db.Activities.AsNoTracking().Where(a => ids.Contains(a.Id)).ToDictionaryAsync(a => a.Id, ct);
        return sessions.GroupBy(s => s.ActivityId!.Value).SelectMany(g => UsesOf(goods, activities[g.Key], g));
    }

    /// <summary>What was done day by day, then all that is planned at once, as the list of a week asks for it.</summary>
    private static IEnumerable<(string Key, ShelfEvent Event)> UsesOf(GoodBook goods, Activity activity, IEnumerable<PlannedSession> sessions)
    {
        var served = new HashSet<Guid>();
        var later = false;
        foreach (var sitting in sessions.GroupBy(s => s.State == SessionState.Done ? s.Date : DateOnly.MaxValue).OrderBy(s => s.Key))
        {
            var learners = sitting.SelectMany(s => s.Learners).Where(served.Add).Count();
            foreach (var (key, ask) in goods.AsksOf(activity, sitting.Min(s => s.Date), learners, later).Where(a => a.Ask.Amount.Quantity > 0 && goods.IsUsedUp(a.Key, a.Ask)))
                yield return (key, new Used(ask.Day!.Value, ask.Amount, ask.For) { IsPromised = sitting.Key == DateOnly.MaxValue });
            later = true;
        }
    }

    /// <summary>What was listed by hand is used by the Sunday of its week, and promised until then.</summary>
    private static async Task<IEnumerable<(string Key, ShelfEvent Event)>> HandsAsync(AppDb db, GoodBook goods, DateOnly today, DateOnly? before, CancellationToken ct)
    {
        var listed = await db.ListedByHand.AsNoTracking().ToListAsync(ct);
        return listed.Where(h => h.UsedOn < today || h.UsedOn < before).Select(h => (Hand: h, Good: goods.Find(h.GoodId))).Where(x => x.Good is not null)
            .Select(x => (Key: goods.KeyOf(x.Good!.Key), Ask: x.Hand.AskOf(x.Good!), x.Hand.UsedOn)).Where(x => goods.IsUsedUp(x.Key, x.Ask))
            .Select(x => (x.Key, (ShelfEvent)new Used(x.UsedOn, x.Ask.Amount, x.Ask.For) { IsPromised = x.UsedOn >= today }));
    }
}
