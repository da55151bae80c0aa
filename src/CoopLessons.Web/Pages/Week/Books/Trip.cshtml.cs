using CoopLessons.Data;
using CoopLessons.Data.Prepare;

namespace CoopLessons.Web.Pages.Books;

/// <summary>What is done at one library, or elsewhere.</summary>
/// <param name="Load">Null for books without a card.</param>
public sealed record TripPlace(CardLoad? Load, IReadOnlyList<IGrouping<ErrandKind, BookErrand>> Errands);

/// <summary>The list of the library trip: by card what to fetch, take back, renew and place a hold on, each with its day.</summary>
public sealed class TripModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    private static readonly ErrandKind[] InOrder = [ErrandKind.Return, ErrandKind.Renew, ErrandKind.Fetch, ErrandKind.PlaceHold, ErrandKind.Borrow, ErrandKind.Buy, ErrandKind.WriteDown];

    public IReadOnlyList<TripPlace> Places { get; private set; } = [];

    public async Task OnGetAsync()
    {
        var week = await ReadyWeek.LoadAsync(Db, Core.Calendar.Week.Of(Today), Ct);
        var open = (await BookErrand.LoadAsync(Db, week, Today, Ct)).Where(e => !e.Done).ToList();
        var cards = await CardLoad.AllAsync(Db, Ct);
        Places =
        [
            .. cards.Select(c => Place(c, open.Where(e => e.Card?.Id == c.Card.Id))).Where(p => p.Errands.Count > 0),
            .. new[] { Place(null, open.Where(e => e.Card is null)) }.Where(p => p.Errands.Count > 0),
        ];
    }

    private static TripPlace Place(CardLoad? load, IEnumerable<BookErrand> errands) =>
        new(load, [.. errands.GroupBy(e => e.Kind).OrderBy(g => Array.IndexOf(InOrder, g.Key))]);
}
