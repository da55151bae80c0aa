using System.Buffers.Binary;
using System.Text;

namespace CoopLessons.Web.Tests.Evidence;

/// <summary>Sounds and videos of a second or less, built box by box as their formats have them.</summary>
internal static class SampleRecordings
{
    /// <summary>A place as ISO 6709 writes it: the middle of a lake.</summary>
    public const string Place = "+39.2583-094.2017+250/";

    public static byte[] Video(params byte[][] inMovie) => Video("vide", "avc1", inMovie);

    /// <summary>ISO/IEC 14496-12 as far as a reader needs it (from memory).</summary>
    public static byte[] Video(string handler, string format, params byte[][] inMovie)
    {
        var head = new byte[100];
        BinaryPrimitives.WriteInt32BigEndian(head.AsSpan(12), 1000);
        BinaryPrimitives.WriteInt32BigEndian(head.AsSpan(16), 1000);
        BinaryPrimitives.WriteInt32BigEndian(head.AsSpan(20), 0x00010000);
        var track = Box("trak", [.. Box("tkhd", new byte[84]), .. Box("mdia", [.. Handler(handler), .. Box("minf", Box("stbl", Box("stsd", [0, 0, 0, 0, 0, 0, 0, 1, .. Box(format, new byte[78])])))])]);
        return [.. Box("ftyp", [.. "isom"u8, 0, 0, 2, 0, .. "isommp42"u8]), .. Box("moov", [.. Box("mvhd", head), .. track, .. inMovie.SelectMany(b => b)]), .. Box("mdat", new byte[512])];
    }

    /// <summary>User data of QuickTime: length, language, text.</summary>
    public static byte[] UserData() => Box("udta", Box("\u00A9xyz", [0, (byte)Place.Length, 0x15, 0xC7, .. Encoding.ASCII.GetBytes(Place)]));

    /// <summary>User data of the 3GPP (TS 26.244, 8.4): a name, a role, longitude, latitude and altitude in 16.16.</summary>
    public static byte[] Loci() => Box("udta", Box("loci", [0, 0, 0, 0, 0x15, 0xC7, .. "The mill pond\0"u8, 0, 0xFF, 0xA1, 0xCC, 0x5D, 0x00, 0x27, 0x42, 0x1F, 0, 0, 0, 0, .. "earth\0\0"u8]));

    /// <summary>A list of keys and values, as QuickTime has it.</summary>
    public static byte[] Keyed(string key = "com.apple.quicktime.location.ISO6709", string value = Place)
    {
        byte[] keys = [0, 0, 0, 0, 0, 0, 0, 2, .. Key("com.apple.quicktime.make"), .. Key(key)];
        byte[] values = [.. Value(1, "Millrace"), .. Value(2, value)];
        return Box("meta", [.. Handler("mdta"), .. Box("keys", keys), .. Box("ilst", values)]);

        static byte[] Key(string name) => Box("mdta", Encoding.ASCII.GetBytes(name));

        static byte[] Value(int number, string text)
        {
            var item = Box("none", Box("data", [0, 0, 0, 1, 0, 0, 0, 0, .. Encoding.UTF8.GetBytes(text)]));
            BinaryPrimitives.WriteInt32BigEndian(item.AsSpan(4), number);
            return item;
        }
    }

    /// <summary>Notes in XML with a place, in a box of their own.</summary>
    public static byte[] Xmp() => Box("uuid", [0xBE, 0x7A, 0xCF, 0xCB, 0x97, 0xA9, 0x42, 0xE8, 0x9C, 0x71, 0x99, 0x94, 0x91, 0xE3, 0xAF, 0xAC, .. "<x exif:GPSLatitude='39,15.5N'/>"u8]);

    public static byte[] Box(string type, byte[] inside)
    {
        var box = new byte[inside.Length + 8];
        BinaryPrimitives.WriteInt32BigEndian(box, box.Length);
        Encoding.Latin1.GetBytes(type, box.AsSpan(4));
        inside.CopyTo(box, 8);
        return box;
    }

    /// <summary>RIFF: a tenth of a second of silence.</summary>
    public static byte[] Wav()
    {
        byte[] file = [.. "RIFF"u8, 0, 0, 0, 0, .. "WAVEfmt "u8, 16, 0, 0, 0, 1, 0, 1, 0, 0x40, 0x1F, 0, 0, 0x40, 0x1F, 0, 0, 1, 0, 8, 0, .. "data"u8, 0x20, 3, 0, 0, .. new byte[800]];
        BinaryPrimitives.WriteInt32LittleEndian(file.AsSpan(4), file.Length - 8);
        return file;
    }

    /// <summary>MPEG-1, layer III, 128 kbit/s at 44.1 kHz: frames of 417 bytes (144 · 128,000 / 44,100, ISO/IEC 11172-3, 2.4.3.1; from memory), behind tags.</summary>
    public static byte[] Mp3() => [.. "ID3"u8, 4, 0, 0, 0, 0, 0, 10, .. new byte[10], .. Enumerable.Repeat((byte[])[0xFF, 0xFB, 0x90, 0, .. new byte[413]], 5).SelectMany(f => f)];

    /// <summary>RFC 3533: one page that begins a stream of Opus (RFC 7845, 5.1).</summary>
    public static byte[] Ogg() => [.. "OggS"u8, 0, 2, .. new byte[8], 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 19, .. "OpusHead"u8, 1, 1, 0, 0, 0x80, 0xBB, 0, 0, 0, 0, 0];

    /// <summary>RFC 8794 and 9559: a head, a track of the type (1 video, 2 sound), and a cluster that was still being written.</summary>
    public static byte[] WebM(byte type) =>
    [
        0x1A, 0x45, 0xDF, 0xA3, 0x87, 0x42, 0x82, 0x84, .. "webm"u8,
        0x18, 0x53, 0x80, 0x67, 0x01, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF,
        0x16, 0x54, 0xAE, 0x6B, 0x88, 0xAE, 0x86, 0xD7, 0x81, 1, 0x83, 0x81, type,
        0x1F, 0x43, 0xB6, 0x75, 0x01, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xE7, 0x81, 0,
    ];

    private static byte[] Handler(string type) => Box("hdlr", [0, 0, 0, 0, 0, 0, 0, 0, .. Encoding.ASCII.GetBytes(type), .. new byte[12], 0]);
}
