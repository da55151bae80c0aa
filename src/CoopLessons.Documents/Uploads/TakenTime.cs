using System.Buffers.Binary;
using System.Globalization;
using System.Text;

namespace CoopLessons.Documents.Uploads;

/// <summary>
/// When a picture says that it was taken: DateTimeOriginal of Exif 2.3 (CIPA DC-008-2012, tag 0x9003, in the directory to
/// which tag 0x8769 points). Nothing else is read of what it says.
/// </summary>
internal static class TakenTime
{
    private const int ExifDirectory = 0x8769;
    private const int DateTimeOriginal = 0x9003;
    private const int MostEntries = 500;

    /// <summary>Null where there is no such time, or none that a calendar has.</summary>
    public static DateTime? Of(ReadOnlySpan<byte> file)
    {
        try
        {
            var tiff = Block(file);
            return tiff.IsEmpty ? null : Read(tiff);
        }
        catch (Exception fault) when (fault is ArgumentOutOfRangeException or IndexOutOfRangeException or OverflowException)
        {
            // Offsets that lead nowhere say nothing.
            return null;
        }
    }

    private static DateTime? Read(ReadOnlySpan<byte> tiff)
    {
        var big = tiff.StartsWith("MM"u8);
        if (!big && !tiff.StartsWith("II"u8))
            return null;
        if (Find(tiff, Whole(tiff[4..], big), ExifDirectory, big) is not { } pointer || Find(tiff, Whole(tiff[(pointer + 8)..], big), DateTimeOriginal, big) is not { } entry)
            return null;
        // Nineteen signs and a zero: more than fits beside the tag, so that an offset stands there.
        if (Whole(tiff[(entry + 4)..], big) < 19)
            return null;
        var text = Encoding.ASCII.GetString(tiff.Slice(Whole(tiff[(entry + 8)..], big), 19));
        return DateTime.TryParseExact(text, "yyyy:MM:dd HH:mm:ss", CultureInfo.InvariantCulture, DateTimeStyles.None, out var taken) ? taken : null;
    }

    /// <summary>Where the entry of a tag stands in a directory.</summary>
    private static int? Find(ReadOnlySpan<byte> tiff, int directory, int tag, bool big)
    {
        var entries = Math.Min(Half(tiff[directory..], big), MostEntries);
        for (var i = 0; i < entries; i++)
        {
            var at = directory + 2 + 12 * i;
            if (Half(tiff[at..], big) == tag)
                return at;
        }

        return null;
    }

    private static int Half(ReadOnlySpan<byte> at, bool big) => big ? BinaryPrimitives.ReadUInt16BigEndian(at) : BinaryPrimitives.ReadUInt16LittleEndian(at);

    private static int Whole(ReadOnlySpan<byte> at, bool big) => checked((int)(big ? BinaryPrimitives.ReadUInt32BigEndian(at) : BinaryPrimitives.ReadUInt32LittleEndian(at)));

    /// <summary>The block of tags: in JPEG's APP1, PNG's eXIf (PNG, third edition, 11.3.3.3) or WebP's EXIF; empty where there is none.</summary>
    private static ReadOnlySpan<byte> Block(ReadOnlySpan<byte> file)
    {
        if (file.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8]))
            return OfJpeg(file);
        if (file.StartsWith((ReadOnlySpan<byte>)[0x89, (byte)'P', (byte)'N', (byte)'G']))
            return OfPng(file);
        return file.StartsWith("RIFF"u8) ? OfWebP(file) : default;
    }

    private static ReadOnlySpan<byte> OfJpeg(ReadOnlySpan<byte> file)
    {
        for (var at = 2; at + 4 <= file.Length && file[at] == 0xFF && file[at + 1] != 0xDA;)
        {
            var length = BinaryPrimitives.ReadUInt16BigEndian(file[(at + 2)..]);
            var body = file.Slice(at + 4, length - 2);
            if (file[at + 1] == 0xE1 && body.StartsWith("Exif\0\0"u8))
                return body[6..];
            at += 2 + length;
        }

        return default;
    }

    private static ReadOnlySpan<byte> OfPng(ReadOnlySpan<byte> file)
    {
        for (var at = 8; at + 12 <= file.Length;)
        {
            var length = checked((int)BinaryPrimitives.ReadUInt32BigEndian(file[at..]));
            if (file.Slice(at + 4, 4).SequenceEqual("eXIf"u8))
                return file.Slice(at + 8, length);
            at = checked(at + 12 + length);
        }

        return default;
    }

    private static ReadOnlySpan<byte> OfWebP(ReadOnlySpan<byte> file)
    {
        for (var at = 12; at + 8 <= file.Length;)
        {
            var length = checked((int)BinaryPrimitives.ReadUInt32LittleEndian(file[(at + 4)..]));
            if (file.Slice(at, 4).SequenceEqual("EXIF"u8))
                return file.Slice(at + 8, length) is var body && body.StartsWith("Exif\0\0"u8) ? body[6..] : body;
            at = checked(at + 8 + length + (length & 1));
        }

        return default;
    }
}
