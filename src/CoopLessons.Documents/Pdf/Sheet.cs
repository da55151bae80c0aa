using CoopLessons.Documents.Placing;
using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;

namespace CoopLessons.Documents.Pdf;

/// <summary>One sheet while it is drawn: every mark on it is either part of the document's structure or marked as decoration.</summary>
/// <param name="pictures">Where pictures of other files are put; null in a document without any.</param>
internal sealed class Sheet(Paper paper, XGraphics graphics, StructureBuilder structure, Inks inks, PagePlaces? pictures = null)
{
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
            graphics.DrawString(text, font, new XSolidBrush(quiet ? inks.Quiet : inks.Ink), x, baseline);
    }

    /// <summary>A picture with what it shows in words, for who cannot see it.</summary>
    /// <param name="box">Where it stands, from the top of the sheet.</param>
    public void Picture(XForm picture, XRect box, string inWords)
    {
        // The structure knows places as the page does: from the bottom.
        structure.BeginElement(PdfIllustrationElementTag.Figure, inWords, new XRect(box.X, paper.Height - box.Bottom, box.Width, box.Height));
        graphics.DrawImage(picture, box);
        structure.End();
    }

    /// <summary>A picture, or a page, of another file.</summary>
    /// <inheritdoc cref="Picture"/>
    public void Placed(PagePlace place, XRect box, string inWords)
    {
        var places = pictures ?? throw new InvalidOperationException("This document was begun without a place for pictures.");
        Picture(places.Of(place), box, inWords);
        places.Note(graphics.PdfPage!);
    }

    public void Decoration(Action draw)
    {
        structure.BeginArtifact();
        draw();
        structure.End();
    }

    public void Frame(XRect box) => Decoration(() => graphics.DrawRectangle(new XPen(inks.Hair, 0.5), box));

    public void Rule(double x, double width, double y, bool strong = false) =>
        Decoration(() => graphics.DrawLine(new XPen(strong ? inks.Ink : inks.Hair, strong ? 0.75 : 0.5), x, y, x + width, y));
}

/// <summary>The inks of a document. The quieter one still stands above 7:1 against white.</summary>
internal sealed record Inks(XColor Ink, XColor Quiet, XColor Hair)
{
    public static Inks Usual { get; } = new(XColor.FromArgb(0x22, 0x26, 0x2B), XColor.FromArgb(0x55, 0x5A, 0x60), XColor.FromArgb(0xC4, 0xC7, 0xCB));

    /// <summary>Without any hue, so that a printer takes no coloured ink for them.</summary>
    public static Inks Grey { get; } = new(XColor.FromArgb(0x22, 0x22, 0x22), XColor.FromArgb(0x55, 0x55, 0x55), XColor.FromArgb(0xBB, 0xBB, 0xBB));
}
