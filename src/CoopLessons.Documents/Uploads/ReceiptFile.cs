using SkiaSharp;

namespace CoopLessons.Documents.Uploads;

/// <summary>Looks at the photo of a receipt and writes it anew: small, as JPEG, with nothing in it but the picture.</summary>
public static class ReceiptFile
{
    /// <summary>Largest photo that is looked at, in bytes.</summary>
    public const long MostBytes = 20_000_000;

    /// <summary>Longest JPEG that is kept, in bytes.</summary>
    public const int MostKept = 300_000;

    // From as fine as small print on a long slip asks for, to what even a picture of noise fits into.
    private static readonly (int Finest, int Quality)[] Tries = [(1800, 72), (1500, 66), (1200, 60), (900, 50), (600, 40), (400, 30)];

    /// <param name="file">Can seek; left open.</param>
    /// <param name="kept">Gets the JPEG.</param>
    public static EvidenceVerdict Look(Stream file, Stream kept, CancellationToken ct)
    {
        if (file.Length > MostBytes)
            return new EvidenceVerdict(FileFault.TooLarge, EvidenceForm.Jpeg);
        using var shown = new MemoryStream();
        var verdict = EvidenceFile.Look(file, shown, Stream.Null, ct);
        if (verdict.Fault is not null)
            return verdict;
        if (verdict.Form is not (EvidenceForm.Jpeg or EvidenceForm.Png))
            return new EvidenceVerdict(FileFault.NotKnown, verdict.Form);
        using var data = SKData.CreateCopy(shown.ToArray());
        using var codec = SKCodec.Create(data);
        using var picture = UprightPicture.Of(codec, Tries[0].Finest);
        if (picture is null)
            return new EvidenceVerdict(FileFault.Broken, verdict.Form);
        foreach (var (finest, quality) in Tries)
        {
            using var smaller = UprightPicture.Smaller(picture, finest);
            using var written = new MemoryStream();
            UprightPicture.Write(smaller, SKEncodedImageFormat.Jpeg, quality, written);
            if (written.Length > MostKept)
                continue;
            written.WriteTo(kept);
            return verdict with { Form = EvidenceForm.Jpeg, KeptBytes = written.Length, Changed = true };
        }

        return new EvidenceVerdict(FileFault.TooManyDots, verdict.Form);
    }
}
