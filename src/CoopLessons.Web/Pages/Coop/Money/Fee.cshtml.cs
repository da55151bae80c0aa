using CoopLessons.Core.Coop;
using CoopLessons.Data;
using CoopLessons.Data.Coops.Money;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>The fee of a term: what each family pays, and what it gets back when it leaves.</summary>
public sealed class FeeModel(AppDb db, TimeProvider clock) : CoopPage(db, clock)
{
    [BindProperty(SupportsGet = true, Name = "feeId")]
    public Guid FeeId { get; set; }

    public CoopFee Fee { get; private set; } = null!;

    /// <summary>Days of the term on which the co-op meets, as they were planned: one that fell through counts, what makes up for it does not.</summary>
    public IReadOnlyList<DateOnly> Meetings { get; private set; } = [];

    /// <summary>What was typed as the reason.</summary>
    public string Why { get; private set; } = "";

    /// <summary>What a family would get back if it said so on that day; null where the term has no meetings yet.</summary>
    public Refund? RefundOn(FamilyFee family, DateOnly day) => Meetings.Count == 0 ? null : Fee.RefundOf(family.FamilyId, day, Meetings);

    public async Task<IActionResult> OnGetAsync() => await FindAsync() ? Page() : NotFound();

    /// <param name="memberId">The family that leaves.</param>
    /// <param name="saidOn">The day on which it said so.</param>
    public async Task<IActionResult> OnPostGiveBackAsync(Guid memberId, string? saidOn)
    {
        if (!await FindAsync() || Fee.Families.SingleOrDefault(f => f.FamilyId == memberId) is not { } family)
            return NotFound();
        if (!Mine.Leads)
            return Forbid();
        if (family.SaidOn is not null || !Fee.Counts)
            return Back();
        if (!DayWords.TryRead(saidOn, out var day) || day > Today)
            ModelState.AddModelError("", "Say on which day the family said that it leaves, today or before.");
        if (Meetings.Count == 0)
            ModelState.AddModelError("", "The term has no meetings yet, and the rule counts them. Set the meetings first.");
        if (!ModelState.IsValid)
            return Again();
        var refund = Fee.RefundOf(memberId, day, Meetings);
        Fee.GiveBack(memberId, day, refund);
        if (!await SaveAsync())
            return Again(StatusCodes.Status409Conflict);
        Say($"{family.Family}: {refund.Sentence}");
        return Back();
    }

    public async Task<IActionResult> OnPostStrikeOutAsync(string? why)
    {
        if (!await FindAsync())
            return NotFound();
        if (!Mine.Leads)
            return Forbid();
        Why = why?.Trim() ?? "";
        if (Why.Length == 0)
            ModelState.AddModelError("why", "Say why, in a few words.");
        else if (Why.Length > CoopExpense.LongestWhy)
            ModelState.AddModelError("why", $"At most {CoopExpense.LongestWhy} signs here.");
        if (!ModelState.IsValid)
            return Again();
        Fee.StrikeOut(Why, Now);
        if (!await SaveAsync())
            return Again(StatusCodes.Status409Conflict);
        Say("Struck out. It stays here and counts no longer.");
        return Back();
    }

    private LocalRedirectResult Back() => LocalRedirect($"/coop/{CoopId}/money/fees/{FeeId}");

    private async Task<bool> FindAsync()
    {
        if (await Db.CoopFees.SingleOrDefaultAsync(f => f.CoopId == CoopId && f.Id == FeeId, Ct) is not { } fee)
            return false;
        Fee = fee;
        Meetings = await Db.CoopMeetings.Where(m => m.CoopId == CoopId && m.InsteadOf == null && m.On >= fee.First && m.On <= fee.Last).OrderBy(m => m.On).Select(m => m.On).ToListAsync(Ct);
        return true;
    }
}
