using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Prepare.Supplies;
using CoopLessons.Data;
using CoopLessons.Data.Prepare.Supplies;
using CoopLessons.Web.Pages.Account;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Shopping;

/// <summary>What a parent writes about a good.</summary>
public sealed class GoodInput
{
    [Required(ErrorMessage = "Say what you call it.")]
    [StringLength(Good.LongestName, ErrorMessage = "At most {1} signs here.")]
    [Visible]
    public string? Name { get; set; }

    [StringLength(Good.LongestPlace, ErrorMessage = "At most {1} signs here.")]
    public string? Place { get; set; }

    public string? PackSize { get; set; }
    public string? PackMeasure { get; set; }
    public string? PackPrice { get; set; }
    public string? GramsPerCup { get; set; }

    /// <summary>"usual", "used" or "kept".</summary>
    public string? After { get; set; }
    public bool AlwaysThere { get; set; }

    [StringLength(Good.LongestName, ErrorMessage = "At most {1} signs here.")]
    public string? SameAs { get; set; }

    public int Version { get; set; }

    /// <summary>Something was written about it when the form was made.</summary>
    public bool WasWritten { get; set; }
}

public sealed class CountInput
{
    public string? Quantity { get; set; }
    public string? Measure { get; set; }
}

/// <summary>One good: how it is sold, where it is got, what a cup of it weighs, and how much is there.</summary>
public sealed class GoodModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    private GoodBook _goods = null!;
    private IReadOnlyList<string> _names = [];

    /// <summary>The row, or what it would be; see <see cref="IsWritten"/>.</summary>
    public Good Good { get; private set; } = null!;
    public bool IsWritten { get; private set; }
    public GoodInput Input { get; private set; } = new();
    public CountInput Count { get; private set; } = new();
    public OnShelf? There { get; private set; }
    public Measure? Measure { get; private set; }

    /// <summary>Newest first.</summary>
    public IReadOnlyList<ShelfEvent> Events { get; private set; } = [];
    public IReadOnlyList<string> Places => _goods.Places;
    public CupWeight? Usual => CupWeights.Of(Good.Key);

    /// <summary>Names that this may be another name of.</summary>
    public IEnumerable<string> Others => _names.Where(n => GoodName.Key(n) != Good.Key);

    public async Task<IActionResult> OnGetAsync(Guid goodId) => await FindAsync(goodId) ? Page() : NotFound();

    public async Task<IActionResult> OnPostAsync(Guid goodId)
    {
        if (!await FindAsync(goodId))
            return NotFound();
        ModelState.Clear();
        Input = new GoodInput();
        await TryUpdateModelAsync(Input, "Input");
        var facts = await ReadAsync();
        if (!ModelState.IsValid)
            return Again();
        var row = await RowAsync();
        if (Input.WasWritten)
            Expect(row, Input.Version);
        row.Describe(facts!);
        // A form from before the first writing has no version to hold against: it writes the row first, or not at all.
        if (!Input.WasWritten && Db.Entry(row).State != EntityState.Added || !await SaveNewAsync())
        {
            Db.ChangeTracker.Clear();
            ModelState.AddModelError("", "Somebody changed this while you were writing. What you typed is still here; open the page again beside it to compare, then save once more.");
            return await FindAsync(goodId, keep: Input) ? Again(StatusCodes.Status409Conflict) : NotFound();
        }

        Say($"“{row.Name}” is saved.");
        return LocalRedirect($"/week/shelf/{goodId}");
    }

    public async Task<IActionResult> OnPostCountAsync(Guid goodId)
    {
        if (!await FindAsync(goodId))
            return NotFound();
        ModelState.Clear();
        await TryUpdateModelAsync(Count, "Count");
        var quantity = Typed.Quantity(ModelState, "Count.Quantity", Count.Quantity, zero: true);
        var measure = Typed.Measure(ModelState, "Count.Measure", Count.Measure);
        if (!ModelState.IsValid)
            return Again();
        var row = await RowAsync();
        Db.ShelfCounts.Add(new ShelfCount(Guid.CreateVersion7(), row.Id, Today, Now, new Amount(quantity!.Value, measure!)));
        if (!await SaveNewAsync())
            return AgainAfterOthers("Count.Quantity");
        Say($"{SupplyWords.Amount(quantity.Value, measure!)} of “{row.Name}” counted.");
        return LocalRedirect($"/week/shelf/{goodId}");
    }

    private async Task<Good> RowAsync()
    {
        if (await Db.Goods.SingleOrDefaultAsync(g => g.Id == Good.Id, Ct) is { } row)
            return row;
        var first = new Good(Family.Id, Good.Name);
        Db.Goods.Add(first);
        return first;
    }

    private async Task<bool> FindAsync(Guid goodId, GoodInput? keep = null)
    {
        _goods = await GoodBook.LoadAsync(Db, Ct);
        var details = await Db.Activities.AsNoTracking().Select(a => a.Details).ToListAsync(Ct);
        _names = [.. details.SelectMany(d => d.Supplies).Select(s => GoodName.Proper(s.Name)).Concat(_goods.Goods.Select(g => g.Name))
            .Concat(_goods.Swaps.Where(s => !s.LeavesOut).Select(s => GoodName.Proper(s.Instead))).Order(StringComparer.Ordinal).DistinctBy(GoodName.Key).Order(StringComparer.OrdinalIgnoreCase)];
        var written = _goods.Find(goodId);
        if ((written ?? _goods.FirstWritten(goodId, _names)) is not { } good)
            return false;
        (Good, IsWritten) = (good, written is not null);
        var shelf = await ShelfBook.LoadAsync(Db, _goods, Today, null, Ct);
        Measure = shelf.MeasureOf(good.Key);
        There = shelf.Knows(good.Key) && Measure is not null ? shelf.Of(good.Key, Measure) : null;
        Events = [.. shelf.EventsOf(good.Key).Reverse().Take(30)];
        Count = new CountInput { Measure = (Measure ?? details.SelectMany(d => d.Supplies).Where(s => GoodName.Key(s.Name) == good.Key).Select(s => Measures.Find(s.Unit)).FirstOrDefault() ?? Measures.Piece).Word };
        Input = keep ?? FormOf(good);
        if (keep is not null)
        {
            (Input.Version, Input.WasWritten) = (good.Version, IsWritten);
            ModelState.Remove("Input.Version");
            ModelState.Remove("Input.WasWritten");
        }

        return true;
    }

    private GoodInput FormOf(Good good) => new()
    {
        Name = good.Name,
        Place = good.Place,
        PackSize = good.Pack is { } pack ? SupplyWords.Field(pack.Size) : null,
        PackMeasure = good.PackMeasure ?? Count.Measure,
        PackPrice = good.PackCents is { } cents ? SupplyWords.PriceField(cents) : null,
        GramsPerCup = good.GramsPerCup is { } grams ? SupplyWords.Field(grams) : null,
        After = good.UsedUp switch { true => "used", false => "kept", null => "usual" },
        AlwaysThere = good.AlwaysThere,
        SameAs = good.SameAsId is { } id ? _goods.Find(id)?.Name : null,
        Version = good.Version,
        WasWritten = IsWritten,
    };

    private async Task<GoodFacts?> ReadAsync()
    {
        Pack? pack = null;
        var cents = Typed.Cents(ModelState, "Input.PackPrice", Input.PackPrice);
        if (Input.PackSize is not null)
        {
            var size = Typed.Quantity(ModelState, "Input.PackSize", Input.PackSize);
            var measure = Typed.Measure(ModelState, "Input.PackMeasure", Input.PackMeasure);
            pack = size is { } s && measure is not null ? new Pack(s, measure, cents) : null;
        }
        else if (Input.PackPrice is not null)
        {
            ModelState.AddModelError("Input.PackSize", "Say how much is in the pack that costs so much.");
        }

        var grams = Input.GramsPerCup is null ? null : Typed.Quantity(ModelState, "Input.GramsPerCup", Input.GramsPerCup);
        if (Input.After is not ("usual" or "used" or "kept"))
            ModelState.AddModelError("Input.After", "Choose one of the three.");
        var same = await SameAsAsync();
        return ModelState.IsValid
            ? new GoodFacts(Input.Name!, pack, Input.Place ?? "", grams, Input.After switch { "used" => true, "kept" => false, _ => null }, Input.AlwaysThere, same) : null;
    }

    private async Task<Guid?> SameAsAsync()
    {
        if (Input.SameAs is null)
            return null;
        var key = GoodName.Key(Input.SameAs);
        var name = _names.FirstOrDefault(n => GoodName.Key(n) == key);
        if (name is null)
            ModelState.AddModelError("Input.SameAs", "No activity and no shelf of yours has a good of that name.");
        else if (_goods.KeyOf(name) == Good.Key)
            ModelState.AddModelError("Input.SameAs", "That is this good itself, or only another name for it.");
        if (!ModelState.IsValid)
            return null;
        var id = _goods.IdOf(key);
        if (!await Db.Goods.AnyAsync(g => g.Id == id, Ct))
            Db.Goods.Add(new Good(Family.Id, name!));
        return id;
    }
}
