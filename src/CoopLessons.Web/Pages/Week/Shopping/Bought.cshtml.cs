using CoopLessons.Core.Prepare.Supplies;
using CoopLessons.Data;
using CoopLessons.Data.Prepare.Supplies;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Shopping;

/// <summary>A ticked line as it was bought.</summary>
public sealed class BoughtRow
{
    public Guid GoodId { get; set; }

    /// <summary>Of the purchase, made with the form, so that a form sent twice buys once.</summary>
    public Guid Id { get; set; }
    public string? Quantity { get; set; }
    public string? Measure { get; set; }

    /// <summary>In dollars, for all of it; empty where nothing was paid.</summary>
    public string? Price { get; set; }

    /// <summary>It was not bought after all.</summary>
    public bool Leave { get; set; }
}

public sealed class BoughtInput
{
    public string? Day { get; set; }
    public List<BoughtRow> Rows { get; set; } = [];
}

/// <summary>What lies in the basket goes to the shelf, with amounts and prices as they were.</summary>
public sealed class BoughtModel(AppDb db, TimeProvider clock) : ShoppingPage(db, clock)
{
    private const int MostRows = 400;

    [BindProperty]
    public BoughtInput Input { get; set; } = new();

    public string NameOfRow(BoughtRow row) => NameOf(row.GoodId) ?? "";

    public async Task<IActionResult> OnGetAsync(string week)
    {
        if (!await LoadAsync(week))
            return NotFound();
        Input = new BoughtInput { Day = Today.Iso(), Rows = [.. List.In(ShopState.ToBuy).Where(l => l.Ticked).Select(RowOf)] };
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(string week)
    {
        if (!await LoadAsync(week) || Input.Rows.Any(r => NameOf(r.GoodId) is null))
            return NotFound();
        if (Input.Rows.Count > MostRows || Input.Rows.Any(r => r.Id == Guid.Empty) || Input.Rows.DistinctBy(r => r.Id).Count() != Input.Rows.Count)
            return BadRequest();
        if (!DayWords.TryRead(Input.Day, out var day) || day > Today)
            ModelState.AddModelError("Input.Day", "Give the day on which it was bought, today or before.");
        var read = Input.Rows.Select((r, i) => (Row: r, Amount: Read(r, i), Cents: r.Leave ? 0 : Typed.Cents(ModelState, $"Input.Rows[{i}].Price", r.Price) ?? 0)).ToList();
        if (!ModelState.IsValid)
            return Again();

        var (things, cents) = (0, 0);
        var ids = Input.Rows.Select(r => r.Id).ToList();
        var before = (await Db.Purchases.Where(p => ids.Contains(p.Id)).Select(p => p.Id).ToListAsync(Ct)).ToHashSet();
        foreach (var (row, amount, paid) in read.Where(r => !r.Row.Leave))
        {
            (things, cents) = (things + 1, cents + paid);
            if (before.Contains(row.Id))
                continue;
            await MeetAsync(row.GoodId);
            Db.Purchases.Add(new Purchase(row.Id, row.GoodId, amount!.Value, paid, day, Now, Shown.Iso, NeedsOf(row.GoodId)));
        }

        var (iso, done) = (Shown.Iso, Input.Rows.Select(r => r.GoodId).ToList());
        Db.ShopTicks.RemoveRange(await Db.ShopTicks.Where(t => t.Week == iso && done.Contains(t.GoodId)).ToListAsync(Ct));
        if (!await SaveNewAsync() && await Db.Purchases.CountAsync(p => ids.Contains(p.Id), Ct) < things)
            return AgainAfterOthers();
        Say(things == 0 ? "Nothing was bought; the ticks are taken out." : $"{(things == 1 ? "1 thing is" : $"{things} things are")} on the shelf, {SupplyWords.Dollars(cents)}.");
        return LocalRedirect(Address);
    }

    private static BoughtRow RowOf(ShopLine line)
    {
        var packs = line.Buy.Packs;
        return new BoughtRow
        {
            GoodId = line.GoodId,
            Id = Guid.CreateVersion7(),
            Quantity = SupplyWords.Field(packs is { } n ? n * line.Pack!.Size : line.Buy.Quantity),
            Measure = (packs is null ? line.Line.Measure : line.Pack!.Measure).Word,
            Price = line.Buy.Cents is { } cents ? SupplyWords.PriceField(cents) : null,
        };
    }

    private Amount? Read(BoughtRow row, int i)
    {
        if (row.Leave)
            return null;
        var quantity = Typed.Quantity(ModelState, $"Input.Rows[{i}].Quantity", row.Quantity);
        var measure = Typed.Measure(ModelState, $"Input.Rows[{i}].Measure", row.Measure);
        return quantity is { } q && measure is not null ? new Amount(q, measure) : null;
    }

    /// <summary>The activities of the week that need the good, each with its need in one measure where that can be told.</summary>
    private List<PurchaseNeed> NeedsOf(Guid goodId)
    {
        var line = List.Lines.Where(l => l.GoodId == goodId).OrderBy(l => l.State).FirstOrDefault();
        if (line is null)
            return [];
        var units = List.Week.Activities.ToDictionary(a => a.Activity.Id, a => a.Unit);
        return [.. line.Activities.GroupBy(p => p.Ask.ActivityId!.Value)
            .Select(g => new PurchaseNeed(g.Key, g.First().Ask.For, units[g.Key].Id, units[g.Key].Title, g.Sum(p => p.Quantity)))];
    }
}
