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

        var (things, cents) = (0, 0L);
        var (iso, done) = (Shown.Iso, Input.Rows.Select(r => r.GoodId).ToList());
        var ids = Input.Rows.Select(r => r.Id).ToList();
        var before = (await Db.Purchases.Where(p => ids.Contains(p.Id)).Select(p => p.Id).ToListAsync(Ct)).ToHashSet();
        var ticks = await Db.ShopTicks.Where(t => t.Week == iso && done.Contains(t.GoodId)).ToListAsync(Ct);
        // The form was made from ticks. One that is gone was bought, or put back, on another form meanwhile.
        foreach (var (i, row) in Input.Rows.Index().Where(r => !r.Item.Leave && !before.Contains(r.Item.Id) && ticks.All(t => t.GoodId != r.Item.GoodId)))
            ModelState.AddModelError($"Input.Rows[{i}].Quantity", $"{NameOfRow(row)} lies in the basket no longer: somebody put it on the shelf or took it out meanwhile. Look at the shelf, and choose “not bought” here, or tick it on the list once more.");
        if (!ModelState.IsValid)
            return Again(StatusCodes.Status409Conflict);
        foreach (var (row, amount, paid) in read.Where(r => !r.Row.Leave))
        {
            (things, cents) = (things + 1, cents + paid);
            if (before.Contains(row.Id))
                continue;
            await MeetAsync(row.GoodId);
            var line = LineOf(row.GoodId, amount!.Value);
            Db.Purchases.Add(new Purchase(row.Id, row.GoodId, amount.Value, paid, day, Now, iso, NeedsOf(line), line?.Line.Parts.Where(p => p.Ask.ActivityId is null).Sum(p => p.Quantity) ?? 0));
        }

        Db.ShopTicks.RemoveRange(ticks);
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
            Quantity = SupplyWords.Field(packs is { } n ? n * line.Pack!.Size : Buying.Typeable(line.Buy.Quantity)),
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

    /// <summary>The line for which an amount of a good was bought: one of its own dimension, else one whose measure it turns into, else any.</summary>
    private ShopLine? LineOf(Guid goodId, Amount amount) => List.Lines.Where(l => l.GoodId == goodId)
        .OrderBy(l => l.Line.Measure.Dimension == amount.Measure.Dimension ? 0 : amount.In(l.Line.Measure, l.Line.GramsPerCup) is not null ? 1 : 2).ThenBy(l => l.State).FirstOrDefault();

    /// <summary>The activities of the week that need the good, each with its need in one measure.</summary>
    private List<PurchaseNeed> NeedsOf(ShopLine? line)
    {
        if (line is null)
            return [];
        var units = List.Week.Activities.ToDictionary(a => a.Activity.Id, a => a.Unit);
        return [.. line.Activities.GroupBy(p => p.Ask.ActivityId!.Value)
            .Select(g => new PurchaseNeed(g.Key, g.First().Ask.For, units[g.Key].Id, units[g.Key].Title, g.Sum(p => p.Quantity)))];
    }
}
