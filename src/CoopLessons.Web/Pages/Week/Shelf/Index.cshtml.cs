using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Prepare.Supplies;
using CoopLessons.Data;
using CoopLessons.Data.Prepare.Supplies;
using CoopLessons.Web.Pages.Account;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Shopping;

/// <summary>A good of which the family knows how much there is.</summary>
/// <param name="There">By reckoning; null where nobody counted or bought any.</param>
public sealed record ShelfRow(Good Good, OnShelf? There, Measure? Measure);

/// <summary>A new count of one good; empty where it was not counted.</summary>
public sealed class CountRow
{
    public Guid GoodId { get; set; }
    public string? Quantity { get; set; }

    /// <summary>As the form showed it: what was counted in grams stays grams, whatever the shelf is told in meanwhile.</summary>
    public string? Measure { get; set; }
}

public sealed class ShelfInput
{
    public List<CountRow> Counts { get; set; } = [];
}

public sealed class NewGoodInput
{
    [Required(ErrorMessage = "Say what it is.")]
    [StringLength(Good.LongestName, ErrorMessage = "At most {1} signs here.")]
    [Visible]
    public string? Name { get; set; }
}

/// <summary>What is on the shelf by reckoning, and a column to count it anew.</summary>
public sealed class ShelfModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    public IReadOnlyList<ShelfRow> Rows { get; private set; } = [];
    public ShelfInput Input { get; private set; } = new();
    public NewGoodInput New { get; private set; } = new();

    public int CountedRow(ShelfRow row) => Input.Counts.FindIndex(c => c.GoodId == row.Good.Id);

    public async Task OnGetAsync() => await LoadAsync();

    public async Task<IActionResult> OnPostAsync()
    {
        await LoadAsync();
        var own = Input.Counts.Select(c => c.GoodId).ToList();
        Input = new ShelfInput();
        await TryUpdateModelAsync(Input, "Input");
        if (Input.Counts.Any(c => !own.Contains(c.GoodId)))
            return NotFound();
        var counted = 0;
        foreach (var (i, row) in Input.Counts.Index().Where(c => c.Item.Quantity is not null))
        {
            if (Typed.Quantity(ModelState, $"Input.Counts[{i}].Quantity", row.Quantity, zero: true) is not { } quantity
                || Typed.Measure(ModelState, $"Input.Counts[{i}].Quantity", row.Measure) is not { } measure)
                continue;
            Db.ShelfCounts.Add(new ShelfCount(Guid.CreateVersion7(), row.GoodId, Today, Now, new Amount(quantity, measure)));
            counted++;
        }

        if (!ModelState.IsValid)
        {
            Input.Counts = [.. Rows.Where(r => r.Measure is not null).Select(r => Input.Counts.FirstOrDefault(c => c.GoodId == r.Good.Id) ?? RowOf(r))];
            return Again();
        }

        if (!await SaveNewAsync())
            return AgainAfterOthers();
        Say(counted switch { 0 => "Nothing was counted.", 1 => "1 thing is counted.", _ => $"{counted} things are counted." });
        return LocalRedirect("/week/shelf");
    }

    public async Task<IActionResult> OnPostAddAsync()
    {
        await LoadAsync();
        await TryUpdateModelAsync(New, "New");
        if (!ModelState.IsValid)
            return Again();
        var good = new Good(Family.Id, New.Name!);
        if (!await Db.Goods.AnyAsync(g => g.Id == good.Id, Ct))
        {
            Db.Goods.Add(good);
            await SaveNewAsync();
        }

        return LocalRedirect($"/week/shelf/{good.Id}");
    }

    private async Task LoadAsync()
    {
        ModelState.Clear();
        var goods = await GoodBook.LoadAsync(Db, Ct);
        var shelf = await ShelfBook.LoadAsync(Db, goods, Today, null, Ct);
        Rows = [.. goods.Goods.Where(g => g.SameAsId is null && !g.AlwaysThere).Select(g =>
        {
            var measure = shelf.MeasureOf(g.Key);
            return new ShelfRow(g, shelf.Knows(g.Key) && measure is not null ? shelf.Of(g.Key, measure) : null, measure);
        }).OrderBy(r => r.Good.Place.Length == 0).ThenBy(r => r.Good.Place, StringComparer.OrdinalIgnoreCase).ThenBy(r => r.Good.Name, StringComparer.OrdinalIgnoreCase)];
        Input = new ShelfInput { Counts = [.. Rows.Where(r => r.Measure is not null).Select(RowOf)] };
    }

    private static CountRow RowOf(ShelfRow row) => new() { GoodId = row.Good.Id, Measure = row.Measure!.Word };
}
