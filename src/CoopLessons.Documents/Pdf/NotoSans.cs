using PdfSharp.Drawing;
using PdfSharp.Fonts;

namespace CoopLessons.Documents.Pdf;

/// <summary>The one typeface of our paper: Noto Sans, regular and bold, carried inside this assembly.</summary>
internal static class NotoSans
{
    private const string Family = "Noto Sans";
    private static readonly XGraphics Ruler;

    static NotoSans()
    {
        GlobalFontSettings.FontResolver ??= new Carried();
        Ruler = XGraphics.CreateMeasureContext(new XSize(1000, 1000), XGraphicsUnit.Point, XPageDirection.Downwards);
        SquareWidth = (int)Math.Round(Width(PrintableText.Square.ToString(), Regular(1000)));
    }

    public static XFont Regular(double size) => new(Family, size, XFontStyleEx.Regular, XPdfFontOptions.UnicodeDefault);

    public static XFont Bold(double size) => new(Family, size, XFontStyleEx.Bold, XPdfFontOptions.UnicodeDefault);

    /// <summary>
    /// Whether the face can show the code point as it is: it has a glyph of its own for it, and the letters of its writing
    /// system need no joining or turning round, which nothing here does.
    /// </summary>
    public static bool Has(int codePoint, XFont font) =>
        GlyphHelper.GlyphIndexFromCodePoint(codePoint, font) != 0 && (!System.Text.Rune.TryCreate(codePoint, out var rune) || WritingSystem.Of(rune) is null);

    /// <summary>Width of the square that both faces show for a missing glyph, in thousandths of the size.</summary>
    public static int SquareWidth { get; }

    /// <summary>Width in points.</summary>
    public static double Width(string text, XFont font)
    {
        // One drawing surface for measuring serves every thread in turn.
        lock (Ruler)
            return text.Length == 0 ? 0 : Ruler.MeasureString(text, font).Width;
    }

    private sealed class Carried : IFontResolver
    {
        public FontResolverInfo ResolveTypeface(string familyName, bool isBold, bool isItalic) =>
            new(isBold ? "NotoSans-Bold.ttf" : "NotoSans-Regular.ttf");

        public byte[] GetFont(string faceName)
        {
            using var stream = typeof(NotoSans).Assembly.GetManifestResourceStream(faceName)
                ?? throw new InvalidOperationException($"The font {faceName} is missing from the assembly.");
            using var bytes = new MemoryStream();
            stream.CopyTo(bytes);
            return bytes.ToArray();
        }
    }
}
