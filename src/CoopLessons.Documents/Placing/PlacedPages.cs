using System.Globalization;
using System.Text;
using CoopLessons.Documents.Pdf;
using PdfSharp.Pdf;

namespace CoopLessons.Documents.Placing;

/// <summary>Puts the sources' pages into the places that were kept for them, one source after the other.</summary>
internal sealed class PlacedPages(PdfDocument document, PagePlaces places, CarriedStreams carried)
{
    /// <exception cref="SourceUnreadableException">A file cannot be read, or has not the pages that are asked for.</exception>
    public void Fill(IReadOnlyDictionary<string, PageSource> sources, Action<PaperProgress>? tell, CancellationToken ct)
    {
        var pictures = new Dictionary<int, PdfDictionary>();
        foreach (var picture in document.Internals.GetAllObjects().OfType<PdfDictionary>().Where(d => d.Elements.ContainsKey(PagePlaces.Mark)))
        {
            pictures[picture.Elements.GetInteger(PagePlaces.Mark)] = picture;
            picture.Elements.Remove(PagePlaces.Mark);
        }

        var numbered = places.All.Select((place, number) => (Place: place, Number: number));
        var files = numbered.GroupBy(p => p.Place.Hash).Select(g => (g.Key, g.GroupBy(p => p.Place.Page).ToDictionary(p => p.Key))).ToList();
        for (var i = 0; i < files.Count; i++)
        {
            var (hash, wanted) = files[i];
            tell?.Invoke(new PaperProgress(string.Create(CultureInfo.InvariantCulture, $"Picture {i + 1} of {files.Count} is put in"), PaperDocument.DrawnShare + (1 - PaperDocument.DrawnShare) * i / files.Count));
            try
            {
                using var taken = TakenPages.From(document, sources[hash], carried);
                foreach (var (page, there) in wanted)
                {
                    ct.ThrowIfCancellationRequested();
                    var source = taken.Take(page);
                    foreach (var (place, number) in there)
                        Put(source, place, pictures[number]);
                }
            }
            catch (InvalidDataException fault)
            {
                throw new SourceUnreadableException(hash, fault);
            }
        }
    }

    private void Put(TakenPage source, PagePlace place, PdfDictionary picture)
    {
        var resources = new PdfDictionary(document);
        var pages = new PdfDictionary(document);
        pages.Elements["/Pg"] = source.Content.Reference;
        resources.Elements["/XObject"] = pages;
        var drawing = new StringBuilder(Fitted(source, place));
        if (!place.Colour)
        {
            resources.Elements["/ExtGState"] = Washed(drawing, place);
            picture.Elements["/Group"] = GroupOfItsOwn();
        }

        picture.Elements["/Resources"] = resources;
        picture.CreateStream(Encoding.ASCII.GetBytes(drawing.ToString()));
    }

    /// <summary>
    /// White in the blend mode Saturation keeps how light everything beneath is and takes its hue away (ISO 32000-1,
    /// 11.3.5.3). The picture is a group of its own in red, green and blue, so that nothing else on the page is touched.
    /// </summary>
    private PdfDictionary Washed(StringBuilder drawing, PagePlace place)
    {
        drawing.Append(CultureInfo.InvariantCulture, $"/Wash gs 1 1 1 rg 0 0 {place.Width:0.####} {place.Height:0.####} re f\n");
        var wash = new PdfDictionary(document);
        wash.Elements.SetName("/Type", "/ExtGState");
        wash.Elements.SetName("/BM", "/Saturation");
        var states = new PdfDictionary(document);
        states.Elements["/Wash"] = wash;
        return states;
    }

    private PdfDictionary GroupOfItsOwn()
    {
        var group = new PdfDictionary(document);
        group.Elements.SetName("/Type", "/Group");
        group.Elements.SetName("/S", "/Transparency");
        group.Elements.SetName("/CS", "/DeviceRGB");
        group.Elements.SetBoolean("/I", true);
        return group;
    }

    /// <summary>As large as the place allows, a page no larger than it is; turned where it is wide and the place is high.</summary>
    private static string Fitted(TakenPage source, PagePlace place)
    {
        var sideways = source.Turn % 180 != 0;
        var (wide, high) = sideways ? (source.Height, source.Width) : (source.Width, source.Height);
        var turn = source.Turn;
        if (!place.Upright && wide > high != place.Width > place.Height && wide != high)
            (turn, wide, high) = ((turn + 90) % 360, high, wide);
        var scale = Math.Min(Math.Min(place.Width / wide, place.Height / high), source.Largest);
        var (x, y) = place.Upright ? (0, 0) : ((place.Width - wide * scale) / 2, (place.Height - high * scale) / 2);
        var (left, bottom, w, h) = (source.Left, source.Bottom, source.Width, source.Height);
        // Clockwise, as a page's own rotation counts.
        var (a, b, c, d, e, f) = turn switch
        {
            0 => (scale, 0.0, 0.0, scale, x - scale * left, y - scale * bottom),
            90 => (0.0, -scale, scale, 0.0, x - scale * bottom, y + scale * (w + left)),
            180 => (-scale, 0.0, 0.0, -scale, x + scale * (w + left), y + scale * (h + bottom)),
            _ => (0.0, scale, -scale, 0.0, x + scale * (h + bottom), y - scale * left),
        };
        var inner = source.IsImage ? string.Create(CultureInfo.InvariantCulture, $"{w:0.####} 0 0 {h:0.####} 0 0 cm ") : "";
        return string.Create(CultureInfo.InvariantCulture, $"q {a:0.######} {b:0.######} {c:0.######} {d:0.######} {e:0.####} {f:0.####} cm {inner}/Pg Do Q\n");
    }
}
