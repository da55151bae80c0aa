using System.Globalization;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Evidence;
using CoopLessons.Core.Families;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Prepare.Books;
using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Files;
using CoopLessons.Documents.Portfolios;

namespace CoopLessons.Web.Pages.Records;

/// <summary>What somebody outside the family reads of one child: chosen parts, without any other child.</summary>
public sealed record ReaderBounds(IReadOnlyList<PortfolioPart> Parts, string Reader, OtherNames Names);

/// <summary>A portfolio, or a packet on one subject, as it stands on paper.</summary>
/// <param name="bounds">Null for the family itself.</param>
public sealed class PortfolioOnPaper(IReadOnlyDictionary<string, StoredFile> files, IReadOnlySet<string> held, DayRange year, bool full, ReaderBounds? bounds = null)
{
    // Of a long PDF the first pages are enough, even for the full one.
    private const int MostPages = 12;

    public static PortfolioPapers Of(PortfolioYear portfolio, ReadingList reading, IReadOnlyDictionary<string, StoredFile> files, IReadOnlySet<string> held, PaperSize paper, bool full, ReaderBounds? bounds = null)
    {
        var on = new PortfolioOnPaper(files, held, portfolio.Year.Days, full, bounds);
        bool Has(PortfolioPart part) => bounds is not null ? bounds.Parts.Contains(part) : full || portfolio.Choices.Parts.Contains(part);
        var ledger = portfolio.Log.Ledger;
        return new PortfolioPapers(
            on.Told(portfolio.Report),
            portfolio.Standing.Law.Learner.Grade is { } grade ? new Level(grade).Name : "",
            portfolio.Standing.Now?.Span.Named ?? "",
            bounds?.Reader ?? portfolio.Choices.Reader, on.Told(portfolio.Choices.Opening), Has(PortfolioPart.Months),
            Has(PortfolioPart.Days) ? [.. Month.Through(portfolio.Year.Days).Select(m => new MonthOfDays(m, [.. portfolio.Log.Days.Counted.Where(m.Contains).Select(d => d.Day).Order()]))] : null,
            Has(PortfolioPart.Reading) ? on.Told(reading) : null,
            Has(PortfolioPart.Subjects) ? SubjectPaper.EachShownOnce(portfolio.Subjects.Where(s => s.Subject.ByLaw || Has(PortfolioPart.OwnSubjects) || !portfolio.Subjects.Any(o => o.Subject.ByLaw)).Select(s => on.Subject(s, Has(PortfolioPart.Missing)))) : [],
            Has(PortfolioPart.Pairs) ? [.. portfolio.Pairs.Where(p => p.Kept && on.Shows(p.Early) && on.Shows(p.Late)).Select(p => new PairPaper(on.Told(p.Skill), on.Samples(p.Early, firstOnly: true)[0], on.Samples(p.Late, firstOnly: true)[0], on.Told(p.Words)))] : [],
            Has(PortfolioPart.Log) ? [.. Log(ledger, _ => true).Select(l => l with { What = on.Told(l.What), Subjects = on.Told(l.Subjects) })] : null,
            Has(PortfolioPart.Law) ? portfolio.Standing.Section : null,
            full, paper);
    }

    public SubjectPaper Subject(PortfolioSubject subject, bool missing) => new(
        Told(subject.Subject.Name), subject.Subject.Topic ? "" : Told(subject.Subject.ReadAs), [.. subject.Evidence.Sentences.Select(Told)], Told(subject.Narrative),
        [.. (full && !subject.Subject.Topic ? subject.Evidence.Pieces : subject.Samples).Where(Shows).SelectMany(p => Samples(p, firstOnly: !full))], missing ? [.. subject.Evidence.Missing.Select(Told)] : []);

    /// <summary>Whether a piece is shown at all: outside the family only what is this child’s alone and shows no face.</summary>
    public bool Shows(Piece piece) => bounds is null || (piece.Learners.Count == 1 && !piece.FacesOut);

    private string Told(string text) => bounds?.Names.TakenOut(text) ?? text;

    /// <summary>A policy, a year and a subject are named by the family, and so may name a child.</summary>
    private HoursReport Told(HoursReport report) => bounds is null ? report : report with
    {
        Heading = report.Heading with { Year = Told(report.Heading.Year), CountingPolicy = Told(report.Heading.CountingPolicy) },
        Subjects = [.. report.Subjects.Select(s => s with { Subject = Told(s.Subject) })],
    };

    private ReadingList Told(ReadingList list) => bounds is null ? list : list with { Lines = [.. list.Lines.Select(l => l with { Note = "" })] };

    /// <summary>A piece as it stands on paper: a PDF as its pages, what cannot be shown as words.</summary>
    public IReadOnlyList<SamplePaper> Samples(Piece piece, bool firstOnly)
    {
        var part = SampleSpread.PartOf(piece.Date, year).ToString();
        SamplePaper Unshown(string kind, string why) => new(null, 1, piece.Date, kind, part, Told(piece.Caption), why);
        var file = files[piece.Hash];
        if (piece.Kind is PieceKind.Sound or PieceKind.Video)
            return [Unshown(piece.Kind == PieceKind.Sound ? "sound" : "video", $"A {(piece.Kind == PieceKind.Sound ? "sound recording" : "video")}, kept by the family.")];
        if (piece.FacesOut)
            return [Unshown("photo", "A photo, kept by the family: it shows faces.")];
        if (!held.Contains(piece.Hash))
            return [Unshown("photo", "Its file is not on this server any more.")];
        if (file.Kind != StoredKind.Pdf)
            return [new SamplePaper(piece.Hash, 1, piece.Date, "photo", part, Told(piece.Caption))];
        var pages = Math.Min(file.Pages, firstOnly ? 1 : MostPages);
        return [.. Enumerable.Range(1, pages).Select(p => new SamplePaper(
            piece.Hash, p, piece.Date, file.Pages == 1 ? "paper" : string.Create(CultureInfo.InvariantCulture, $"page {p} of {file.Pages}"), part, p == 1 ? Told(piece.Caption) : ""))];
    }

    /// <summary>The entries that have minutes in the subjects asked for, with these minutes alone.</summary>
    public static IReadOnlyList<LogPaper> Log(HoursLedger ledger, Func<Credit, bool> which)
    {
        var names = ledger.Subjects.ToDictionary(s => s.Id, s => s.Name);
        var credits = ledger.Credits.Where(c => c.Minutes > Minutes.Zero && which(c)).ToLookup(c => c.EntryId, c => names[c.SubjectId]);
        var minutes = ledger.ByEntry(which);
        return [.. ledger.Entries.Where(e => minutes.ContainsKey(e.Id)).Select(e => new LogPaper(e.Date, e.What, string.Join(", ", credits[e.Id]), minutes[e.Id], RecordWords.Of(e.Place)))];
    }
}
