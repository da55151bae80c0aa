using SkiaSharp;

namespace CoopLessons.Documents.Uploads;

/// <summary>Unpacks a picture upright, on white, no finer than is asked for, with nothing in it but the picture.</summary>
internal static class UprightPicture
{
    /// <param name="finest">The longer side at most, in dots.</param>
    /// <returns>Null where the picture is broken or not whole.</returns>
    public static SKBitmap? Of(SKCodec codec, int finest)
    {
        var size = Unpacked(codec, finest);
        using var read = new SKBitmap(new SKImageInfo(size.Width, size.Height, SKColorType.Rgba8888, SKAlphaType.Premul, SKColorSpace.CreateSrgb()));
        if (codec.GetPixels(read.Info, read.GetPixels()) != SKCodecResult.Success)
            return null;
        // What no longer changes need not be copied to be drawn or written.
        read.SetImmutable();
        var origin = codec.EncodedOrigin;
        var swapped = origin is SKEncodedOrigin.LeftTop or SKEncodedOrigin.RightTop or SKEncodedOrigin.RightBottom or SKEncodedOrigin.LeftBottom;
        var (width, height) = swapped ? (read.Height, read.Width) : (read.Width, read.Height);
        var upright = Drawn(read, width, height, finest, TurnOf(origin, read.Width, read.Height));
        upright.SetImmutable();
        return upright;
    }

    /// <summary>The same picture, its longer side at most so many dots.</summary>
    public static SKBitmap Smaller(SKBitmap picture, int finest)
    {
        var small = Drawn(picture, picture.Width, picture.Height, finest, SKMatrix.Identity);
        small.SetImmutable();
        return small;
    }

    public static void Write(SKBitmap picture, SKEncodedImageFormat format, int quality, Stream to)
    {
        // Drawn in sRGB, which is what a picture without a profile is taken for.
        using var plain = new SKPixmap(new SKImageInfo(picture.Width, picture.Height, picture.ColorType, picture.AlphaType), picture.GetPixels(), picture.RowBytes);
        using var data = plain.Encode(format, quality) ?? throw new InvalidOperationException("A picture could not be written.");
        data.SaveTo(to);
    }

    /// <summary>
    /// As large as it is unpacked: a JPEG in eighths of its size (its blocks of eight by eight give fewer dots as well,
    /// ITU-T T.81, A.3.3), the smallest that is no coarser than is asked for; anything else in full.
    /// </summary>
    private static SKSizeI Unpacked(SKCodec codec, int finest)
    {
        var wanted = finest / (float)Math.Max(codec.Info.Width, codec.Info.Height);
        return codec.GetScaledDimensions(Math.Min(1, MathF.Ceiling(wanted * 8) / 8));
    }

    private static SKBitmap Drawn(SKBitmap read, int width, int height, int finest, SKMatrix turn)
    {
        var scale = Math.Min(1f, finest / (float)Math.Max(width, height));
        var info = new SKImageInfo(Math.Max(1, (int)(width * scale)), Math.Max(1, (int)(height * scale)), SKColorType.Rgba8888, SKAlphaType.Opaque, SKColorSpace.CreateSrgb());
        var drawn = new SKBitmap(info);
        using var canvas = new SKCanvas(drawn);
        canvas.Clear(SKColors.White);
        canvas.Scale(info.Width / (float)width, info.Height / (float)height);
        canvas.Concat(turn);
        using var image = SKImage.FromBitmap(read);
        canvas.DrawImage(image, 0, 0, new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
        canvas.Flush();
        return drawn;
    }

    /// <summary>Exif 2.3, tag Orientation.</summary>
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
