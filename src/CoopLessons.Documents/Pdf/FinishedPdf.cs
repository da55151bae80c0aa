using System.Globalization;
using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using PdfSharp.Pdf;
using PdfSharp.Pdf.Advanced;
using PdfSharp.Pdf.IO;

namespace CoopLessons.Documents.Pdf;

/// <summary>
/// The last step of a PDF: the file is written anew so that it is whole (each stream a complete zlib stream, RFC 1950,
/// checksum included) and so that the same document always gives the same bytes. Dates carry the day alone; the file's
/// identifier (ISO 32000-1, 14.4) and the tags of font subsets (9.6.4) come from the content.
/// </summary>
internal static partial class FinishedPdf
{
    public static byte[] Of(PdfDocument document, DocumentTitles titles)
    {
        using var file = new MemoryStream();
        Write(document, titles, file);
        return file.ToArray();
    }

    /// <summary>Writes the file as a stream, so that it is never held as a whole.</summary>
    /// <param name="placing">Puts into the drawn document what was only given a place while it was drawn.</param>
    /// <param name="carried">Streams that were laid aside and go into the file from there.</param>
    public static void Write(PdfDocument document, DocumentTitles titles, Stream file, Action<PdfDocument>? placing = null, CarriedStreams? carried = null, CancellationToken ct = default)
    {
        using var drawn = new MemoryStream();
        document.Save(drawn, closeStream: false);
        drawn.Position = 0;
        using var whole = PdfReader.Open(drawn, PdfDocumentOpenMode.Modify);
        // What is placed comes whole already, and its subsets have names of their own.
        var own = whole.Internals.GetAllObjects().OfType<PdfDictionary>().ToList();
        placing?.Invoke(whole);

        Describe(whole.Info, titles);
        NameSubsets(own);
        WidenSquare(own);
        foreach (var dictionary in own.Where(d => d.Stream is not null && carried?.Holds(d) != true))
        {
            ct.ThrowIfCancellationRequested();
            Compress(dictionary, titles);
        }

        ct.ThrowIfCancellationRequested();
        WrittenPdf.Write(whole, file, carried);
    }

    private static string Day(DateOnly date) => date.ToString("'D:'yyyyMMdd", CultureInfo.InvariantCulture);

    private static void Describe(PdfDocumentInformation info, DocumentTitles titles)
    {
        info.Title = PlainText.OneLine(titles.Title);
        info.Author = PlainText.OneLine(titles.Author);
        info.Creator = "CoopLessons";
        info.Elements.SetString("/CreationDate", Day(titles.MadeOn));
        info.Elements.SetString("/ModDate", Day(titles.MadeOn));
    }

    /// <summary>The six letters before a subset's name are drawn by lot; here they follow from the subset itself.</summary>
    private static void NameSubsets(IReadOnlyList<PdfDictionary> dictionaries)
    {
        var names = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var descriptor in dictionaries.Where(d => d.Elements.GetName("/Type") == "/FontDescriptor"))
        {
            var name = descriptor.Elements.GetName("/FontName");
            var file = descriptor.Elements.GetDictionary("/FontFile2");
            if (file is null || name.IndexOf('+', StringComparison.Ordinal) != 7)
                continue;
            var digest = SHA256.HashData(file.Stream.UnfilteredValue);
            var tag = string.Concat(digest.Take(6).Select(b => (char)('A' + b % 26)));
            names[name] = "/" + tag + name[7..];
        }

        foreach (var dictionary in dictionaries)
        {
            foreach (var key in new[] { "/FontName", "/BaseFont" })
            {
                if (names.TryGetValue(dictionary.Elements.GetName(key), out var name))
                    dictionary.Elements.SetName(key, name);
            }
        }
    }

    /// <summary>Glyph 0 has no width in the table of the subset; the default would set it wider than it was measured.</summary>
    private static void WidenSquare(IReadOnlyList<PdfDictionary> dictionaries)
    {
        foreach (var font in dictionaries.Where(d => d.Elements.GetName("/Subtype") == "/CIDFontType2"))
            font.Elements.SetInteger("/DW", NotoSans.SquareWidth);
    }

    private static void Compress(PdfDictionary dictionary, DocumentTitles titles)
    {
        if (dictionary.Elements.GetName("/Type") == "/Metadata")
        {
            // Left readable for programs that look for it without knowing PDF.
            Put(dictionary, Metadata(titles), filter: null);
            return;
        }

        var filter = dictionary.Elements["/Filter"];
        if (filter is not null && filter.ToString() != "/FlateDecode")
            return;
        var raw = filter is null ? dictionary.Stream.Value : dictionary.Stream.UnfilteredValue;
        raw = WithSquare(raw);
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true))
            zlib.Write(raw);
        Put(dictionary, packed.ToArray(), "/FlateDecode");
    }

    private static void Put(PdfDictionary dictionary, byte[] bytes, string? filter)
    {
        dictionary.Stream.Value = bytes;
        dictionary.Elements.Remove("/Filter");
        if (filter is not null)
            dictionary.Elements.SetName("/Filter", filter);
        dictionary.Elements.SetInteger("/Length", bytes.Length);
    }

    /// <summary>
    /// Glyph 0 is the open square that stands for a character the face lacks. The table from glyphs to characters
    /// names it, so that it is also read back and read aloud as a square.
    /// </summary>
    private static byte[] WithSquare(byte[] stream)
    {
        if (stream.AsSpan().IndexOf("begincmap"u8) < 0)
            return stream;
        var table = Encoding.Latin1.GetString(stream);
        table = CodeSpace().Replace(table, "begincodespacerange\n<0000><FFFF>\nendcodespacerange");
        table = table.Replace("endcmap", "1 beginbfchar\n<0000> <25A1>\nendbfchar\nendcmap", StringComparison.Ordinal);
        return Encoding.Latin1.GetBytes(table);
    }

    private static byte[] Metadata(DocumentTitles titles)
    {
        XNamespace rdf = "http://www.w3.org/1999/02/22-rdf-syntax-ns#";
        XNamespace dc = "http://purl.org/dc/elements/1.1/";
        XNamespace xmp = "http://ns.adobe.com/xap/1.0/";
        var day = titles.MadeOn.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        var description = new XElement(rdf + "Description",
            new XAttribute(rdf + "about", ""),
            new XAttribute(XNamespace.Xmlns + "dc", dc),
            new XAttribute(XNamespace.Xmlns + "xmp", xmp),
            new XElement(dc + "title", new XElement(rdf + "Alt",
                new XElement(rdf + "li", new XAttribute(XNamespace.Xml + "lang", "x-default"), PlainText.OneLine(titles.Title)))),
            new XElement(dc + "creator", new XElement(rdf + "Seq", new XElement(rdf + "li", PlainText.OneLine(titles.Author)))),
            new XElement(dc + "language", new XElement(rdf + "Bag", new XElement(rdf + "li", "en-US"))),
            new XElement(xmp + "CreatorTool", "CoopLessons"),
            new XElement(xmp + "CreateDate", day),
            new XElement(xmp + "ModifyDate", day));
        XNamespace meta = "adobe:ns:meta/";
        var packet = new XElement(meta + "xmpmeta", new XAttribute(XNamespace.Xmlns + "x", meta),
            new XElement(rdf + "RDF", new XAttribute(XNamespace.Xmlns + "rdf", rdf), description));
        return Encoding.UTF8.GetBytes(
            "<?xpacket begin=\"\uFEFF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n" + packet.ToString().ReplaceLineEndings("\n") + "\n<?xpacket end=\"w\"?>");
    }

    [GeneratedRegex(@"begincodespacerange\s*<[0-9A-Fa-f]+>\s*<[0-9A-Fa-f]+>\s*endcodespacerange")]
    private static partial Regex CodeSpace();
}
