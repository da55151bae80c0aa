namespace CoopLessons.Documents.Uploads;

/// <summary>What a piece of evidence was found to be by its content.</summary>
public enum EvidenceForm { Pdf, Png, Jpeg, Mp3, Mp4, WebM, Ogg, Wav }

/// <summary>What became of a photo, paper, sound or video that somebody brought.</summary>
/// <param name="Fault">Null where it is taken.</param>
/// <param name="HasPicture">Whether a recording shows something; a sound does not.</param>
/// <param name="Pages">Of a PDF, also where they are too many; 1 for anything else, 0 where nothing could be counted.</param>
/// <param name="Changed">Whether what is kept differs from what came: a picture is written anew, a place is taken out.</param>
/// <param name="TakenAt">The wall clock's time at which a picture says that it was taken; null where it says nothing.</param>
/// <param name="KeptBytes">How long what is kept is.</param>
public sealed record EvidenceVerdict(
    FileFault? Fault, EvidenceForm Form, bool HasPicture = false, int Pages = 0, bool Changed = false, DateTime? TakenAt = null, long KeptBytes = 0);

/// <summary>
/// Looks at a photo, paper, sound or short video before it is kept: by what is in it, never by its name. Pictures are
/// written anew with nothing in them but the picture; the rest is kept as it came, without the places that videos hold.
/// </summary>
public static class EvidenceFile
{
    /// <summary>Largest file, in bytes: 50 MB; a PDF as where it is printed from, 25 MB.</summary>
    public const long MostBytes = 50_000_000;

    /// <summary>Most dots of a picture that is unpacked whole, told by its head before any of it is unpacked.</summary>
    public const long MostDots = PrintableFile.MostDots;

    /// <summary>Most dots of a JPEG that is unpacked in eighths line by line.</summary>
    public const long MostDotsInEighths = 250_000_000;

    /// <param name="file">Can seek; left open.</param>
    /// <param name="kept">Gets the bytes that are to be kept.</param>
    /// <param name="small">Gets a small picture for lists, where there is a picture.</param>
    public static EvidenceVerdict Look(Stream file, Stream kept, Stream small, CancellationToken ct)
    {
        if (file.Length == 0)
            return new EvidenceVerdict(FileFault.Empty, default);
        if (file.Length > MostBytes)
            return new EvidenceVerdict(FileFault.TooLarge, default);
        var bytes = new byte[file.Length];
        file.Position = 0;
        file.ReadExactly(bytes);
        var verdict = Look(bytes, kept, small, ct);
        return verdict with { KeptBytes = verdict.Fault is null ? kept.Length : 0 };
    }

    private static EvidenceVerdict Look(byte[] bytes, Stream kept, Stream small, CancellationToken ct)
    {
        var head = bytes.AsSpan(0, Math.Min(bytes.Length, 1024));
        if (head.Length > 12 && head.Slice(4, 4).SequenceEqual("ftyp"u8))
            return IsStillPicture(head) ? new EvidenceVerdict(FileFault.Heic, default) : Recording(bytes, kept, EvidenceForm.Mp4, Mp4Look.Of);
        if (head.StartsWith((ReadOnlySpan<byte>)[0x1A, 0x45, 0xDF, 0xA3]))
            return Recording(bytes, kept, EvidenceForm.WebM, WebMLook.Of);
        if (head.StartsWith("OggS"u8))
            return Recording(bytes, kept, EvidenceForm.Ogg, OggLook.Of);
        if (head.Length > 12 && head.StartsWith("RIFF"u8) && head.Slice(8, 4).SequenceEqual("WAVE"u8))
            return Recording(bytes, kept, EvidenceForm.Wav, WavLook.Of);
        if (PictureLook.Of(bytes, kept, small) is { } picture)
            return picture;
        // The head may stand a little into the file: ISO 32000-1, Annex H, note 13.
        if (head.IndexOf("%PDF-"u8) >= 0)
        {
            var paper = PrintableFile.Look(new MemoryStream(bytes, writable: false), kept, ct);
            return new EvidenceVerdict(paper.Fault, EvidenceForm.Pdf, Pages: paper.Pages);
        }

        if (head.IndexOf("<svg"u8) >= 0 || head.IndexOf("<!DOCTYPE svg"u8) >= 0)
            return new EvidenceVerdict(FileFault.Svg, default);
        if (head.StartsWith("ID3"u8) || head.StartsWith((ReadOnlySpan<byte>)[0xFF]))
            return Recording(bytes, kept, EvidenceForm.Mp3, Mp3Look.Of);
        return new EvidenceVerdict(FileFault.NotKnown, default);
    }

    /// <summary>Still pictures in the same boxes as videos, known by the brand they name first (ISO/IEC 23008-12; AVIF 1.1; from memory).</summary>
    private static bool IsStillPicture(ReadOnlySpan<byte> head) =>
        head.Slice(8, 4) is var brand && (brand.SequenceEqual("heic"u8) || brand.SequenceEqual("heix"u8) || brand.SequenceEqual("heim"u8) || brand.SequenceEqual("heis"u8)
            || brand.SequenceEqual("hevc"u8) || brand.SequenceEqual("hevx"u8) || brand.SequenceEqual("mif1"u8) || brand.SequenceEqual("msf1"u8)
            || brand.SequenceEqual("avif"u8) || brand.SequenceEqual("avis"u8));

    private static EvidenceVerdict Recording(byte[] bytes, Stream kept, EvidenceForm form, Func<byte[], RecordingLook> look)
    {
        RecordingLook found;
        try
        {
            found = look(bytes);
        }
        // Lengths that lead out of the file are what a broken file consists of.
        catch (Exception fault) when (fault is InvalidDataException or ArgumentException or IndexOutOfRangeException or OverflowException)
        {
            return new EvidenceVerdict(FileFault.Broken, form);
        }

        if (found.Fault is { } wrong)
            return new EvidenceVerdict(wrong, form);
        kept.Write(bytes);
        return new EvidenceVerdict(null, form, found.HasPicture, 1, found.Changed);
    }
}

/// <summary>What a recording was found to hold.</summary>
/// <param name="Changed">Whether a place was taken out of the bytes that were looked at.</param>
internal sealed record RecordingLook(FileFault? Fault, bool HasPicture = false, bool Changed = false);
