using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements.Papers;
using CoopLessons.Core.Sealing;
using CoopLessons.Documents.Pdf;

namespace CoopLessons.Documents.Reports;

/// <summary>One learner's hours as a tagged PDF on US Letter paper. The same report and law give the same bytes.</summary>
public static class HoursPdf
{
    private const double Body = 9.5;
    private const double Figures = 8.5;

    /// <param name="law">Null where no pathway was chosen: the paper then says nothing of the law's figures.</param>
    /// <param name="seal">What the paper says of the year's sealing; null in an open year.</param>
    public static byte[] Write(HoursReport report, LawSection? law = null, SealMark? seal = null)
    {
        var paper = MonthTables.FitsPortrait(report, Figures) ? Paper.LetterPortrait : Paper.LetterLandscape;
        var page = new List<Slice>();
        page.Add(Prose.Title(ReportWords.Title));
        page.AddRange(ReportFacts.Of(report, paper, Body));
        page.AddRange(MonthTables.Of(report, paper, Figures));
        page.AddRange(SubjectTables.Days(report, paper, Figures));
        page.AddRange(SubjectTables.Places(report, paper, Figures));
        if (report.Questions.Count > 0)
        {
            page.Add(Prose.Heading("Questions still open"));
            page.AddRange(Prose.Paragraph("The minutes in question are counted as they were written.", paper, Body, keepWithNext: true));
            page.AddRange(Prose.List(report.Questions, paper, Body));
        }

        page.Add(Prose.Heading("About this report"));
        page.AddRange(Prose.Paragraph(
            $"Made on {ReportWords.Date(report.Heading.MadeOn)} from {ReportWords.Entries(report.Entries)}. {SealWords.RestsOn(report.Fingerprint, seal)}",
            paper, Body, keepWithNext: true));
        page.AddRange(Prose.Paragraph(ReportWords.Caution, paper, Body));
        if (law is not null)
            page.AddRange(LawPdf.Of(law, paper, Body, Figures));

        var heading = report.Heading;
        return PaperDocument.Write(paper, page, new DocumentTitles(
            $"{ReportWords.Title}: {ReportWords.Given(heading.Learner)}, {heading.Year}",
            heading.Family,
            $"{SealWords.Foot(report.Fingerprint, seal)} · Made on {ReportWords.Date(heading.MadeOn)} · {PlainText.OneLine(heading.Year)} · {ReportWords.Given(PlainText.OneLine(heading.Learner))}",
            heading.MadeOn));
    }
}
