using System.IO.Compression;
using CoopLessons.Documents.Pdf;
using PdfSharp.Pdf;
using PdfSharp.Pdf.Advanced;
using PdfSharp.Pdf.IO;

namespace CoopLessons.Documents.Placing;

/// <summary>
/// Pages of a PDF as forms of another one. A page's content goes over as it is, without being inflated; fonts and images
/// that several pages share go over once.
/// </summary>
internal sealed class PagesOfPdf : TakenPages
{
    // A point on paper stays a point.
    private const double OwnSize = 1;

    private readonly PdfDocument _document;
    private readonly CarriedStreams _carried;
    private readonly FileStream? _file;
    private readonly PdfDocument _source;
    private readonly HashSet<PdfObject> _before;
    private readonly HashSet<PdfObject> _leftOver = new(ReferenceEqualityComparer.Instance);

    public PagesOfPdf(PdfDocument document, string path, CarriedStreams carried)
        : this(document, new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read), carried)
    {
    }

    private PagesOfPdf(PdfDocument document, FileStream file, CarriedStreams carried)
        : this(document, Open(file), carried) => _file = file;

    /// <param name="source">Opened to import from; closed with this.</param>
    public PagesOfPdf(PdfDocument document, PdfDocument source, CarriedStreams carried)
    {
        (_document, _source, _carried) = (document, source, carried);
        _before = new HashSet<PdfObject>(document.Internals.GetAllObjects(), ReferenceEqualityComparer.Instance);
    }

    protected override TakenPage TakeHere(int page)
    {
        if (page > _source.PageCount)
            throw new InvalidDataException($"There is no page {page}.");
        var taken = _document.AddPage(_source.Pages[page - 1]);
        var (left, bottom, width, height) = Box(taken);
        var form = new PdfDictionary(_document);
        form.Elements.SetName("/Type", "/XObject");
        form.Elements.SetName("/Subtype", "/Form");
        form.Elements["/BBox"] = new PdfArray(_document, new PdfReal(left), new PdfReal(bottom), new PdfReal(left + width), new PdfReal(bottom + height));
        form.Elements["/Resources"] = taken.Elements["/Resources"] ?? new PdfDictionary(_document);
        if (taken.Elements["/Group"] is { } group)
            form.Elements["/Group"] = group;
        Fill(form, Contents(taken.Elements["/Contents"]).ToList());
        _document.Internals.AddObject(form);
        var unit = taken.Elements.ContainsKey("/UserUnit") ? Math.Max(taken.Elements.GetReal("/UserUnit"), 0.01) : 1;
        var turn = ((taken.Elements.GetInteger("/Rotate") % 360 + 360) % 360 + 45) / 90 % 4 * 90;
        _document.Pages.Remove(taken);
        _leftOver.Add(taken);
        return new TakenPage(form, left, bottom, width, height, turn, OwnSize * unit);
    }

    protected override void Dispose(bool disposing)
    {
        foreach (var one in _leftOver.Where(o => o.Reference is not null))
            _document.Internals.RemoveObject(one);
        foreach (var dictionary in _document.Internals.GetAllObjects().Where(o => !_before.Contains(o)).OfType<PdfDictionary>().Where(d => d.Stream is not null))
            _carried.Carry(dictionary);
        _source.Dispose();
        _file?.Dispose();
        base.Dispose(disposing);
    }

    private static PdfDocument Open(FileStream file)
    {
        try
        {
            return PdfReader.Open(file, PdfDocumentOpenMode.Import);
        }
        catch
        {
            file.Dispose();
            throw;
        }
    }

    /// <summary>What of the page is shown: its crop box within its media box.</summary>
    private static (double Left, double Bottom, double Width, double Height) Box(PdfPage page)
    {
        var media = page.MediaBoxReadOnly;
        var (left, bottom, right, top) = Edges(media);
        if (page.HasCropBox)
        {
            var crop = Edges(page.CropBoxReadOnly);
            var within = (Math.Max(left, crop.Left), Math.Max(bottom, crop.Bottom), Math.Min(right, crop.Right), Math.Min(top, crop.Top));
            if (within.Item3 > within.Item1 && within.Item4 > within.Item2)
                (left, bottom, right, top) = within;
        }

        var (width, height) = (right - left, top - bottom);
        if (width is not (> 1 and < 100_000) || height is not (> 1 and < 100_000))
            throw new InvalidDataException("A page has no size.");
        return (left, bottom, width, height);
    }

    private static (double Left, double Bottom, double Right, double Top) Edges(PdfRectangle box) =>
        (Math.Min(box.X1, box.X2), Math.Min(box.Y1, box.Y2), Math.Max(box.X1, box.X2), Math.Max(box.Y1, box.Y2));

    /// <summary>The parts of a page's content, which may be one stream, several or none.</summary>
    private IEnumerable<PdfDictionary> Contents(PdfItem? item)
    {
        if (item is PdfReference reference)
            item = reference.Value;
        if (item is PdfArray parts)
        {
            _leftOver.Add(parts);
            foreach (var part in parts.Elements.SelectMany(Contents))
                yield return part;
        }
        else if (item is PdfDictionary { Stream: not null } content)
        {
            _leftOver.Add(content);
            yield return content;
        }
    }

    private static void Fill(PdfDictionary form, List<PdfDictionary> contents)
    {
        if (contents is [var only])
        {
            form.CreateStream(only.Stream.Value);
            foreach (var key in new[] { "/Filter", "/DecodeParms" })
            {
                if (only.Elements.GetValue(key) is { } value)
                    form.Elements[key] = value.Clone();
            }

            return;
        }

        using var joined = new MemoryStream();
        using (var zlib = new ZLibStream(joined, CompressionLevel.Optimal, leaveOpen: true))
        {
            foreach (var part in contents)
            {
                zlib.Write(part.Stream.UnfilteredValue);
                // Parts may end inside a line, never inside a word (ISO 32000-1, 7.8.2).
                zlib.Write("\n"u8);
            }
        }

        form.CreateStream(joined.ToArray());
        form.Elements.SetName("/Filter", "/FlateDecode");
    }
}
