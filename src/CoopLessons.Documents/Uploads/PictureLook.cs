using SkiaSharp;

namespace CoopLessons.Documents.Uploads;

/// <summary>Reads a picture of any kind that can be unpacked here and writes it anew, as large as a screen shows, and once more small.</summary>
internal static class PictureLook
{
    private const int Finest = 2048;
    private const int FinestSmall = 400;
    private const int JpegQuality = 86;
    private const int SmallQuality = 78;

    /// <summary>Null where the file is no picture that is known here.</summary>
    public static EvidenceVerdict? Of(byte[] file, Stream kept, Stream small)
    {
        using var data = SKData.CreateCopy(file);
        using var codec = SKCodec.Create(data);
        if (codec is null)
            return LooksLikePicture(file) ? new EvidenceVerdict(FileFault.Broken, EvidenceForm.Jpeg) : null;
        // What was drawn in few colours stays sharp and small as PNG; what came as a photo stays one.
        var form = codec.EncodedFormat is SKEncodedImageFormat.Png or SKEncodedImageFormat.Gif or SKEncodedImageFormat.Bmp ? EvidenceForm.Png : EvidenceForm.Jpeg;
        var info = codec.Info;
        if (info.Width < 1 || info.Height < 1)
            return new EvidenceVerdict(FileFault.Broken, form);
        var most = codec.EncodedFormat == SKEncodedImageFormat.Jpeg && !JpegFrame.IsProgressive(file) ? EvidenceFile.MostDotsInEighths : EvidenceFile.MostDots;
        if ((long)info.Width * info.Height > most)
            return new EvidenceVerdict(FileFault.TooManyDots, form);
        using var upright = UprightPicture.Of(codec, Finest);
        if (upright is null)
            return new EvidenceVerdict(FileFault.Broken, form);
        UprightPicture.Write(upright, form == EvidenceForm.Png ? SKEncodedImageFormat.Png : SKEncodedImageFormat.Jpeg, JpegQuality, kept);
        using var little = UprightPicture.Smaller(upright, FinestSmall);
        UprightPicture.Write(little, SKEncodedImageFormat.Jpeg, SmallQuality, small);
        return new EvidenceVerdict(null, form, HasPicture: true, Pages: 1, Changed: true, TakenAt: TakenTime.Of(file));
    }

    private static bool LooksLikePicture(ReadOnlySpan<byte> file) =>
        file.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF]) || file.StartsWith((ReadOnlySpan<byte>)[0x89, (byte)'P', (byte)'N', (byte)'G']) || file.StartsWith("GIF8"u8)
        || (file.Length > 12 && file.StartsWith("RIFF"u8) && file.Slice(8, 4).SequenceEqual("WEBP"u8));
}

/// <summary>The head of a JPEG's frame.</summary>
internal static class JpegFrame
{
    /// <summary>
    /// Whether the picture comes in scans that sharpen it: its reader then holds all of its coefficients, and eighths save
    /// nothing (ITU-T T.81, table B.1: SOF2, SOF6, SOF10, SOF14).
    /// </summary>
    public static bool IsProgressive(ReadOnlySpan<byte> file)
    {
        for (var at = 2; at + 4 <= file.Length && file[at] == 0xFF;)
        {
            var marker = file[at + 1];
            if (marker == 0xFF)
            {
                at++;
                continue;
            }

            if (marker is >= 0xC0 and <= 0xCF and not (0xC4 or 0xC8 or 0xCC))
                return marker is not (0xC0 or 0xC1);
            at += 2 + (file[at + 2] << 8 | file[at + 3]);
        }

        // A head that is not understood gets the narrower limit.
        return true;
    }
}
