using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Prepare.Supplies;
using CoopLessons.Data;
using CoopLessons.Data.Prepare.Supplies;
using CoopLessons.Web.Pages.Account;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Shopping;

public sealed class SwapInput
{
    /// <summary>Null for every activity.</summary>
    public Guid? ActivityId { get; set; }

    [StringLength(Good.LongestName, ErrorMessage = "At most {1} signs here.")]
    [Visible]
    public string? Instead { get; set; }

    public bool LeaveOut { get; set; }

    /// <summary>So many times the amount.</summary>
    public string? Factor { get; set; }

    /// <summary>An amount of its own; empty where the factor holds.</summary>
    public string? Quantity { get; set; }
    public string? Measure { get; set; }
}

/// <summary>What is used instead of a good, in one activity or in all.</summary>
public sealed class SwapModel(AppDb db, TimeProvider clock) : ShoppingPage(db, clock)
{
    [BindProperty]
    public SwapInput Input { get; set; } = new();

    public string Good { get; private set; } = "";

    /// <summary>Activities of the week that ask for it, swapped or not.</summary>
    public IReadOnlyList<(Guid Id, string Title)> Activities { get; private set; } = [];

    /// <summary>What is used instead of it by now.</summary>
    public IReadOnlyList<Swap> Swaps { get; private set; } = [];

    public string Where(Swap swap) => swap.ActivityId is { } id ? Activities.FirstOrDefault(a => a.Id == id) is { Title: { } title } ? $"in “{title}”" : "in an activity of another week" : "in every activity";

    public static string What(Swap swap) => swap.LeavesOut ? "left out"
        : swap.Own is { } own ? $"{swap.Instead}, {SupplyWords.Amount(own)}" : swap.Factor == 1 ? swap.Instead : $"{swap.Instead}, {SupplyWords.Field(swap.Factor)} times as much";

    public async Task<IActionResult> OnGetAsync(string week, Guid goodId)
    {
        if (!await FindAsync(week, goodId))
            return NotFound();
        Input = new SwapInput { Factor = "1", Measure = Measures.Piece.Word };
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(string week, Guid goodId)
    {
        if (!await FindAsync(week, goodId) || Input.ActivityId is { } only && Activities.All(a => a.Id != only))
            return NotFound();
        var facts = Read();
        if (!ModelState.IsValid)
            return Again();
        if (await MeetAsync(goodId) is null)
            return NotFound();
        // Two forms may say the first swap in the same moment; the second finds what the first wrote, and changes it.
        if (!await WriteAsync(goodId, facts!) && !await WriteAsync(goodId, facts!))
            return AgainAfterOthers();
        Say(Input.LeaveOut ? $"{Good} is left out." : $"{Input.Instead} is used instead of {Good}.");
        return LocalRedirect(Address);
    }

    private async Task<bool> WriteAsync(Guid goodId, SwapFacts facts)
    {
        var activity = Input.ActivityId;
        await MeetAsync(goodId);
        if (await Db.Swaps.OrderBy(s => s.Id).FirstOrDefaultAsync(s => s.GoodId == goodId && s.ActivityId == activity, Ct) is { } known)
            known.Describe(facts);
        else
            Db.Swaps.Add(new Swap(Swap.IdFor(goodId, activity), goodId, activity, facts));
        return await SaveNewAsync();
    }

    public async Task<IActionResult> OnPostRemoveAsync(string week, Guid goodId, Guid swapId)
    {
        if (!await FindAsync(week, goodId) || await Db.Swaps.SingleOrDefaultAsync(s => s.Id == swapId && s.GoodId == goodId, Ct) is not { } swap)
            return NotFound();
        Db.Swaps.Remove(swap);
        await SaveNewAsync();
        Say($"{Good} is used again.");
        return LocalRedirect(Address);
    }

    private async Task<bool> FindAsync(string week, Guid goodId)
    {
        if (!await LoadAsync(week) || NameOf(goodId) is not { } name)
            return false;
        Good = name;
        Activities = [.. List.Week.Activities.Where(a => a.Activity.Details.Supplies.Any(s => List.Goods.IdOf(List.Goods.KeyOf(s.Name)) == goodId)
                || List.Lines.Any(l => l.GoodId == goodId && l.Activities.Any(p => p.Ask.ActivityId == a.Activity.Id && p.Ask.InsteadOf is null)))
            .Select(a => (a.Activity.Id, a.Activity.Title))];
        Swaps = [.. List.Goods.Swaps.Where(s => s.GoodId == goodId)];
        return true;
    }

    private SwapFacts? Read()
    {
        if (Input.LeaveOut)
            return new SwapFacts("", 1, null);
        if (Input.Instead is null)
            ModelState.AddModelError("Input.Instead", "Say what is used instead, or tick that it is left out.");
        else if (List.Goods.IdOf(List.Goods.KeyOf(Input.Instead)) is var other && NameOf(other) == Good)
            ModelState.AddModelError("Input.Instead", "That is the same good.");
        if (Input.Quantity is not null)
        {
            var quantity = Typed.Quantity(ModelState, "Input.Quantity", Input.Quantity);
            var measure = Typed.Measure(ModelState, "Input.Measure", Input.Measure);
            return quantity is { } q && measure is not null ? new SwapFacts(Input.Instead ?? "", 1, new Amount(q, measure)) : null;
        }

        return Typed.Quantity(ModelState, "Input.Factor", Input.Factor ?? "1") is { } factor ? new SwapFacts(Input.Instead ?? "", factor, null) : null;
    }
}
