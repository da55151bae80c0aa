using CoopLessons.Core.Evidence;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Prepare.Books;
using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Families;
using CoopLessons.Data.Files;
using CoopLessons.Data.Hours;
using CoopLessons.Data.Prepare;
using CoopLessons.Data.Prepare.Printing;
using CoopLessons.Data.Requirements;
using CoopLessons.Data.Sealing;
using CoopLessons.Documents.Portfolios;
using CoopLessons.Web.Files;
using CoopLessons.Web.Sealing;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records;

/// <summary>One subject of one learner between two dates, as a file.</summary>
public sealed class SubjectFileModel(AppDb db, TimeProvider clock, FileShelf shelf, PicturePaper maker) : FamilyPage(db, clock)
{
    public async Task<IActionResult> OnGetAsync(Guid learnerId, Guid yearId, string? show, string? from, string? to)
    {
        var year = await Db.SchoolYears.AsNoTracking().Include(y => y.Breaks).SingleOrDefaultAsync(y => y.Id == yearId, Ct);
        if (year is null || SubjectAskedFor.Days(year, from, to) is not { } days || await LearnerYear.LoadAsync(Db, learnerId, year.Days, Ct) is not { } log)
            return NotFound();
        var standing = await LearnerStanding.LoadAsync(Db, log, year, Today, Ct);
        if (SubjectAsked.All(standing).FirstOrDefault(s => s.Key == show) is not { } subject)
            return NotFound();

        var found = await SubjectAskedFor.LoadAsync(Db, log, standing, subject, days, Ct);
        var files = await PortfolioYear.FilesAsync(Db, found.Evidence.Pieces, Ct);
        var on = new PortfolioOnPaper(files, await shelf.HeldAsync(Family.Id, files.Keys, Ct), days, full: false);
        // No more than was asked for: books belong to the subjects that are read as reading.
        var isReading = !subject.Topic && await Db.Subjects.AnyAsync(s => subject.Family.Contains(s.Id) && s.Code == FamilySubject.Reading, Ct);
        var books = isReading ? (await ListOfReading.LoadAsync(Db, log.Learner, year, Today, Ct)).Lines.Where(l => ReadingList.Holds(days, l.BegunOn, l.EndedOn)) : [];
        var paper = await Db.PaperSizeAsync(Ct);
        var seal = await Db.SealMarkAsync(yearId, learnerId, Ct);
        var papers = new SubjectPacketPapers(
            Family.Name, log.Learner.Name, Today, days,
            new SubjectPaper(subject.Name, subject.ReadAs, found.Evidence.Sentences, found.Choice.Narrative, [.. found.Evidence.Pieces.SelectMany(p => on.Samples(p, firstOnly: true))], found.Evidence.Missing),
            PortfolioOnPaper.Log(log.Ledger, c => SubjectAskedFor.Counts(c, subject, days)), subject.Topic ? null : found.Evidence.Facts.Minutes,
            [.. books], LogFingerprint.Of(log.Ledger), paper, seal);
        var shown = papers.Subject.Samples.Select(s => s.Hash).OfType<string>().Distinct().ToList();
        return await PaperAnswer.OfAsync(
            this, maker, Family.Id, shown.Select(h => files[h]), (to, ct) => SubjectPacketPdf.Write(papers, to, ct),
            HoursFile.Named(subject.Name, log.Learner.Name, year.Name, "pdf", "application/pdf", []),
            Url.Page("/Records/Subject", new { learner = learnerId, year = yearId, show, from, to })!, Say,
            made => Db.GiveOutAsync(yearId, learnerId, "subject", seal, made, Today, Ct), Ct);
    }
}
