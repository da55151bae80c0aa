using CoopLessons.Core.Evidence;
using CoopLessons.Core.Hours;
using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Prepare.Printing;
using CoopLessons.Documents.Portfolios;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records;

/// <summary>A report on a term as a file: the draft as the log stands, a finished one as it was sent.</summary>
public sealed class TermFileModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    public async Task<IActionResult> OnGetAsync(Guid id)
    {
        if (await Db.TermReports.AsNoTracking().SingleOrDefaultAsync(r => r.Id == id, Ct) is not { } report)
            return NotFound();
        var year = await Db.SchoolYears.AsNoTracking().Include(y => y.Breaks).SingleAsync(y => y.Id == report.SchoolYearId, Ct);
        var term = (await TermAtHand.LoadAsync(Db, report.LearnerId, year, report.Days, Today, Ct))!;
        var paper = await Db.PaperSizeAsync(Ct);
        var (now, then) = (term.Totals(Family.Name), report.Totals);
        var totals = then ?? now;
        // Reports that were finished before their head was kept show today's.
        var heading = then?.Heading ?? now.Heading!;
        var papers = new TermPapers(
            report.Title, !report.IsFinished, heading.Family, heading.Learner, heading.Year, report.Days, heading.Grade, heading.Place,
            report.Cite, report.Parts, report.Opening, new Minutes(totals.Minutes), totals.SchoolDays, totals.Entries, totals.Fingerprint, report.FinishedOn ?? Today,
            [.. (report.IsFinished ? report.Subjects : term.Told(report)).Select(t => On(t, t.Fixed ?? term.Subjects.First(s => s.Subject.Key == t.Key).Figures))], paper);
        var file = HoursFile.Named(report.Title, heading.Learner, heading.Year, "pdf", "application/pdf", TermReportPdf.Write(papers));
        Response.Headers.ContentDisposition = file.Disposition.ToString();
        return File(file.Bytes, file.ContentType);
    }

    private static TermSubjectPaper On(TermSubjectTold told, TermFigures figures) => new(
        told.Name, figures.ReadAs, new Minutes(figures.Minutes), figures.Days, new MaterialCovered(figures.Planned, figures.Done), told.PerCent, told.Mark, told.Narrative, told.Explanation, figures.Topic);
}
