using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Web.Pages.Log;
using CoopLessons.Web.Pages.Pieces;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records;

/// <summary>Two samples of one skill: which skill, and what changed in the child's own words.</summary>
public sealed class PairModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    [BindProperty(SupportsGet = true, Name = "learner")]
    public Guid LearnerId { get; set; }

    [BindProperty(SupportsGet = true, Name = "year")]
    public Guid YearId { get; set; }

    [BindProperty(SupportsGet = true)]
    public Guid Early { get; set; }

    [BindProperty(SupportsGet = true)]
    public Guid Late { get; set; }

    [BindProperty]
    [Required(ErrorMessage = "Say which skill both show.")]
    [StringLength(Data.Evidence.Portfolio.LongestSkill, ErrorMessage = "At most 80 letters.")]
    public string? Skill { get; set; }

    [BindProperty]
    [StringLength(Data.Evidence.Portfolio.LongestWords, ErrorMessage = "At most 600 letters.")]
    public string? Told { get; set; }

    [BindProperty]
    public int? Version { get; set; }

    public PortfolioYear Portfolio { get; private set; } = null!;
    public PairOfPieces Pair { get; private set; } = null!;
    public PieceList Pieces { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync()
    {
        if (!await LoadAsync())
            return NotFound();
        (Skill, Told, Version) = (Pair.Skill, Pair.Words, Portfolio.IsSaved ? Portfolio.Choices.Version : null);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync()
    {
        if (!await LoadAsync())
            return NotFound();
        if (ModelState.IsValid && !Pair.Kept && Portfolio.Choices.Pairs.Count >= Data.Evidence.Portfolio.MostPairs)
            ModelState.AddModelError(nameof(Skill), $"There are {Data.Evidence.Portfolio.MostPairs} pairs already, as many as fit. Take one out first.");
        if (!ModelState.IsValid)
            return Again();
        return await ChangeAsync(p => p.Pair(new ChosenPair(Early, Late, Skill!.Trim(), (Told ?? "").Trim())), "The pair is in the portfolio.");
    }

    public async Task<IActionResult> OnPostPartAsync()
    {
        if (!await LoadAsync())
            return NotFound();
        ModelState.Clear();
        return await ChangeAsync(p => p.Part(Early, Late), "The pair is taken out.");
    }

    public string Back => Url.Page("/Records/Portfolio/Index", new { learner = LearnerId, year = YearId }) + "#pairs";

    private async Task<IActionResult> ChangeAsync(Action<Portfolio> change, string said)
    {
        var saved = Portfolio.IsSaved;
        if (saved)
            Expect(Portfolio.Choices, Version ?? 0);
        else
            Db.Portfolios.Add(Portfolio.Choices);
        change(Portfolio.Choices);
        if (!(saved ? await SaveAsync() : await SaveNewAsync()))
            return saved ? Again(StatusCodes.Status409Conflict) : AgainAfterOthers();
        Say(said);
        return Redirect(Back);
    }

    private async Task<bool> LoadAsync()
    {
        var found = await OnePortfolio.FindAsync(Db, LearnerId, YearId, Today, Ct);
        if (found?.Pairs.FirstOrDefault(p => p.Early.Id == Early && p.Late.Id == Late) is not { } pair)
            return false;
        (Portfolio, Pair) = (found, pair);
        Pieces = new PieceList([pair.Early, pair.Late], await EntryWords.LoadAsync(Db, Ct), Day: true);
        return true;
    }
}
