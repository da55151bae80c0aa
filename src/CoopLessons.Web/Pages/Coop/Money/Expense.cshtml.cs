using CoopLessons.Data;
using CoopLessons.Data.Coops.Money;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>Something that was bought: its shares, its receipt, and the way to strike it out.</summary>
public sealed class ExpenseModel(AppDb db, TimeProvider clock) : CoopPage(db, clock)
{
    [BindProperty(SupportsGet = true, Name = "expenseId")]
    public Guid ExpenseId { get; set; }

    public CoopExpense Expense { get; private set; } = null!;

    /// <summary>What was typed as the reason.</summary>
    public string Why { get; private set; } = "";

    /// <summary>The family that paid, and a leader.</summary>
    public bool MayStrikeOut => Expense.Counts && (Expense.PaidById == Family.Id || Mine.Leads);

    public async Task<IActionResult> OnGetAsync() => await FindAsync() ? Page() : NotFound();

    public async Task<IActionResult> OnPostStrikeOutAsync(string? why)
    {
        if (!await FindAsync())
            return NotFound();
        if (Expense.PaidById != Family.Id && !Mine.Leads)
            return Forbid();
        Why = why?.Trim() ?? "";
        if (Why.Length == 0)
            ModelState.AddModelError("why", "Say why, in a few words.");
        else if (Why.Length > CoopExpense.LongestWhy)
            ModelState.AddModelError("why", $"At most {CoopExpense.LongestWhy} signs here.");
        if (!ModelState.IsValid)
            return Again();
        Expense.StrikeOut(Mine.Name, Why, Now);
        if (!await SaveAsync())
            return Again(StatusCodes.Status409Conflict);
        Say("Struck out. It stays here and counts no longer.");
        return LocalRedirect($"/coop/{CoopId}/money/{ExpenseId}");
    }

    private async Task<bool> FindAsync()
    {
        if (await Db.CoopExpenses.SingleOrDefaultAsync(e => e.CoopId == CoopId && e.Id == ExpenseId, Ct) is not { } expense)
            return false;
        Expense = expense;
        return true;
    }
}

/// <summary>The picture of a receipt, for the families of the co-op.</summary>
public sealed class ReceiptModel(AppDb db, TimeProvider clock) : CoopPage(db, clock)
{
    public async Task<IActionResult> OnGetAsync(Guid expenseId)
    {
        if (await Db.CoopReceipts.AsNoTracking().SingleOrDefaultAsync(r => r.CoopId == CoopId && r.ExpenseId == expenseId, Ct) is not { } receipt)
            return NotFound();
        HttpContext.PutInABox();
        Response.Headers.CacheControl = "private, max-age=86400";
        return File(receipt.Jpeg, "image/jpeg");
    }
}
