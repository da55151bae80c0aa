using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Prepare.Supplies;
using CoopLessons.Data;
using CoopLessons.Data.Prepare.Supplies;
using CoopLessons.Web.Pages.Account;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Shopping;

/// <summary>Something that is put on the list by hand.</summary>
public sealed class ElseInput
{
    /// <summary>Made with the form, so that a form sent twice adds one thing.</summary>
    public Guid Id { get; set; }

    [Required(ErrorMessage = "Say what it is.")]
    [StringLength(Good.LongestName, ErrorMessage = "At most {1} signs here.")]
    [Visible]
    public string? Name { get; set; }

    public string? Quantity { get; set; }
    public string? Measure { get; set; }
}

/// <summary>
/// A week's list for the shop: by place, with ticks for what lies in the basket. Ticks are saved with the form, or at once by
/// a script that keeps them while there is no network.
/// </summary>
public sealed class ShoppingModel(AppDb db, TimeProvider clock) : ShoppingPage(db, clock)
{
    public ElseInput Else { get; private set; } = new();

    /// <summary>Lines to buy, by place.</summary>
    public IEnumerable<IGrouping<string, ShopLine>> Places => List.In(ShopState.ToBuy).GroupBy(l => l.Place, StringComparer.OrdinalIgnoreCase);

    public async Task<IActionResult> OnGetAsync(string week)
    {
        if (!await LoadAsync(week))
            return NotFound();
        Else = new ElseInput { Id = Guid.CreateVersion7(), Quantity = "1", Measure = Measures.Piece.Word };
        return Page();
    }

    /// <summary>
    /// The whole form. Only what was changed on it is changed: another parent may have ticked something since it was made.
    /// </summary>
    /// <param name="was">What was ticked when the form was made.</param>
    public async Task<IActionResult> OnPostAsync(string week, List<Guid> was, List<Guid> ticks)
    {
        if (!await LoadAsync(week))
            return NotFound();
        if (!ModelState.IsValid)
            return BadRequest();
        if (!await TickAsync([.. ticks.Except(was)], [.. was.Except(ticks)]))
            return NotFound();
        var iso = Shown.Iso;
        var count = await Db.ShopTicks.CountAsync(t => t.Week == iso, Ct);
        Say(count == 1 ? "1 thing is in the basket." : $"{count} things are in the basket.");
        return LocalRedirect(Address);
    }

    /// <summary>Single ticks, as the script sends them: what is put in and what is taken out. The answer says how each stands now.</summary>
    public async Task<IActionResult> OnPostTicksAsync(string week, List<Guid> on, List<Guid> off)
    {
        if (!await LoadAsync(week))
            return NotFound();
        if (!ModelState.IsValid)
            return BadRequest();
        if (!await TickAsync(on, off))
            return NotFound();
        var asked = on.Concat(off).Distinct().ToList();
        var iso = Shown.Iso;
        var stands = await Db.ShopTicks.AsNoTracking().Where(t => t.Week == iso && asked.Contains(t.GoodId)).Select(t => t.GoodId).ToListAsync(Ct);
        return new JsonResult(new { on = stands, off = asked.Except(stands) });
    }

    public async Task<IActionResult> OnPostElseAsync(string week)
    {
        if (!await LoadAsync(week))
            return NotFound();
        ModelState.Clear();
        await TryUpdateModelAsync(Else, "Else");
        var quantity = Typed.Quantity(ModelState, "Else.Quantity", Else.Quantity);
        var measure = Typed.Measure(ModelState, "Else.Measure", Else.Measure);
        if (!ModelState.IsValid)
            return Again();
        if (Else.Id == Guid.Empty)
            return BadRequest();
        if (!await Db.ListedByHand.AnyAsync(h => h.Id == Else.Id, Ct))
        {
            var id = List.Goods.IdOf(GoodName.Key(Else.Name!));
            if (!await Db.Goods.AnyAsync(g => g.Id == id, Ct))
                Db.Goods.Add(new Good(Family.Id, Else.Name!));
            Db.ListedByHand.Add(new ListedByHand(Else.Id, Shown.Iso, id, new Amount(quantity!.Value, measure!)));
            if (!await SaveNewAsync() && !await Db.ListedByHand.AnyAsync(h => h.Id == Else.Id, Ct))
                return AgainAfterOthers("Else.Name");
        }

        Say($"“{Else.Name}” is on the list.");
        return LocalRedirect(Address);
    }

    /// <summary>Takes something that was put on the list by hand off it.</summary>
    public async Task<IActionResult> OnPostTakeOffAsync(string week, Guid item)
    {
        if (!await LoadAsync(week) || await Db.ListedByHand.SingleOrDefaultAsync(h => h.Id == item, Ct) is not { } hand)
            return NotFound();
        Db.ListedByHand.Remove(hand);
        await SaveNewAsync();
        Say("It is off the list.");
        return LocalRedirect(Address);
    }

    /// <summary>Things that are kept were found at home, and so many as the week needs.</summary>
    public Task<IActionResult> OnPostFoundAsync(string week, List<Guid> found) => LookedAsync(week, found, here: true);

    /// <summary>Things that are kept are not at home, and go on the list.</summary>
    public Task<IActionResult> OnPostMissingAsync(string week, List<Guid> found) => LookedAsync(week, found, here: false);

    private async Task<IActionResult> LookedAsync(string week, List<Guid> found, bool here)
    {
        if (!await LoadAsync(week))
            return NotFound();
        if (!ModelState.IsValid)
            return BadRequest();
        var counted = 0;
        foreach (var id in found.Distinct())
        {
            if (await MeetAsync(id) is null)
                return NotFound();
            foreach (var line in List.In(ShopState.LookOut).Where(l => l.GoodId == id))
            {
                Db.ShelfCounts.Add(new ShelfCount(Guid.CreateVersion7(), id, Today, Now, new Amount(here ? line.Line.Quantity : 0, line.Line.Measure)));
                counted++;
            }
        }

        if (counted > 0 && !await SaveNewAsync())
            return AgainAfterOthers();
        Say(counted == 0 ? "Nothing was ticked." : here ? $"{Things(counted)} counted as there." : $"{Things(counted)} put on the list.");
        return LocalRedirect(Address);
    }

    /// <summary>False where an id means nothing to the family. A tick of a line that is not to be bought any more is let go in silence.</summary>
    private async Task<bool> TickAsync(IReadOnlyList<Guid> on, IReadOnlyList<Guid> off)
    {
        foreach (var id in on.Concat(off).Distinct())
        {
            if (NameOf(id) is null)
                return false;
        }

        // Two phones may tick the same line in the same moment; the second reads what the first wrote and finds it done.
        for (var tries = 0; tries < 2; tries++)
        {
            var iso = Shown.Iso;
            var there = await Db.ShopTicks.Where(t => t.Week == iso).ToListAsync(Ct);
            foreach (var id in on.Distinct().Where(id => there.All(t => t.GoodId != id) && List.In(ShopState.ToBuy).Any(l => l.GoodId == id)))
            {
                await MeetAsync(id);
                Db.ShopTicks.Add(new ShopTick(iso, id));
            }

            Db.ShopTicks.RemoveRange(there.Where(t => off.Contains(t.GoodId)));
            if (await SaveNewAsync())
                break;
        }

        return true;
    }

    private static string Things(int count) => count == 1 ? "1 thing is" : $"{count} things are";
}
