using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Sharing;
using CoopLessons.Core.Units;
using CoopLessons.Data;
using CoopLessons.Data.Coops.Sharing;
using CoopLessons.Data.Files;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>A shared unit: its revisions, who uses which, what was offered back, and the way to take it up.</summary>
public sealed class UnitModel(AppDb db, TimeProvider clock, FileShelf shelf) : CoopPage(db, clock)
{
    private static readonly DateOnly Earliest = new(1900, 1, 1);
    private static readonly DateOnly Latest = new(2200, 12, 31);

    [BindProperty]
    public InputModel Input { get; set; } = new();

    public SharedUnit Shared { get; private set; } = null!;

    /// <summary>The newest revision.</summary>
    public UnitBundle Bundle { get; private set; } = null!;

    /// <summary>The newest first, each with what it changed.</summary>
    public IReadOnlyList<(SharedRevision Revision, IReadOnlyList<UnitDifference> Changes)> Revisions { get; private set; } = [];

    public IReadOnlyList<(string Family, int Number)> Uses { get; private set; } = [];

    public IReadOnlyList<(OfferedChange Offer, OfferAnswer? Answer)> Offers { get; private set; } = [];

    /// <summary>The family's own units that came from it.</summary>
    public IReadOnlyList<(Guid Unit, int Number)> Own { get; private set; } = [];

    public bool IsAuthor => Shared.FamilyId == Family.Id;

    /// <summary>A leader, too: what is not fit for all must not stay until its author is there.</summary>
    public bool MayWithdraw => IsAuthor || Mine.Leads;

    public async Task<IActionResult> OnGetAsync(Guid sharedId)
    {
        if (!await FindAsync(sharedId))
            return NotFound();
        Input = new() { UnitId = Guid.CreateVersion7(), Subjects = [.. Bundle.Subjects.Select(s => s.Code)] };
        return Page();
    }

    public async Task<IActionResult> OnPostTakeUpAsync(Guid sharedId)
    {
        if (!await FindAsync(sharedId) || Input.UnitId == Guid.Empty || Input.Subjects.Any(c => Bundle.Subjects.All(s => s.Code != c)))
            return NotFound();
        var unitId = Input.UnitId;
        if (await Db.Units.AnyAsync(u => u.Id == unitId, Ct))
            return Redirect($"/units/{unitId}");
        if (ModelState.IsValid && (Input.Starts < Earliest || Input.Starts > Latest))
            ModelState.AddModelError("Input.Starts", "Give a date between 1900 and 2200.");
        if (!ModelState.IsValid)
            return Again();
        using var turn = await shelf.TurnAsync(Ct);
        var unit = await TakingUp.TakeUpAsync(Db, shelf, Revisions[0].Revision, unitId, await AuthorAsync(), Now, Ct);
        var met = Db.UnitOrigins.Local.Single(o => o.UnitId == unitId).Subjects;
        // Two of its subjects may be one of the family's: it is left out where neither was ticked.
        var wanted = Input.Subjects.Select(c => met[c]).ToHashSet();
        foreach (var subject in met.Values.Distinct().Where(s => !wanted.Contains(s)))
            unit.LeaveOut(subject);
        if (Input.Starts is { } day)
            unit.Take(Core.Calendar.Week.Of(day).Monday);
        if (!await SaveNewAsync())
            return await FindAsync(sharedId) ? AgainAfterOthers() : NotFound();
        Say($"“{unit.Title}” is yours now, revision {Shared.Newest}. Change what you like.");
        return Redirect($"/units/{unitId}");
    }

    public async Task<IActionResult> OnPostWithdrawAsync(Guid sharedId)
    {
        ModelState.Clear();
        if (!await FindAsync(sharedId))
            return NotFound();
        if (!MayWithdraw)
            return Forbid();
        Db.SharedUnits.Remove(await Db.SharedUnits.SingleAsync(u => u.CoopId == CoopId && u.Id == sharedId, Ct));
        if (!await SaveAsync())
            return await FindAsync(sharedId) ? Again(StatusCodes.Status409Conflict) : NotFound();
        var kept = await Db.SharedPrints.Where(p => p.CoopId == CoopId).Select(p => p.Hash).ToListAsync(Ct);
        await shelf.SweepAsync(CoopId, kept.ToHashSet(), Now - ShelfTidying.Young, Ct);
        Say($"“{Shared.Title}” is taken out. Families that have it keep theirs.");
        return Redirect($"/coop/{CoopId}/units");
    }

    private async Task<bool> FindAsync(Guid sharedId)
    {
        if (await Db.SharedUnits.AsNoTracking().SingleOrDefaultAsync(u => u.CoopId == CoopId && u.Id == sharedId, Ct) is not { } shared)
            return false;
        Shared = shared;
        var revisions = await Db.SharedRevisions.AsNoTracking().Where(r => r.CoopId == CoopId && r.SharedUnitId == sharedId).OrderBy(r => r.Number).ToListAsync(Ct);
        var bundles = revisions.ConvertAll(r => r.Bundle.Content);
        Bundle = bundles[^1];
        Revisions = [.. revisions.Select((r, i) => (r, i == 0 ? (IReadOnlyList<UnitDifference>)[] : UnitDifferences.Between(bundles[i - 1], bundles[i]))).Reverse()];
        var names = (await FamiliesAsync()).ToDictionary(f => f.FamilyId, f => f.Name);
        Uses = [.. (await Db.UnitUses.AsNoTracking().Where(u => u.CoopId == CoopId && u.SharedUnitId == sharedId).ToListAsync(Ct)).Where(u => names.ContainsKey(u.FamilyId)).Select(u => (names[u.FamilyId], u.Number)).OrderBy(u => u.Item1, StringComparer.OrdinalIgnoreCase)];
        Own = [.. (await Db.UnitOrigins.AsNoTracking().Where(o => o.CoopId == CoopId && o.SharedId == sharedId).OrderBy(o => o.UnitId).ToListAsync(Ct)).Select(o => (o.UnitId, o.Number))];
        var answers = (await Db.OfferAnswers.AsNoTracking().Where(a => a.CoopId == CoopId).ToListAsync(Ct)).ToDictionary(a => a.OfferId);
        Offers = [.. (await Db.OfferedChanges.AsNoTracking().Where(o => o.CoopId == CoopId && o.SharedUnitId == sharedId).ToListAsync(Ct)).OrderByDescending(o => o.At).Select(o => (o, answers.GetValueOrDefault(o.Id)))];
        return true;
    }

    public sealed class InputModel
    {
        public Guid UnitId { get; set; }

        /// <summary>Codes; none where everything is left out for now.</summary>
        public List<string> Subjects { get; set; } = [];

        [DataType(DataType.Date)]
        public DateOnly? Starts { get; set; }
    }
}
