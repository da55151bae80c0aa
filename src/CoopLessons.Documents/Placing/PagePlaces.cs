using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.Pdf.Advanced;

namespace CoopLessons.Documents.Placing;

/// <summary>Where a source's page goes: into a box of a size, with its colours or without.</summary>
/// <param name="Page">From 1.</param>
/// <param name="Upright">Never turned, and at the box's left and lower edge; else it is turned where that makes it larger, and stands in the middle.</param>
internal sealed record PagePlace(string Hash, int Page, bool Colour, double Width, double Height, bool Upright = false);

/// <summary>
/// Empty pictures that are drawn wherever a source's page will stand. Tagged drawing takes no pages from other files, so
/// that they are put in once the document is drawn; like places are one picture.
/// </summary>
internal sealed class PagePlaces(PdfDocument document)
{
    /// <summary>Marks an empty picture in the drawn document with the number of its place.</summary>
    public const string Mark = "/CoopPlace";

    private readonly Dictionary<PagePlace, XForm> _pictures = [];
    private readonly List<PagePlace> _places = [];
    private readonly HashSet<PdfDictionary> _marked = new(ReferenceEqualityComparer.Instance);

    /// <summary>By number.</summary>
    public IReadOnlyList<PagePlace> All => _places;

    public XForm Of(PagePlace place)
    {
        if (_pictures.TryGetValue(place, out var known))
            return known;
        var picture = new XForm(document, new XSize(place.Width, place.Height));
        picture.DrawingFinished();
        _places.Add(place);
        return _pictures[place] = picture;
    }

    /// <summary>Marks the picture that was drawn last, if the page has one that bears no mark yet.</summary>
    public void Note(PdfPage page)
    {
        var pictures = page.Resources.Elements.GetDictionary("/XObject");
        foreach (var key in pictures?.Elements.Keys.ToList() ?? [])
        {
            if (pictures!.Elements[key] is PdfReference { Value: PdfDictionary picture } && _marked.Add(picture))
                picture.Elements.SetInteger(Mark, _places.Count - 1);
        }
    }
}
