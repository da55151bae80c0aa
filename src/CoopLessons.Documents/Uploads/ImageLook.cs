using CoopLessons.Documents.Packets;
using SkiaSharp;

namespace CoopLessons.Documents.Uploads;

/// <summary>Reads an image and writes it anew: upright, on white, no finer than a printer prints, with nothing in it but the picture.</summary>
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
        var size = Unpacked(codec);
        using var read = new SKBitmap(new SKImageInfo(size.Width, size.Height, SKColorType.Rgba8888, SKAlphaType.Premul, SKColorSpace.CreateSrgb()));
        if (codec.GetPixels(read.Info, read.GetPixels()) != SKCodecResult.Success)
            return new FileVerdict(FileFault.Broken, kind, 0);
        // What no longer changes need not be copied to be drawn or written.
        read.SetImmutable();
        using var upright = Upright(read, codec.EncodedOrigin);
        upright.SetImmutable();
        using var image = SKImage.FromBitmap(upright);
        using var data = image.Encode(kind == PageKind.Png ? SKEncodedImageFormat.Png : SKEncodedImageFormat.Jpeg, JpegQuality);
        data.SaveTo(kept);
        return new FileVerdict(null, kind, 1);
    }

    /// <summary>
    /// As large as it is unpacked: a JPEG in eighths of its size (its blocks of eight by eight give fewer dots as well,
    /// ITU-T T.81, A.3.3), the smallest that is no coarser than paper shows; anything else in full.
    /// </summary>
    private static SKSizeI Unpacked(SKCodec codec)
    {
        var wanted = Finest / (float)Math.Max(codec.Info.Width, codec.Info.Height);
        return codec.GetScaledDimensions(Math.Min(1, MathF.Ceiling(wanted * 8) / 8));
    }

    /// <summary>Turned as its origin says (Exif 2.3, tag Orientation), flattened onto white and made smaller where it is too fine.</summary>
    private static SKBitmap Upright(SKBitmap read, SKEncodedOrigin origin)
    {
        var swapped = origin is SKEncodedOrigin.LeftTop or SKEncodedOrigin.RightTop or SKEncodedOrigin.RightBottom or SKEncodedOrigin.LeftBottom;
        var (width, height) = swapped ? (read.Height, read.Width) : (read.Width, read.Height);
        var scale = Math.Min(1f, Finest / (float)Math.Max(width, height));
        var info = new SKImageInfo(Math.Max(1, (int)(width * scale)), Math.Max(1, (int)(height * scale)), SKColorType.Rgba8888, SKAlphaType.Opaque, SKColorSpace.CreateSrgb());
        var upright = new SKBitmap(info);
        using var canvas = new SKCanvas(upright);
        canvas.Clear(SKColors.White);
        canvas.Scale(info.Width / (float)width, info.Height / (float)height);
        canvas.Concat(TurnOf(origin, read.Width, read.Height));
        using var image = SKImage.FromBitmap(read);
        canvas.DrawImage(image, 0, 0, new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
        canvas.Flush();
        return upright;
    }

    private static SKMatrix TurnOf(SKEncodedOrigin origin, float w, float h) => origin switch
    {
        SKEncodedOrigin.TopRight => new SKMatrix(-1, 0, w, 0, 1, 0, 0, 0, 1),
        SKEncodedOrigin.BottomRight => new SKMatrix(-1, 0, w, 0, -1, h, 0, 0, 1),
        SKEncodedOrigin.BottomLeft => new SKMatrix(1, 0, 0, 0, -1, h, 0, 0, 1),
        SKEncodedOrigin.LeftTop => new SKMatrix(0, 1, 0, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightTop => new SKMatrix(0, -1, h, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightBottom => new SKMatrix(0, -1, h, -1, 0, w, 0, 0, 1),
        SKEncodedOrigin.LeftBottom => new SKMatrix(0, 1, 0, -1, 0, w, 0, 0, 1),
        _ => SKMatrix.Identity,
    };
}
