using CoopLessons.Core.Credits;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Documents.Pdf;

namespace CoopLessons.Documents.Reports;

/// <summary>Course descriptions as a tagged PDF. The same descriptions give the same bytes.</summary>
public static class CourseDescriptionsPdf
{
    private const string Title = "Course descriptions";
    private const double Body = 10;

    public static byte[] Write(CourseDescriptions all, PaperSize size)
    {
        var paper = size == PaperSize.A4 ? Paper.A4Portrait : Paper.LetterPortrait;
        List<Slice> page = [Prose.Title(Title)];
        page.AddRange(Prose.Paragraph($"{ReportWords.Given(all.Heading.FullName)}, {ReportWords.Given(all.Heading.School)}", paper, Body));
        if (all.Courses.Count == 0)
            page.AddRange(Prose.Paragraph("No course has a description yet.", paper, Body));
        foreach (var course in all.Courses)
        {
            page.AddRange(Prose.Subheading(course.Line.Title, paper, 12, PdfSharp.UniversalAccessibility.PdfBlockLevelElementTag.Heading2));
            page.AddRange(Prose.Paragraph(About(course), paper, Body - 1, keepWithNext: true));
            foreach (var line in PlainText.Clean(course.Text).Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
                page.AddRange(Prose.Paragraph(line, paper, Body));
        }

        return PaperDocument.Write(paper, page, new DocumentTitles(
            $"{Title}: {ReportWords.Given(all.Heading.FullName)}", all.Heading.School,
            $"Made on {ReportWords.Date(all.MadeOn)} · {PlainText.OneLine(all.Heading.School)} · {PlainText.OneLine(all.Heading.FullName)}", all.MadeOn));
    }

    private static string About(DescribedCourse course)
    {
        var line = course.Line;
        string[] parts =
        [
            string.Join(", ", course.Years), CreditWords.Of(line.Area), line.Level == CourseLevel.Usual ? "" : CreditWords.Of(line.Level),
            line.Awarded is { Hundredths: > 0 } awarded ? $"{awarded.Text} credit by {CreditWords.Of(line.Basis)}" : "", line.Studied > Minutes.Zero ? $"{line.Studied.Clock} hours" : "", $"mark: {line.Mark}",
        ];
        return string.Join(" · ", parts.Where(p => p.Length > 0));
    }
}
