using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Families;
using CoopLessons.Data.Hours;
using CoopLessons.Web.Pages.Log;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records;

/// <summary>Which samples of one subject stand in a portfolio: as the program proposes, or as a parent ticks.</summary>
public sealed class SamplesModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    [BindProperty(SupportsGet = true, Name = "learner")]
    public Guid LearnerId { get; set; }

    [BindProperty(SupportsGet = true, Name = "year")]
    public Guid YearId { get; set; }

    [BindProperty(SupportsGet = true)]
    public string Key { get; set; } = "";

    [BindProperty]
    public List<Guid> Chosen { get; set; } = [];

    [BindProperty]
    public int? Version { get; set; }

    public PortfolioYear Portfolio { get; private set; } = null!;
    public PortfolioSubject Subject { get; private set; } = null!;
    public EntryWords Words { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync()
    {
        if (!await LoadAsync())
            return NotFound();
        Chosen = [.. Subject.Samples.Select(p => p.Id)];
        Version = Portfolio.IsSaved ? Portfolio.Choices.Version : null;
        return Page();
    }

    /// <param name="byDay">The program chooses again.</param>
    public async Task<IActionResult> OnPostAsync(bool byDay)
    {
        if (!await LoadAsync() || Chosen.Exists(id => Subject.Evidence.Pieces.All(p => p.Id != id)))
            return NotFound();
        if (!byDay && Chosen.Distinct().Count() > Data.Evidence.Portfolio.MostSamples)
            ModelState.AddModelError(nameof(Chosen), $"At most {Data.Evidence.Portfolio.MostSamples} samples; the full portfolio holds every one.");
        if (!ModelState.IsValid)
            return Again();
        var choices = Portfolio.Choices;
        var saved = Portfolio.IsSaved;
        if (saved)
            Expect(choices, Version ?? 0);
        else
            Db.Portfolios.Add(choices);
        choices.Decide(choices.Of(Key) with { Samples = byDay ? null : [.. Chosen.Distinct()] });
        if (!(saved ? await SaveAsync() : await SaveNewAsync()))
            return saved ? Again(StatusCodes.Status409Conflict) : AgainAfterOthers();
        Say(byDay ? "Chosen for their days." : "Chosen.");
        return Redirect(Back);
    }

    public string Back => Url.Page("/Records/Portfolio/Index", new { learner = LearnerId, year = YearId }) + "#" + Key;

    private async Task<bool> LoadAsync()
    {
        var found = await OnePortfolio.FindAsync(Db, LearnerId, YearId, Today, Ct);
        if (found?.Subjects.FirstOrDefault(s => s.Subject.Key == Key) is not { } subject)
            return false;
        (Portfolio, Subject) = (found, subject);
        Words = await EntryWords.LoadAsync(Db, Ct);
        return true;
    }
}

internal static class OnePortfolio
{
    /// <summary>Null where the family has no such learner or year.</summary>
    public static async Task<PortfolioYear?> FindAsync(AppDb db, Guid learnerId, Guid yearId, DateOnly today, CancellationToken ct) =>
        await db.SchoolYears.AsNoTracking().Include(y => y.Breaks).SingleOrDefaultAsync(y => y.Id == yearId, ct) is { } year
        && await LearnerYear.LoadAsync(db, learnerId, year.Days, ct) is { } log
            ? await PortfolioYear.LoadAsync(db, log, year, today, ct)
            : null;
}
