using CoopLessons.Documents.Placing;
using SkiaSharp;

namespace CoopLessons.Documents.Uploads;

/// <summary>Reads an image that is to be printed and writes it anew, no finer than a printer prints.</summary>
internal static class ImageLook
{
    /// <summary>The longer side in dots: a letter page at 300 to the inch.</summary>
    private const int Finest = 3300;
    private const int JpegQuality = 88;

    public static FileVerdict Of(Stream file, Stream kept)
    {
        using var codec = SKCodec.Create(new SKManagedStream(file, disposeManagedStream: false), out _);
        if (codec is null)
            return new FileVerdict(FileFault.Broken, default, 0);
        var kind = codec.EncodedFormat == SKEncodedImageFormat.Png ? PageKind.Png : PageKind.Jpeg;
        var info = codec.Info;
        if (info.Width < 1 || info.Height < 1)
            return new FileVerdict(FileFault.Broken, kind, 0);
        if ((long)info.Width * info.Height > PrintableFile.MostDots)
            return new FileVerdict(FileFault.TooManyDots, kind, 0);
        using var upright = UprightPicture.Of(codec, Finest);
        if (upright is null)
            return new FileVerdict(FileFault.Broken, kind, 0);
        UprightPicture.Write(upright, kind == PageKind.Png ? SKEncodedImageFormat.Png : SKEncodedImageFormat.Jpeg, JpegQuality, kept);
        return new FileVerdict(null, kind, 1);
    }
}
