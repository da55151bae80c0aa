namespace CoopLessons.Core.Prepare.Supplies;

/// <summary>Something that changed what is on the shelf.</summary>
/// <param name="Day">On which it was counted, bought or used.</param>
/// <param name="At">The instant at which a count or purchase was written down, UTC; orders those of one day.</param>
public abstract record ShelfEvent(DateOnly Day, DateTime At, Amount Amount);

/// <summary>Somebody looked, and so much was there at the end of the day.</summary>
public sealed record Counted(DateOnly Day, DateTime At, Amount Amount) : ShelfEvent(Day, At, Amount);

public sealed record Bought(DateOnly Day, DateTime At, Amount Amount) : ShelfEvent(Day, At, Amount);

/// <summary>An activity was done, or is planned before the day that is asked about.</summary>
public sealed record Used(DateOnly Day, Amount Amount, string For) : ShelfEvent(Day, DateTime.MaxValue, Amount)
{
    /// <summary>It is planned and not done yet: whoever counted on that day counted what it still needs.</summary>
    public bool IsPromised { get; init; }
}

/// <summary>What is on the shelf by reckoning.</summary>
/// <param name="Quantity">In the measure that was asked for; never below zero.</param>
/// <param name="Count">The count from which it was reckoned; null where nobody counted.</param>
/// <param name="Since">What was bought and used after it, oldest first.</param>
/// <param name="Unread">Events in a measure that does not turn into the one asked for; they are left out of the quantity.</param>
public sealed record OnShelf(decimal Quantity, Counted? Count, IReadOnlyList<ShelfEvent> Since, IReadOnlyList<ShelfEvent> Unread);

public static class ShelfReckoning
{
    /// <summary>
    /// The last count, and what was bought since, less what was used since. What was done on the day of the count is taken as
    /// counted, and what is still planned on it is not; a purchase of that day counts where it was written down after it. Without a count the shelf was empty
    /// before the first purchase.
    /// </summary>
    public static OnShelf Of(IEnumerable<ShelfEvent> events, Measure measure, decimal? gramsPerCup)
    {
        var (readable, unread) = (new List<ShelfEvent>(), new List<ShelfEvent>());
        foreach (var e in events)
            (e.Amount.In(measure, gramsPerCup) is null ? unread : readable).Add(e);
        var count = readable.OfType<Counted>().MaxBy(c => (c.Day, c.At));
        var begins = count?.Day ?? readable.OfType<Bought>().Min(b => (DateOnly?)b.Day);
        var since = readable.Where(e => e switch
        {
            Bought b => count is null || b.Day > count.Day || b.Day == count.Day && b.At > count.At,
            Used u => begins is { } day && (u.Day > day || u.Day == day && (count is null || u.IsPromised)),
            _ => false,
        }).OrderBy(e => e.Day).ThenBy(e => e.At).ToList();
        var quantity = count?.Amount.In(measure, gramsPerCup) ?? 0;
        foreach (var e in since)
        {
            var amount = e.Amount.In(measure, gramsPerCup)!.Value;
            // More was used than anybody wrote down: the shelf is empty and owes nothing to what is bought later.
            quantity = e is Used ? Math.Max(0, quantity - amount) : quantity + amount;
        }

        return new OnShelf(quantity, count, since, unread);
    }
}
