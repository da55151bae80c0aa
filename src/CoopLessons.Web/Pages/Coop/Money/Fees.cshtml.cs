using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Coop;
using CoopLessons.Data;
using CoopLessons.Data.Coops.Money;
using CoopLessons.Web.Pages.Account;
using CoopLessons.Web.Pages.Shopping;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>The fees of terms; a leader sets one.</summary>
public sealed class FeesModel(AppDb db, TimeProvider clock) : DividingPage(db, clock)
{
    [BindProperty]
    public InputModel Input { get; set; } = new();

    public IReadOnlyList<CoopFee> Fees { get; private set; } = [];

    public async Task OnGetAsync()
    {
        await LoadAsync();
        Input = new() { NewId = Guid.CreateVersion7(), Keeper = Family.Id, Rows = await ProposedAsync() };
    }

    public async Task<IActionResult> OnPostAsync()
    {
        await LoadAsync();
        if (!Mine.Leads)
            return Forbid();
        if (Input.NewId == Guid.Empty)
            return BadRequest();
        if (Input.Rows.Any(r => Families.All(f => f.FamilyId != r.FamilyId)) || Families.All(f => f.FamilyId != Input.Keeper))
            return NotFound();
        if (Fees.Any(f => f.Id == Input.NewId))
            return There();
        var fee = new TermFee(Cents("Input.PerFamily", Input.PerFamily) ?? 0, Cents("Input.PerLearner", Input.PerLearner) ?? 0, Cents("Input.AtMost", Input.AtMost));
        if (fee is { FamilyCents: 0, LearnerCents: 0 } && ModelState["Input.PerFamily"]?.Errors.Count is null or 0)
            ModelState.AddModelError("Input.PerFamily", "Say what a family pays, or what is paid for each child.");
        if (Input.Last < Input.First)
            ModelState.AddModelError("Input.Last", "The last day is not before the first.");
        var rows = Input.Rows.Where(r => r.TakesPart).DistinctBy(r => r.FamilyId).ToList();
        if (rows.Count == 0)
            ModelState.AddModelError("Input.Rows", "Choose at least one family that pays it.");
        if (!ModelState.IsValid)
            return Again();
        var keeper = Families.Single(f => f.FamilyId == Input.Keeper);
        Db.CoopFees.Add(new CoopFee(CoopId, Input.NewId, Input.Name, Input.First!.Value, Input.Last!.Value, fee, Input.WholeBefore!.Value, new MoneyFamily(keeper.FamilyId, keeper.Name),
            [.. rows.Select(r => new FamilyFee(r.FamilyId, Families.Single(f => f.FamilyId == r.FamilyId).Name, r.Learners ?? 0, fee.For(r.Learners ?? 0)))]));
        if (!await SaveNewAsync())
            return await Db.CoopFees.AnyAsync(f => f.CoopId == CoopId && f.Id == Input.NewId, Ct) ? There() : AgainAfterOthers();
        Say($"“{Input.Name}” is set. All families see it.");
        return There();
    }

    private LocalRedirectResult There() => LocalRedirect($"/coop/{CoopId}/money/fees/{Input.NewId}");

    private int? Cents(string field, string? text) => Typed.Cents(ModelState, field, text?.Trim() is { Length: > 0 } typed ? typed : null);

    private async Task LoadAsync()
    {
        await ListAsync();
        Fees = await Db.CoopFees.AsNoTracking().Where(f => f.CoopId == CoopId).OrderByDescending(f => f.First).ToListAsync(Ct);
    }

    public sealed class InputModel
    {
        public Guid NewId { get; set; }

        [Required(ErrorMessage = "Give it a name, such as Dues of the spring term.")]
        [StringLength(CoopFee.LongestName, ErrorMessage = "A name has at most {1} signs.")]
        [Visible]
        public string Name { get; set; } = "";

        [Required(ErrorMessage = "Say on which day the term begins.")]
        public DateOnly? First { get; set; }

        [Required(ErrorMessage = "Say on which day it ends.")]
        public DateOnly? Last { get; set; }

        public string? PerFamily { get; set; }
        public string? PerLearner { get; set; }
        public string? AtMost { get; set; }

        [Required(ErrorMessage = "Say before which day the whole is given back.")]
        public DateOnly? WholeBefore { get; set; }

        public Guid Keeper { get; set; }

        public List<ShareRow> Rows { get; set; } = [];
    }
}
