using CoopLessons.Core.Requirements.Duties;
using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records;

/// <summary>A report on a term that the year asks for, with what was written of it so far; the newest first.</summary>
public sealed record TermLine(TermAsked Asked, DatedDuty Dated, IReadOnlyList<TermReport> Written);

/// <summary>The reports on terms of a learner's year: asked for, begun and finished.</summary>
public sealed class TermReportsModel(AppDb db, TimeProvider clock) : StandingPage(db, clock)
{
    public IReadOnlyList<TermLine> Lines { get; private set; } = [];

    /// <summary>Those that no paper of the year asks for.</summary>
    public IReadOnlyList<TermReport> Own { get; private set; } = [];

    [BindProperty]
    public Guid NewId { get; set; }

    public async Task<IActionResult> OnGetAsync()
    {
        if (!await LoadAsync())
            return NotFound();
        return Page();
    }

    /// <param name="duty">Key of the paper that asks for it; null for one of the family's own.</param>
    /// <param name="part">For one of the family's own: which part of how many, such as <c>2-4</c>.</param>
    public async Task<IActionResult> OnPostAsync(string? duty, string? part)
    {
        if (!await LoadAsync() || Learner is null || Year is null)
            return NotFound();
        var asked = duty is not null ? Lines.FirstOrDefault(l => l.Dated.Key == duty)?.Asked
            : part?.Split('-') is [var number, var of] && int.TryParse(number, out var n) && int.TryParse(of, out var parts) ? TermsOfYear.Own(Year, n, parts) : null;
        if (asked is null || NewId == Guid.Empty)
            return NotFound();
        if (await Db.TermReports.AnyAsync(r => r.Id == NewId, Ct))
            return LocalRedirect($"/records/terms/{NewId}");
        var report = new TermReport(NewId, Learner.Id, Year.Id, asked);
        var term = (await TermAtHand.LoadAsync(Db, Learner.Id, Year, asked.Days, Today, Ct))!;
        report.Describe(asked.Title, asked.Days, asked.Parts, "", term.Told(report));
        Db.TermReports.Add(report);
        // A second sending in the same moment finds the report there.
        await SaveNewAsync();
        return LocalRedirect($"/records/terms/{NewId}");
    }

    private async Task<bool> LoadAsync()
    {
        if (!await FindStandingAsync())
            return false;
        if (Learner is null || Year is null || Standing is null)
            return true;
        var written = await Db.TermReports.AsNoTracking().Where(r => r.LearnerId == Learner.Id && r.SchoolYearId == Year.Id).ToListAsync(Ct);
        written = [.. written.OrderByDescending(r => r.Id)];
        Lines = [.. TermsOfYear.Of(Standing.Law).Select(t => new TermLine(t.Asked, t.Dated, written.FindAll(r => r.DutyKey == t.Dated.Key)))];
        Own = written.FindAll(r => Lines.All(l => l.Dated.Key != r.DutyKey));
        return true;
    }
}
