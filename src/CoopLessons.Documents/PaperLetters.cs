using System.Text;
using CoopLessons.Documents.Pdf;

namespace CoopLessons.Documents;

/// <summary>Which letters our papers can print: those of Noto Sans, that is Latin with Vietnamese, Greek and Cyrillic.</summary>
public static class PaperLetters
{
    /// <summary>How a text stands on paper: the same where every letter can be printed.</summary>
    public static string OnPaper(string text) => PrintableText.Of(PlainText.OneLine(text), NotoSans.Regular(10));

    /// <summary>Whether the text stands on paper as it was written, but for spaces and marks without a shape.</summary>
    public static bool CanPrint(string text)
    {
        var font = NotoSans.Regular(10);
        return PlainText.OneLine(text).Normalize(NormalizationForm.FormC).EnumerateRunes().All(r => Rune.IsWhiteSpace(r) || PrintableText.IsShapeless(r) || NotoSans.Has(r.Value, font));
    }
}
