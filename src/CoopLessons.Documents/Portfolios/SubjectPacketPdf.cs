using CoopLessons.Documents.Pdf;
using CoopLessons.Documents.Placing;
using CoopLessons.Documents.Reports;

namespace CoopLessons.Documents.Portfolios;

/// <summary>What a family has of one subject for one learner between two dates, and what it has not, as a tagged PDF.</summary>
public static class SubjectPacketPdf
{
    private const double Body = SubjectSection.Body;
    private const double Figures = 8.5;
    private const double Label = 92;

    /// <exception cref="SourceUnreadableException">A sample's file is not what it was when it was brought.</exception>
    public static void Write(SubjectPacketPapers papers, PaperFiles files, CancellationToken ct) => RoomyThread.Run(() =>
    {
        var subject = ReportWords.Given(PlainText.OneLine(papers.Subject.Name));
        var learner = ReportWords.Given(PlainText.OneLine(papers.Learner));
        var titles = new DocumentTitles(
            $"{subject}: {learner}, {papers.Asked}", papers.Family, $"{SealWords.Foot(papers.Fingerprint, papers.Seal)} · Made on {ReportWords.Date(papers.MadeOn)} · {subject} · {learner}", papers.MadeOn);
        var paper = PortfolioPdf.PaperOf(papers.Paper);
        PaperDocument.Write(paper, [.. Slices(papers, paper, new PictureShapes(files.Sources), subject)], titles, PortfolioPdf.Writing(files), ct);
    });

    private static IEnumerable<Slice> Slices(SubjectPacketPapers papers, Paper paper, PictureShapes shapes, string subject)
    {
        yield return Prose.Title(WrappedText.Shortened(PrintableText.Of(subject, NotoSans.Bold(20)), NotoSans.Bold(20), paper.TextWidth));
        List<PaperRow> facts =
        [
            new(["Learner", ReportWords.Given(papers.Learner)]), new(["Family", ReportWords.Given(papers.Family)]), new(["Days asked for", papers.Asked.ToString()]),
        ];
        if (papers.Total is { } total)
            facts.Add(new(["Time", $"{total.Clock} in hours and minutes"]));
        foreach (var slice in new PaperTable([new("", Label, Names: true), new("", paper.TextWidth - Label)], facts, paper.Margin, Body).Slices(before: 8, whole: 0))
            yield return slice;
        // What is missing stands before the samples: a reader should not have to look for it.
        yield return Prose.Heading("What is not here");
        foreach (var slice in papers.Subject.Missing.Count == 0
            ? Prose.Paragraph("Nothing that this program knows to look for is missing.", paper, Body)
            : papers.Subject.Missing.SelectMany(m => Prose.Paragraph(m, paper, Body)))
            yield return slice;
        yield return Prose.Heading("What is here");
        foreach (var slice in Prose.Paragraph(string.Join(' ', papers.Subject.Facts), paper, Body).Concat(SubjectSection.Own(papers.Subject.Narrative, paper)))
            yield return slice;
        foreach (var slice in SubjectSection.Pictures(papers.Subject.Samples, paper, shapes, full: false))
            yield return slice;
        if (papers.Books.Count > 0)
        {
            yield return Prose.Heading("Books of these days");
            foreach (var slice in BookTable.Table(papers.Books, paper, Figures))
                yield return slice;
        }

        if (papers.Log.Count > 0)
        {
            foreach (var slice in LogTable.Of(papers.Log, paper, Figures))
                yield return slice;
        }

        yield return Prose.Heading("About this paper");
        foreach (var slice in Prose.Paragraph($"Made on {ReportWords.Date(papers.MadeOn)}{(papers.Total is null ? "" : $" from {ReportWords.Entries(papers.Log.Count)}")}. {SealWords.RestsOn(papers.Fingerprint, papers.Seal)}", paper, Body, keepWithNext: true))
            yield return slice;
        foreach (var slice in Prose.Paragraph(ReportWords.Caution, paper, Body))
            yield return slice;
    }
}
