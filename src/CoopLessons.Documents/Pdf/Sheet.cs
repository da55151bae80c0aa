using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;

namespace CoopLessons.Documents.Pdf;

/// <summary>One sheet while it is drawn: every mark on it is either part of the document's structure or marked as decoration.</summary>
internal sealed class Sheet(Paper paper, XGraphics graphics, StructureBuilder structure)
{
    private static readonly XColor Ink = XColor.FromArgb(0x22, 0x26, 0x2B);

    // The same ink, thinner: still above 7:1 against white.
    private static readonly XColor Quiet = XColor.FromArgb(0x55, 0x5A, 0x60);
    private static readonly XColor Hair = XColor.FromArgb(0xC4, 0xC7, 0xCB);

    public Paper Paper => paper;

    public void Open(PdfBlockLevelElementTag tag) => structure.BeginElement(tag);

    public void Close() => structure.End();

    /// <summary>A heading cell that says for which cells it stands: <c>Row</c> or <c>Column</c> (ISO 32000-1, 14.8.5.7).</summary>
    public void OpenHeadingCell(string scope)
    {
        structure.BeginElement(PdfBlockLevelElementTag.TableHeaderCell);
        structure.CurrentStructureElement.TableAttributes.Elements.SetName("/Scope", "/" + scope);
    }

    public void Text(string text, XFont font, double x, double baseline, bool quiet = false)
    {
        if (text.Length > 0)
            graphics.DrawString(text, font, new XSolidBrush(quiet ? Quiet : Ink), x, baseline);
    }

    public void Decoration(Action draw)
    {
        structure.BeginArtifact();
        draw();
        structure.End();
    }

    public void Rule(double x, double width, double y, bool strong = false) =>
        Decoration(() => graphics.DrawLine(new XPen(strong ? Ink : Hair, strong ? 0.75 : 0.5), x, y, x + width, y));
}
