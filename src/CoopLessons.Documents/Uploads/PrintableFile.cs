using CoopLessons.Documents.Placing;

namespace CoopLessons.Documents.Uploads;

/// <summary>What is wrong with a file that somebody brings.</summary>
public enum FileFault { Empty, TooLarge, NotKnown, Svg, Heic, OtherImage, Broken, Locked, NoPages, TooManyPages, TooManyDots, Located }

/// <summary>What became of a file that somebody brought.</summary>
/// <param name="Fault">Null where it is taken.</param>
/// <param name="Pages">As many as were counted; 0 where nothing could be.</param>
public sealed record FileVerdict(FileFault? Fault, PageKind Kind, int Pages);

/// <summary>
/// Looks at a file before it is kept: by what is in it, never by its name. What is taken can be put into a packet, since
/// each of its pages was put into one for trial.
/// </summary>
public static class PrintableFile
{
    /// <summary>Largest file, in bytes: 25 MB.</summary>
    public const long MostBytes = 25_000_000;

    public const int MostPages = 300;

    /// <summary>Most dots of an image, told by its head before any of it is unpacked: 40 million. A PNG takes 160 MB once unpacked; a JPEG
    /// that sharpens as it loads 240 MB for its coefficients, whatever its size on paper.</summary>
    public const long MostDots = 40_000_000;

    /// <param name="file">Can seek; left open.</param>
    /// <param name="kept">Gets the bytes that are to be kept: a PDF's own, an image's written anew without what it says of place and device.</param>
    public static FileVerdict Look(Stream file, Stream kept, CancellationToken ct)
    {
        if (file.Length == 0)
            return new FileVerdict(FileFault.Empty, default, 0);
        if (file.Length > MostBytes)
            return new FileVerdict(FileFault.TooLarge, default, 0);
        Span<byte> head = stackalloc byte[1024];
        file.Position = 0;
        head = head[..file.ReadAtLeast(head, head.Length, throwOnEndOfStream: false)];
        file.Position = 0;
        // The head may stand a little into the file: ISO 32000-1, Annex H, note 13.
        if (head.IndexOf("%PDF-"u8) >= 0)
            return PdfLook.Of(file, kept, ct);
        if (head.StartsWith((ReadOnlySpan<byte>)[0x89, (byte)'P', (byte)'N', (byte)'G', 13, 10, 26, 10]) || head.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF]))
            return ImageLook.Of(file, kept);
        return new FileVerdict(Foreign(head), default, 0);
    }

    private static FileFault Foreign(ReadOnlySpan<byte> head)
    {
        if (head.Length > 12 && head.Slice(4, 4).SequenceEqual("ftyp"u8))
            return FileFault.Heic;
        if (head.IndexOf("<svg"u8) >= 0 || head.IndexOf("<!DOCTYPE svg"u8) >= 0)
            return FileFault.Svg;
        return head.StartsWith("GIF8"u8) || head.StartsWith("BM"u8) || head.StartsWith("II*\0"u8) || head.StartsWith("MM\0*"u8)
            || (head.Length > 12 && head.StartsWith("RIFF"u8) && head.Slice(8, 4).SequenceEqual("WEBP"u8))
            ? FileFault.OtherImage : FileFault.NotKnown;
    }
}
