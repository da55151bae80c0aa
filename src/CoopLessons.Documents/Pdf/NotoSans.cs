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
    }

    public static XFont Regular(double size) => new(Family, size, XFontStyleEx.Regular);

    public static XFont Bold(double size) => new(Family, size, XFontStyleEx.Bold);

    /// <summary>Whether the face has a glyph of its own for the code point.</summary>
    public static bool Has(int codePoint, XFont font) => GlyphHelper.GlyphIndexFromCodePoint(codePoint, font) != 0;

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
