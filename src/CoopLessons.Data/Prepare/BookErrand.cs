using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Prepare;

/// <summary>What is to be done about a book so that it is there when it is needed and goes back in time.</summary>
public enum ErrandKind { WriteDown, PlaceHold, Fetch, Borrow, Buy, Renew, Return }

/// <summary>One errand for one book.</summary>
/// <param name="By">The last day on which it is in time; it may lie before today.</param>
/// <param name="Title">The family's book; null where it is yet to be written down.</param>
/// <param name="Need">What needs it; null where nothing in sight does.</param>
/// <param name="Card">The card it hangs on; null without one.</param>
public sealed record BookErrand(ErrandKind Kind, DateOnly By, BookTitle? Title, BookNeed? Need, LibraryCard? Card, bool Done)
{
    public string Name => Title?.Title ?? Need!.Asked.Title;

    /// <summary>A book that is needed longer than it may stay and cannot be renewed any more.</summary>
    public bool GoesBackTooSoon => Kind == ErrandKind.Return && !Done && Need is { } need && need.Last > By;

    /// <summary>The errands for the needs from a week on, and for every book that is out or on hold; by day.</summary>
    public static async Task<IReadOnlyList<BookErrand>> LoadAsync(AppDb db, ReadyWeek week, DateOnly today, CancellationToken ct)
    {
        var needs = await BookNeed.LoadAsync(db, week, await BookNeed.WeeksAheadAsync(db, ct), today, ct);
        var titles = await db.Books.AsNoTracking().OrderBy(b => b.Title).ThenBy(b => b.Id).ToListAsync(ct);
        var cards = await db.LibraryCards.AsNoTracking().ToDictionaryAsync(c => c.Id, ct);
        return Of(titles, needs, cards, today);
    }

    internal static IReadOnlyList<BookErrand> Of(IReadOnlyList<BookTitle> titles, IReadOnlyList<BookNeed> needs, IReadOnlyDictionary<Guid, LibraryCard> cards, DateOnly today)
    {
        var errands = needs.Where(n => n.Title is null && n.Last >= today)
            .Select(n => new BookErrand(ErrandKind.WriteDown, n.HoldBy(null) is var hold && hold >= today ? hold : n.ThereBy, null, n, null, false)).ToList();
        foreach (var title in titles)
        {
            var need = needs.FirstOrDefault(n => n.Title?.Id == title.Id);
            // What nobody can need any more is not fetched any more.
            if (need?.Last < today && !title.IsOut)
                need = null;
            var card = title.CardId is { } id ? cards.GetValueOrDefault(id) : null;
            errands.AddRange(title.Source switch
            {
                BookSource.Library => OfLibrary(title, need, card),
                BookSource.Borrowed => Borrowed(title, need),
                BookSource.ToBuy when need is not null => [new BookErrand(ErrandKind.Buy, need.ThereBy, title, need, null, false)],
                _ => [],
            });
        }

        return [.. errands.OrderBy(e => e.By).ThenBy(e => e.Kind).ThenBy(e => e.Name, StringComparer.Ordinal)];
    }

    private static IEnumerable<BookErrand> OfLibrary(BookTitle title, BookNeed? need, LibraryCard? card)
    {
        BookErrand Is(ErrandKind kind, DateOnly by, bool done = false) => new(kind, by, title, need, card, done);
        var (onHold, isOut) = (title.IsOnHold, title.IsOut);
        if (need is not null)
        {
            if (!isOut || title.HoldPlacedOn is not null)
                yield return Is(ErrandKind.PlaceHold, need.HoldBy(card), onHold || isOut);
            yield return Is(ErrandKind.Fetch, need.ThereBy, isOut);
        }
        else if (onHold)
        {
            yield return Is(ErrandKind.Fetch, title.HoldPlacedOn!.Value.AddDays(card?.HoldDays ?? LibraryCard.UsualHoldDays));
        }

        if (title is not { FetchedOn: not null, DueOn: { } due })
            yield break;
        var stays = isOut && need is not null && need.Last > due && title.Renewed < (card?.Renewals ?? LibraryCard.UsualRenewals);
        yield return Is(stays ? ErrandKind.Renew : ErrandKind.Return, due, !isOut);
    }

    private static IEnumerable<BookErrand> Borrowed(BookTitle title, BookNeed? need)
    {
        if (need is not null)
            yield return new BookErrand(ErrandKind.Borrow, need.ThereBy, title, need, null, title.IsOut);
        if (title is { FetchedOn: not null, DueOn: { } due })
            yield return new BookErrand(ErrandKind.Return, due, title, need, null, !title.IsOut);
    }
}
