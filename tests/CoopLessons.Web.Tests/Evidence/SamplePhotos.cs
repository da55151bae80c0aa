using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;
using SkiaSharp;

namespace CoopLessons.Web.Tests.Evidence;

/// <summary>Pictures as a phone, a scanner and somebody with bad intentions would bring them.</summary>
internal static class SamplePhotos
{
    public static readonly SKColor[] Corners = [new(200, 30, 20), new(20, 140, 40), new(20, 40, 180), new(230, 200, 20)];

    /// <summary>A photo with a place, a device and a time in it.</summary>
    public static byte[] Photo(string? takenAt = "2026:03:10 09:41:07", int orientation = 1) =>
        ExifBlock.InJpeg(Encoded(Quarters(), SKEncodedImageFormat.Jpeg), ExifBlock.Of(orientation, takenAt));

    /// <summary>
    /// A photo whose dots are stored as the orientation says, so that whoever heeds it sees red, green, blue and yellow in
    /// reading order. The table is that of Exif 2.3, 4.6.4, tag Orientation: where the stored row 0 and column 0 are seen.
    /// </summary>
    public static byte[] Turned(int orientation)
    {
        const int width = 320;
        const int height = 192;
        var (row, column) = orientation switch
        {
            1 => ("top", "left"),
            2 => ("top", "right"),
            3 => ("bottom", "right"),
            4 => ("bottom", "left"),
            5 => ("left", "top"),
            6 => ("right", "top"),
            7 => ("right", "bottom"),
            _ => ("left", "bottom"),
        };
        var isTurned = row is "left" or "right";
        using var stored = isTurned ? new SKBitmap(height, width) : new SKBitmap(width, height);
        for (var r = 0; r < stored.Height; r++)
        {
            for (var c = 0; c < stored.Width; c++)
            {
                var x = isTurned ? row == "left" ? r : width - 1 - r : column == "left" ? c : width - 1 - c;
                var y = isTurned ? column == "top" ? c : height - 1 - c : row == "top" ? r : height - 1 - r;
                stored.SetPixel(c, r, Corners[(x < width / 2 ? 0 : 1) + (y < height / 2 ? 0 : 2)]);
            }
        }

        return ExifBlock.InJpeg(Encoded(stored, SKEncodedImageFormat.Jpeg), ExifBlock.Of(orientation));
    }

    public static SKBitmap Quarters(int width = 320, int height = 192)
    {
        var bitmap = new SKBitmap(width, height);
        using var canvas = new SKCanvas(bitmap);
        for (var i = 0; i < 4; i++)
        {
            using var paint = new SKPaint { Color = Corners[i] };
            canvas.DrawRect(i % 2 * width / 2f, i / 2 * height / 2f, width / 2f, height / 2f, paint);
        }

        return bitmap;
    }

    public static byte[] Encoded(SKBitmap bitmap, SKEncodedImageFormat format)
    {
        using var image = SKImage.FromBitmap(bitmap);
        return image.Encode(format, 90).ToArray();
    }

    /// <summary>A WebP with a block of tags (WebP container specification: chunk EXIF, the extended head VP8X first; from memory).</summary>
    public static byte[] WebP()
    {
        var plain = Encoded(Quarters(), SKEncodedImageFormat.Webp);
        var exif = ExifBlock.Of(takenAt: "2026:03:10 09:41:07");
        byte[] head = [.. "VP8X"u8, 10, 0, 0, 0, 0x08, 0, 0, 0, 63, 1, 0, 191, 0, 0];
        byte[] chunk = [.. "EXIF"u8, (byte)exif.Length, (byte)(exif.Length >> 8), 0, 0, .. exif, .. new byte[exif.Length & 1]];
        byte[] whole = [.. "RIFF"u8, 0, 0, 0, 0, .. "WEBP"u8, .. head, .. plain[12..], .. chunk];
        BinaryPrimitives.WriteInt32LittleEndian(whole.AsSpan(4), whole.Length - 8);
        return whole;
    }

    /// <summary>A PNG of grey dots, all black: a hundred megapixels are a hundred kilobytes.</summary>
    public static byte[] Bomb(int side = 10_000)
    {
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Fastest, leaveOpen: true))
        {
            var row = new byte[side + 1];
            for (var i = 0; i < side; i++)
                zlib.Write(row);
        }

        var head = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(head, side);
        BinaryPrimitives.WriteInt32BigEndian(head.AsSpan(4), side);
        head[8] = 8;
        return [0x89, .. "PNG"u8, 13, 10, 26, 10, .. Chunk("IHDR", head), .. Chunk("IDAT", packed.ToArray()), .. Chunk("IEND", [])];
    }

    /// <summary>A chunk with its check, as the PNG specification's annex D gives it.</summary>
    public static byte[] Chunk(string type, byte[] data)
    {
        byte[] checkedPart = [.. Encoding.ASCII.GetBytes(type), .. data];
        var sum = uint.MaxValue;
        foreach (var one in checkedPart)
        {
            sum ^= one;
            for (var k = 0; k < 8; k++)
                sum = (sum & 1) == 1 ? 0xEDB88320 ^ (sum >> 1) : sum >> 1;
        }

        var chunk = new byte[data.Length + 12];
        BinaryPrimitives.WriteInt32BigEndian(chunk, data.Length);
        checkedPart.CopyTo(chunk, 4);
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(data.Length + 8), ~sum);
        return chunk;
    }
}
