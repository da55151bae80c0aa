using CoopLessons.Data;
using CoopLessons.Data.Prepare;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Books;

/// <summary>The family's library cards, and how much hangs on each.</summary>
public sealed class CardsModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    public IReadOnlyList<CardLoad> Cards { get; private set; } = [];

    public async Task OnGetAsync() => Cards = await CardLoad.AllAsync(Db, Ct);
}

/// <summary>A card with the books that are out on it and the holds that wait.</summary>
public sealed record CardLoad(LibraryCard Card, int Out, int OnHold)
{
    public static async Task<IReadOnlyList<CardLoad>> AllAsync(AppDb db, CancellationToken ct)
    {
        var books = await db.Books.AsNoTracking().Where(b => b.CardId != null).ToListAsync(ct);
        var cards = await db.LibraryCards.AsNoTracking().OrderBy(c => c.Name).ThenBy(c => c.Id).ToListAsync(ct);
        return [.. cards.Select(c => new CardLoad(c, books.Count(b => b.CardId == c.Id && b.IsOut), books.Count(b => b.CardId == c.Id && b.IsOnHold)))];
    }

    /// <summary>“4 of 30 books out, 2 of 10 holds”.</summary>
    public string Words => $"{Of(Out, Card.MostBooks)} {(Out == 1 && Card.MostBooks is null ? "book" : "books")} out, {Of(OnHold, Card.MostHolds)} {(OnHold == 1 && Card.MostHolds is null ? "hold" : "holds")}";

    private static string Of(int count, int? most) => most is { } m ? $"{count} of {m}" : $"{count}";
}
