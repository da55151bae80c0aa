using CoopLessons.Core.Requirements.Standing;
using CoopLessons.Data;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Records;

/// <summary>A pathway with what each of its subjects has had.</summary>
public sealed record StandingView(PathwayStanding Pathway, IReadOnlyList<SubjectCoverage> Subjects);

/// <summary>Where one learner stands under the law: every figure with why and whence, the way to each, and the subjects.</summary>
public sealed class StandingModel(AppDb db, TimeProvider clock) : StandingPage(db, clock)
{
    public IReadOnlyList<StandingView> Pathways { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync()
    {
        if (!await FindStandingAsync() || Learner is null || Year is null)
            return NotFound();
        var views = new List<StandingView>();
        foreach (var pathway in Standing!.Standings)
            views.Add(new StandingView(pathway, await Standing.CoverageAsync(Db, pathway.Span, Ct)));
        Pathways = views;
        return Page();
    }
}
