using CoopLessons.Core.Coop;
using CoopLessons.Data;
using CoopLessons.Data.Coops.Money;
using CoopLessons.Web.Pages.Shopping;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>Who pays whom so that all are even, what is on its way, the family's own account, and what was bought.</summary>
public sealed class MoneyModel(AppDb db, TimeProvider clock) : CoopPage(db, clock)
{
    public CoopAccount Account { get; private set; } = null!;

    /// <summary>Those who belong to the co-op now.</summary>
    public IReadOnlySet<Guid> Here { get; private set; } = new HashSet<Guid>();

    public IReadOnlyList<CoopPayment> OnTheirWay => [.. Account.Payments.Where(p => p.IsOpen)];

    public long Net => Account.Net(Family.Id);

    /// <summary>Whether something is said to be on its way between the two.</summary>
    public bool IsOnItsWay(Payment payment) => OnTheirWay.Any(p => p.FromId == payment.From && p.ToId == payment.To);

    /// <summary>The receiving family says that it came; a leader for one that left.</summary>
    public bool MaySayItCame(CoopPayment payment) => payment.ToId == Family.Id || (Mine.Leads && !Here.Contains(payment.ToId));

    public bool MayTakeBack(CoopPayment payment) => payment.FromId == Family.Id || payment.ToId == Family.Id || Mine.Leads;

    public Task OnGetAsync() => LoadAsync();

    /// <param name="payeeId">Whom the family paid.</param>
    /// <param name="newId">Minted with the page: a second sending is known by it.</param>
    public async Task<IActionResult> OnPostPaidAsync(Guid payeeId, Guid newId, string? amount)
    {
        ModelState.Clear();
        await LoadAsync();
        if (payeeId == Family.Id || !Account.Families.Contains(payeeId))
            return NotFound();
        if (newId == Guid.Empty)
            return BadRequest();
        if (Account.Payments.Any(p => p.Id == newId))
            return Back();
        if (Amount(amount) is not { } cents)
            return Again();
        Db.CoopPayments.Add(new CoopPayment(CoopId, newId, new MoneyFamily(Family.Id, Mine.Name), new MoneyFamily(payeeId, Account.NameOf(payeeId)), cents, Today));
        if (!await SaveNewAsync())
            return await AfterOthersAsync();
        Say($"Written: you paid {Account.NameOf(payeeId)} {MoneyWords.Of(cents)}. It counts when {Account.NameOf(payeeId)} says that it came.");
        return Back();
    }

    /// <summary>A family that left paid: the one that received it says so, since the other can no longer write here.</summary>
    /// <param name="payerId">Who paid.</param>
    /// <param name="newId">Minted with the page.</param>
    public async Task<IActionResult> OnPostReceivedAsync(Guid payerId, Guid newId, string? amount)
    {
        ModelState.Clear();
        await LoadAsync();
        if (payerId == Family.Id || !Account.Families.Contains(payerId))
            return NotFound();
        if (newId == Guid.Empty)
            return BadRequest();
        if (Account.Payments.Any(p => p.Id == newId))
            return Back();
        if (Here.Contains(payerId))
            ModelState.AddModelError("", $"{Account.NameOf(payerId)} says itself that it paid.");
        if (!ModelState.IsValid || Amount(amount) is not { } cents)
            return Again();
        var payment = new CoopPayment(CoopId, newId, new MoneyFamily(payerId, Account.NameOf(payerId)), new MoneyFamily(Family.Id, Mine.Name), cents, Today);
        payment.Came(Mine.Name, Now);
        Db.CoopPayments.Add(payment);
        if (!await SaveNewAsync())
            return await AfterOthersAsync();
        Say($"Written: {MoneyWords.Of(cents)} came from {payment.From}.");
        return Back();
    }

    public async Task<IActionResult> OnPostCameAsync(Guid paymentId)
    {
        ModelState.Clear();
        await LoadAsync();
        if (await Db.CoopPayments.SingleOrDefaultAsync(p => p.CoopId == CoopId && p.Id == paymentId, Ct) is not { } payment)
            return NotFound();
        if (!MaySayItCame(payment))
            return Forbid();
        payment.Came(Mine.Name, Now);
        if (!await SaveAsync())
            return Again(StatusCodes.Status409Conflict);
        Say(payment.Counts ? $"Written: {MoneyWords.Of(payment.Cents)} came from {payment.From}." : "This payment was taken back meanwhile.");
        return Back();
    }

    public async Task<IActionResult> OnPostTakeBackAsync(Guid paymentId)
    {
        ModelState.Clear();
        await LoadAsync();
        if (await Db.CoopPayments.SingleOrDefaultAsync(p => p.CoopId == CoopId && p.Id == paymentId, Ct) is not { } payment)
            return NotFound();
        if (!MayTakeBack(payment))
            return Forbid();
        payment.TakeBack(Now);
        if (!await SaveAsync())
            return Again(StatusCodes.Status409Conflict);
        Say(payment.Counts ? "This payment came already, so it stays." : "Taken back: nothing of it counts.");
        return Back();
    }

    private int? Amount(string? amount)
    {
        var cents = Typed.Cents(ModelState, "", amount?.Trim() is { Length: > 0 } text ? text : null);
        if (ModelState.IsValid && cents is null or 0)
            ModelState.AddModelError("", "Say how much was paid.");
        return ModelState.IsValid ? cents : null;
    }

    private async Task<IActionResult> AfterOthersAsync()
    {
        await LoadAsync();
        return AgainAfterOthers();
    }

    private LocalRedirectResult Back() => LocalRedirect($"/coop/{CoopId}/money");

    private async Task LoadAsync()
    {
        Account = await CoopAccount.LoadAsync(Db, CoopId, Ct);
        Here = (await FamiliesAsync()).Select(f => f.FamilyId).ToHashSet();
    }
}
