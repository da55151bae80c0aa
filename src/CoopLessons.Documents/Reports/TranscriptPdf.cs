using System.Globalization;
using CoopLessons.Core.Credits;
using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Documents.Pdf;
using PdfSharp.UniversalAccessibility;

namespace CoopLessons.Documents.Reports;

/// <summary>
/// A transcript as a tagged PDF of one page. The type is set as large as the page allows, down to seven points; a
/// transcript that does not fit then is not written. The same transcript gives the same bytes.
/// </summary>
public static class TranscriptPdf
{
    private const string Title = "High school transcript";
    private const double Largest = 10;
    private const double Smallest = 7;
    private const double Step = 0.5;

    /// <returns>Null where it does not fit on one page.</returns>
    public static byte[]? Write(Transcript transcript, PaperSize size)
    {
        // Narrower margins than other papers have: everything must stand on one sheet.
        var paper = size == PaperSize.A4 ? Paper.A4Portrait with { Margin = 40, Foot = 20 } : Paper.LetterPortrait with { Margin = 40, Foot = 20 };
        for (var type = Largest; type >= Smallest; type -= Step)
        {
            var page = Page(transcript, paper, type);
            if (Flow.Over(paper, page).Count == 1)
                return PaperDocument.Write(paper, page, new DocumentTitles(
                    $"{Title}: {ReportWords.Given(transcript.Heading.FullName)}", transcript.Heading.School,
                    $"Made on {ReportWords.Date(transcript.MadeOn)} · {PlainText.OneLine(transcript.Heading.School)} · {PlainText.OneLine(transcript.Heading.FullName)}", transcript.MadeOn));
        }

        return null;
    }

    private static List<Slice> Page(Transcript t, Paper paper, double type)
    {
        // White between rows shrinks with the type.
        var pad = type - 6;
        List<Slice> page = [Prose.Title(Title)];
        page.AddRange(Facts(Head(t.Heading), paper, type, pad).Slices(before: 4, whole: 0));
        page.AddRange(t.Courses == 0
            ? Prose.Paragraph("No course is written down yet.", paper, type)
            : new PaperTable(Columns(paper.TextWidth), [.. t.Years.SelectMany(Rows)], paper.Margin, type, pad).Slices(before: 8, whole: 0));
        page.AddRange(Facts(Sums(t), paper, type, pad).Slices(before: 8, whole: 0));
        foreach (var line in Notes(t))
            page.AddRange(Prose.Paragraph(line, paper, Math.Max(Smallest, type - 1)));
        page.Add(Signature(t.Heading.Signer, paper, Math.Max(Smallest, type - 1)));
        return page;
    }

    private static IEnumerable<(string Name, string Text)> Head(TranscriptHeading head)
    {
        yield return ("Learner", ReportWords.Given(head.FullName));
        yield return ("School", ReportWords.Given(head.School));
        if (head.Born is { } born)
            yield return ("Born", ReportWords.Date(born));
        if (head.Address.Length > 0)
            yield return ("Address", PlainText.OneLine(head.Address));
        if (head.Graduated is { } graduated)
            yield return ("Graduated", ReportWords.Date(graduated));
    }

    private static IEnumerable<(string Name, string Text)> Sums(Transcript t)
    {
        yield return ("Credits", $"{t.Awarded.Text} in all" + (t.ByArea.Count > 1 ? $": {string.Join(", ", t.ByArea.Select(a => $"{CreditWords.Of(a.Area)} {a.Awarded.Text}"))}" : ""));
        var over = $"over {t.Average.Over.Text} credits with a mark";
        yield return ("GPA, unweighted", t.Average.Unweighted is { } plain ? $"{GradeAverage.Text(plain)} {over}" : "no course has a mark yet");
        yield return ("GPA, weighted", t.Average.Weighted is { } weighted ? $"{GradeAverage.Text(weighted)} {over}" : "no course has a mark yet");
    }

    private static IEnumerable<string> Notes(Transcript t)
    {
        yield return $"Marks: {string.Join(" · ", t.Scale.Steps.Select(Mark))}. The weighted average adds {GradeAverage.Text(t.Scale.HonorsAdds)} for honors and {GradeAverage.Text(t.Scale.CollegeAdds)} for college level to marks with points. "
            + "GPA is the sum of points times credits over the sum of credits, rounded once to two decimals; beside a year it is unweighted. Courses passed without a mark or in progress carry no points; a mark without points counts over the credit that was attempted.";
        if (t.Average.Unknown > 0)
            yield return t.Average.Unknown == 1 ? "One mark is not on this scale and is in no average." : string.Create(CultureInfo.InvariantCulture, $"{t.Average.Unknown} marks are not on this scale and are in no average.");
        if (t.Methods.Count > 0)
            yield return $"Credits: {string.Join(" ", t.Methods)}";
    }

    private static string Mark(GradeStep step) =>
        $"{step.Mark} {GradeAverage.Text(step.Points)}{(step.FromPercent is { } percent ? string.Create(CultureInfo.InvariantCulture, $" (from {percent} %)") : "")}";

    /// <summary>Facts with their names, two beside each other where both are short.</summary>
    private static PaperTable Facts(IEnumerable<(string Name, string Text)> facts, Paper paper, double type, double pad) =>
        new([new("", 78 + type, Names: true), new("", paper.TextWidth - 78 - type)], [.. facts.Select(f => new PaperRow([f.Name, f.Text]))], paper.Margin, type, pad);

    private static List<PaperColumn> Columns(double width) =>
    [
        new("Course", width * 0.34, Names: true), new("Area", width * 0.19), new("Level", width * 0.125), new("Credit rests on", width * 0.15), new("Credit", width * 0.075, Figures: true),
        new("Mark", width * 0.12, Figures: true),
    ];

    private static IEnumerable<PaperRow> Rows(TranscriptYear year)
    {
        var average = year.Average.Unweighted is { } gpa ? $"GPA {GradeAverage.Text(gpa)}" : "";
        yield return new PaperRow([year.Grade is { } grade ? string.Create(CultureInfo.InvariantCulture, $"{year.Name}, grade {grade}") : year.Name, "", "", average, year.Awarded.Text, ""], Strong: true);
        foreach (var line in year.Lines)
            yield return new PaperRow([PlainText.OneLine(line.Title), CreditWords.Of(line.Area), line.Level == CourseLevel.Usual ? "" : CreditWords.Of(line.Level), CreditWords.Of(line.Basis), line.Awarded?.Text ?? "–", line.Mark]);
    }

    private static Slice Signature(string signer, Paper paper, double type)
    {
        var font = NotoSans.Regular(type);
        var (date, gap) = (paper.TextWidth * 0.68, 12.0);
        var under = WrappedText.Shortened(PrintableText.Of($"Signature: {PlainText.OneLine(signer)}", font), font, date - gap);
        return new Slice(30 + type * 1.4, (sheet, top) =>
        {
            sheet.Rule(paper.Margin, date - gap, top + 28, strong: true);
            sheet.Rule(paper.Margin + date, paper.TextWidth - date, top + 28, strong: true);
            sheet.Open(PdfBlockLevelElementTag.Paragraph);
            sheet.Text(under, font, paper.Margin, top + 28 + type * 1.2);
            sheet.Text("Date", font, paper.Margin + date, top + 28 + type * 1.2);
            sheet.Close();
        });
    }
}
