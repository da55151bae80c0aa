using System.Buffers.Binary;
using CoopLessons.Documents.Pdf;
using PdfSharp.Pdf;

namespace CoopLessons.Documents.Placing;

/// <summary>
/// An image as a page. The file was written anew when it was uploaded, so that its compressed bytes can go into the
/// document as they are: JPEG's (ISO 32000-1, 7.4.8), and PNG's with its predictors (7.4.4.4).
/// </summary>
internal sealed class PageOfImage(PdfDocument document, PageSource source, CarriedStreams carried) : TakenPages
{
    // Drawn no coarser than 72 dots to the inch.
    private const double Coarsest = 1;

    protected override TakenPage TakeHere(int page)
    {
        if (page != 1)
            throw new InvalidDataException("An image has one page.");
        var bytes = File.ReadAllBytes(source.Path);
        var image = new PdfDictionary(document);
        image.Elements.SetName("/Type", "/XObject");
        image.Elements.SetName("/Subtype", "/Image");
        image.Elements.SetInteger("/BitsPerComponent", 8);
        var (width, height) = source.Kind == PageKind.Png ? Png(image, bytes) : Jpeg(image, bytes);
        image.Elements.SetInteger("/Width", width);
        image.Elements.SetInteger("/Height", height);
        document.Internals.AddObject(image);
        return new TakenPage(image, 0, 0, width, height, 0, Coarsest, IsImage: true);
    }

    private (int Width, int Height) Png(PdfDictionary image, byte[] bytes)
    {
        var (width, height, colours) = (0, 0, 0);
        var parts = new List<Range>();
        for (var at = 8; at + 12 <= bytes.Length;)
        {
            var length = BinaryPrimitives.ReadInt32BigEndian(bytes.AsSpan(at));
            var (from, to) = (at + 8, at + 8 + length);
            if (length < 0 || to + 4 > bytes.Length)
                throw new InvalidDataException("The image is cut off.");
            var kind = bytes.AsSpan(at + 4, 4);
            if (kind.SequenceEqual("IHDR"u8))
            {
                (width, height) = (BinaryPrimitives.ReadInt32BigEndian(bytes.AsSpan(from)), BinaryPrimitives.ReadInt32BigEndian(bytes.AsSpan(from + 4)));
                colours = (bytes[from + 8], bytes[from + 9], bytes[from + 12]) switch
                {
                    (8, 0, 0) => 1,
                    (8, 2, 0) => 3,
                    _ => throw new InvalidDataException("The image is not as it is kept here."),
                };
            }
            else if (kind.SequenceEqual("IDAT"u8))
            {
                parts.Add(from..to);
            }

            at = to + 4;
        }

        if (colours == 0 || parts.Count == 0)
            throw new InvalidDataException("The image is cut off.");
        image.Elements.SetName("/ColorSpace", colours == 1 ? "/DeviceGray" : "/DeviceRGB");
        image.Elements.SetName("/Filter", "/FlateDecode");
        var parms = new PdfDictionary(document);
        parms.Elements.SetInteger("/Predictor", 15);
        parms.Elements.SetInteger("/Colors", colours);
        parms.Elements.SetInteger("/BitsPerComponent", 8);
        parms.Elements.SetInteger("/Columns", width);
        image.Elements["/DecodeParms"] = parms;
        carried.Keep(image, to => parts.ForEach(p => to.Write(bytes.AsSpan(p))));
        return (width, height);
    }

    private (int Width, int Height) Jpeg(PdfDictionary image, byte[] bytes)
    {
        var at = 2;
        while (at + 9 < bytes.Length)
        {
            if (bytes[at] != 0xFF)
                throw new InvalidDataException("The image is not as it is kept here.");
            var marker = bytes[at + 1];
            // The frame's head: all but the tables that share its numbers (ITU-T T.81, table B.1).
            if (marker is >= 0xC0 and <= 0xCF and not (0xC4 or 0xC8 or 0xCC))
            {
                var height = BinaryPrimitives.ReadUInt16BigEndian(bytes.AsSpan(at + 5));
                var width = BinaryPrimitives.ReadUInt16BigEndian(bytes.AsSpan(at + 7));
                image.Elements.SetName("/ColorSpace", bytes[at + 9] == 1 ? "/DeviceGray" : "/DeviceRGB");
                image.Elements.SetName("/Filter", "/DCTDecode");
                carried.Keep(image, to => to.Write(bytes));
                return (width, height);
            }

            at += 2 + BinaryPrimitives.ReadUInt16BigEndian(bytes.AsSpan(at + 2));
        }

        throw new InvalidDataException("The image is cut off.");
    }
}
