using CoopLessons.Documents.Pdf;
using CoopLessons.Documents.Placing;
using CoopLessons.Documents.Reports;

namespace CoopLessons.Documents.Portfolios;

/// <summary>One subject on paper: facts, the parent's sentences, samples, and what is not there.</summary>
internal static class SubjectSection
{
    public const double Body = 9.5;
    private const double Caption = 8.5;

    /// <param name="full">Pictures stand two in a row and large, not three and small.</param>
    public static IEnumerable<Slice> Of(SubjectPaper subject, Paper paper, PictureShapes shapes, bool full)
    {
        foreach (var slice in Heading(subject, paper))
            yield return slice;
        if (subject.ReadAs.Length > 0)
        {
            foreach (var slice in Prose.Paragraph($"Our subjects that are read as this: {subject.ReadAs}.", paper, Body, keepWithNext: true))
                yield return slice;
        }

        foreach (var slice in Prose.Paragraph(string.Join(' ', subject.Facts), paper, Body, keepWithNext: subject.Samples.Count > 0 && subject.Narrative.Length == 0))
            yield return slice;
        foreach (var slice in Own(subject.Narrative, paper))
            yield return slice;
        foreach (var slice in Pictures(subject.Samples, paper, shapes, full))
            yield return slice;
        foreach (var slice in subject.Elsewhere.SelectMany(e => Prose.Paragraph(e, paper, Body)))
            yield return slice;
        if (subject.Missing.Count > 0)
        {
            foreach (var slice in Prose.Paragraph("Not here: " + string.Join(' ', subject.Missing), paper, Body))
                yield return slice with { Before = slice.Before > 0 ? 8 : 0 };
        }
    }

    /// <summary>What a parent wrote: a paragraph for each that was typed as one.</summary>
    public static IEnumerable<Slice> Own(string text, Paper paper) =>
        PlainText.Clean(text).Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).SelectMany(p => Prose.Paragraph(p, paper, Body));

    public static IEnumerable<Slice> Pictures(IReadOnlyList<SamplePaper> samples, Paper paper, PictureShapes shapes, bool full)
    {
        var columns = full ? 2 : 3;
        return PictureRows.Of([.. samples.Select(s => Picture(s, shapes))], paper, columns, full ? 230 : 136, Caption);
    }

    public static PaperPicture Picture(SamplePaper sample, PictureShapes shapes)
    {
        var date = ReportWords.Date(sample.Date);
        var head = sample.Part.Length > 0 ? $"{sample.Part}: {date}" : date;
        var caption = sample.Caption.Length > 0 ? $"“{PlainText.OneLine(sample.Caption)}”" : "";
        var alt = caption.Length > 0 ? $"{Capital(sample.Kind)} of {date}: {caption}" : $"{Capital(sample.Kind)} of {date}, without a caption";
        var kind = sample.Kind is "photo" ? "" : $" ({sample.Kind})";
        return new PaperPicture(sample.Hash is { } hash ? (hash, sample.Page) : null, sample.Hash is null ? null : shapes.Of(sample.Hash), sample.Why, alt, head + kind, caption);
    }

    private static IEnumerable<Slice> Heading(SubjectPaper subject, Paper paper)
    {
        var name = ReportWords.Given(PlainText.OneLine(subject.Name));
        return Prose.Subheading(name, paper, 3).Select((s, i) => i == 0 ? s with { Bookmark = new Bookmark(name, 2) } : s);
    }

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
