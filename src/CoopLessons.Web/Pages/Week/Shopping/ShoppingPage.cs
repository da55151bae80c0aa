using CoopLessons.Data;
using CoopLessons.Data.Prepare;
using CoopLessons.Data.Prepare.Supplies;
using CoopLessons.Web.Pages.Today;
using Microsoft.EntityFrameworkCore;
using IsoWeek = CoopLessons.Core.Calendar.Week;

namespace CoopLessons.Web.Pages.Shopping;

/// <summary>A page about the list of one week.</summary>
public abstract class ShoppingPage(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    public IsoWeek Shown { get; private set; }
    public ShoppingList List { get; private set; } = null!;
    public string Address => $"/week/shopping/{Shown.Iso}";

    /// <summary>False where the address names no week.</summary>
    private protected async Task<bool> LoadAsync(string week)
    {
        if (!DayWords.TryWeek(week, out var shown))
            return false;
        Shown = shown;
        List = await ShoppingList.LoadAsync(Db, await ReadyWeek.LoadAsync(Db, shown, Ct), Today, Ct);
        return true;
    }

    /// <summary>The name of the good of an id: one of a line or of a swap of this week, or one that is written down. Null for an id that means nothing here.</summary>
    private protected string? NameOf(Guid goodId) =>
        List.Goods.Find(goodId)?.Name ?? List.Lines.FirstOrDefault(l => l.GoodId == goodId)?.Line.Name ?? List.Swapped.FirstOrDefault(s => s.GoodId == goodId)?.Good;

    /// <summary>
    /// The good's row, written down for the first time where nobody did so yet. Nothing is saved here; null for an id that
    /// means nothing here.
    /// </summary>
    private protected async Task<Good?> MeetAsync(Guid goodId)
    {
        if (Db.Goods.Local.FirstOrDefault(g => g.Id == goodId) is { } here)
            return here;
        if (await Db.Goods.SingleOrDefaultAsync(g => g.Id == goodId, Ct) is { } known)
            return known;
        var names = List.Lines.SelectMany(l => l.Line.Parts).SelectMany(p => new[] { p.Ask.Supply.Name, p.Ask.InsteadOf ?? "" })
            .Concat(List.Week.Activities.SelectMany(a => a.Activity.Details.Supplies).Select(s => s.Name));
        if (List.Goods.FirstWritten(goodId, names) is not { } first)
            return null;
        Db.Goods.Add(first);
        return first;
    }
}
