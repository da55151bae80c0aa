using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Coop;
using CoopLessons.Data;
using CoopLessons.Data.Coops.Money;
using CoopLessons.Documents.Uploads;
using CoopLessons.Web.Evidence;
using CoopLessons.Web.Files;
using CoopLessons.Web.Pages.Account;
using CoopLessons.Web.Pages.Shopping;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>Writes down something bought for the co-op, with its receipt, and divides it.</summary>
[LargestUpload(ReceiptFile.MostBytes)]
[RequestSizeLimit(ReceiptFile.MostBytes + LargestUploadAttribute.Around)]
public sealed class NewExpenseModel(AppDb db, TimeProvider clock, BroughtReceipt receipts) : DividingPage(db, clock)
{
    [BindProperty]
    public InputModel Input { get; set; } = new();

    /// <summary>Who may be named as the one that paid: the family itself; by a leader any.</summary>
    public bool MayNameAny => Mine.Leads;

    public async Task<IActionResult> OnGetAsync()
    {
        await ListAsync();
        Input = new() { NewId = Guid.CreateVersion7(), On = Today, PaidBy = Family.Id, Rows = await ProposedAsync() };
        if (!LargestUploadAttribute.Refused(HttpContext))
            return Page();
        ModelState.AddModelError("Input.Receipt", BroughtReceipt.TooLarge);
        return Again(StatusCodes.Status413PayloadTooLarge);
    }

    public async Task<IActionResult> OnPostAsync(IFormFile? receipt)
    {
        await ListAsync();
        if (Input.NewId == Guid.Empty)
            return BadRequest();
        if (Input.Rows.Any(r => Families.All(f => f.FamilyId != r.FamilyId)) || Families.All(f => f.FamilyId != Input.PaidBy))
            return NotFound();
        if (Input.PaidBy != Family.Id && !MayNameAny)
            return Forbid();
        if (await Db.CoopExpenses.AnyAsync(e => e.CoopId == CoopId && e.Id == Input.NewId, Ct))
            return There();
        var cents = Cents();
        if (Input.On > Today)
            ModelState.AddModelError("Input.On", "Write it down on the day on which it is bought, or later.");
        var bearers = Bearers();
        if (!ModelState.IsValid)
            return Again();
        byte[]? picture = null;
        if (receipt is not null)
        {
            var (jpeg, fault) = await receipts.LookAsync(receipt, Ct);
            if (fault is not null)
            {
                ModelState.AddModelError("Input.Receipt", fault.Sentence);
                return Again(fault.Status);
            }

            picture = jpeg;
        }

        var shares = SharedCost.Divide(cents!.Value, Input.By, bearers).Zip(bearers, (share, bearer) => new KeptShare(share.Family, Name(share.Family), bearer.Learners, share.Cents)).ToList();
        var expense = new CoopExpense(CoopId, Input.NewId, Input.What, cents.Value, Input.On!.Value, new MoneyFamily(Input.PaidBy, Name(Input.PaidBy)), Input.By, shares, new MoneyFamily(Family.Id, Mine.Name), Now);
        Db.CoopExpenses.Add(expense);
        if (picture is not null)
            Db.CoopReceipts.Add(expense.Attach(picture));
        if (!await SaveNewAsync())
            return await Db.CoopExpenses.AnyAsync(e => e.CoopId == CoopId && e.Id == Input.NewId, Ct) ? There() : AgainAfterOthers();
        Say($"Written: {MoneyWords.Of(expense.Cents)} for {expense.What}.");
        return There();
    }

    private LocalRedirectResult There() => LocalRedirect($"/coop/{CoopId}/money/{Input.NewId}");

    private string Name(Guid family) => Families.Single(f => f.FamilyId == family).Name;

    private int? Cents()
    {
        var cents = Typed.Cents(ModelState, "Input.Cost", Input.Cost?.Trim() is { Length: > 0 } text ? text : null);
        if (cents is null or 0 && ModelState["Input.Cost"]?.Errors.Count is null or 0)
            ModelState.AddModelError("Input.Cost", "Say what it cost.");
        return cents;
    }

    private List<CostBearer> Bearers()
    {
        var rows = Input.Rows.Where(r => r.TakesPart).DistinctBy(r => r.FamilyId).ToList();
        if (rows.Count == 0)
            ModelState.AddModelError("Input.Rows", "Choose at least one family that bears it.");
        else if (Input.By == SharedBy.Learner && rows.All(r => r.Learners is null or 0))
            ModelState.AddModelError("Input.Rows", "Say how many children of each family take part, or divide it by family.");
        return [.. rows.Select(r => new CostBearer(r.FamilyId, Input.By == SharedBy.Learner ? r.Learners ?? 0 : 1))];
    }

    public sealed class InputModel
    {
        public Guid NewId { get; set; }

        [Required(ErrorMessage = "Say what was bought.")]
        [StringLength(CoopExpense.LongestWhat, ErrorMessage = "At most {1} signs here.")]
        [Visible]
        public string What { get; set; } = "";

        public string? Cost { get; set; }

        [Required(ErrorMessage = "Say on which day.")]
        public DateOnly? On { get; set; }

        public Guid PaidBy { get; set; }

        [EnumDataType(typeof(SharedBy), ErrorMessage = "Choose how it is divided.")]
        public SharedBy By { get; set; } = SharedBy.Learner;

        public List<ShareRow> Rows { get; set; } = [];
    }
}
