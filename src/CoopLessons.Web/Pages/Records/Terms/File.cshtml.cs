using CoopLessons.Core.Evidence;
using CoopLessons.Core.Families;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Prepare.Printing;
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
        var paper = await Db.PrintHabits.AsNoTracking().Select(h => (PaperSize?)h.Paper).SingleOrDefaultAsync(Ct) ?? PrintHabits.Usual.Paper;
        var totals = report.Totals ?? term.Totals;
        var now = term.Standing.Now;
        var papers = new TermPapers(
            report.Title, !report.IsFinished, Family.Name, term.Log.Learner.Name, year.Name, report.Days,
            term.Standing.Law.Learner.Grade is { } grade ? new Level(grade).Name : "",
            now is null ? "" : $"{(now.Span.Code.Length == 0 ? "Our own" : now.Span.Place)}: {now.Span.Pathway.Name}",
            report.Cite, report.Parts, report.Opening, new Minutes(totals.Minutes), totals.SchoolDays, totals.Entries, totals.Fingerprint, report.FinishedOn ?? Today,
            [.. (report.IsFinished ? report.Subjects : term.Told(report)).Select(t => On(t, term.Subjects.FirstOrDefault(s => s.Subject.Key == t.Key)))], paper);
        var file = HoursFile.Named(report.Title, term.Log.Learner.Name, year.Name, "pdf", "application/pdf", TermReportPdf.Write(papers));
        Response.Headers.ContentDisposition = file.Disposition.ToString();
        return File(file.Bytes, file.ContentType);
    }

    private static TermSubjectPaper On(TermSubjectTold told, TermSubject? now)
    {
        var figures = told.Fixed ?? now!.Figures;
        return new TermSubjectPaper(
            told.Name, now?.Subject.ReadAs ?? "", new Minutes(figures.Minutes), figures.Days, new MaterialCovered(figures.Planned, figures.Done), told.PerCent, told.Mark, told.Narrative, told.Explanation);
    }
}
