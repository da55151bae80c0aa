using System.Buffers.Binary;

namespace CoopLessons.Documents.Uploads;

/// <summary>Sound and video in elements (Matroska, RFC 9559; elements as in RFC 8794), of the kind that names itself webm.</summary>
internal static class WebMLook
{
    public static RecordingLook Of(byte[] file)
    {
        var head = Element(file, 0, file.Length);
        if (file.AsSpan(head.Body, head.End - head.Body).IndexOf((ReadOnlySpan<byte>)[0x42, 0x82, 0x84, (byte)'w', (byte)'e', (byte)'b', (byte)'m']) < 0)
            return new RecordingLook(FileFault.NotKnown);
        // Names of tags that hold a place (Matroska's list of tags, from memory).
        if (file.AsSpan().IndexOf("_LOCATION"u8) >= 0)
            return new RecordingLook(FileFault.Located);
        var segment = Element(file, head.End, file.Length);
        var (isVideo, isSound, hasContent) = (false, false, false);
        for (var at = segment.Body; at < segment.End && !hasContent;)
        {
            var one = Element(file, at, segment.End);
            hasContent = one.Id == 0x1F43B675;
            if (one.Id == 0x1654AE6B)
            {
                for (var track = one.Body; track < one.End; track = Element(file, track, one.End).End)
                {
                    var type = TypeOf(file, Element(file, track, one.End));
                    (isVideo, isSound) = (isVideo || type == 1, isSound || type == 2);
                }
            }

            at = one.End;
        }

        if (segment.Id != 0x18538067 || !hasContent)
            return new RecordingLook(FileFault.Broken);
        return isVideo || isSound ? new RecordingLook(null, isVideo) : new RecordingLook(FileFault.NotKnown);
    }

    private static int TypeOf(byte[] file, (long Id, int Body, int End) track)
    {
        for (var at = track.Body; at < track.End;)
        {
            var one = Element(file, at, track.End);
            if (one.Id == 0x83 && one.End == one.Body + 1)
                return file[one.Body];
            at = one.End;
        }

        return 0;
    }

    private static (long Id, int Body, int End) Element(byte[] file, int at, int to)
    {
        var (id, idLength, _) = Number(file, at, keepMark: true);
        var (size, sizeLength, isUnknown) = Number(file, at + idLength, keepMark: false);
        var body = at + idLength + sizeLength;
        // What is written while it is recorded says no length and runs to the end.
        if (isUnknown)
            return (id, body, to);
        if (size > to - body)
            throw new InvalidDataException("An element leads out of what holds it.");
        return (id, body, body + (int)size);
    }

    private static (long Value, int Length, bool IsUnknown) Number(byte[] file, int at, bool keepMark)
    {
        var first = file[at];
        var length = 1;
        while (length <= 8 && (first & (0x80 >> (length - 1))) == 0)
            length++;
        if (length > 8)
            throw new InvalidDataException("A length is too long.");
        long value = keepMark ? first : first & (0xFF >> length);
        var ones = (first & (0xFF >> length)) == 0xFF >> length;
        for (var i = 1; i < length; i++)
        {
            value = value << 8 | file[at + i];
            ones &= file[at + i] == 0xFF;
        }

        return (value, length, ones);
    }
}

/// <summary>Sound and video in pages (RFC 3533).</summary>
internal static class OggLook
{
    public static RecordingLook Of(byte[] file)
    {
        var (isVideo, isSound) = (false, false);
        for (var at = 0; at < file.Length;)
        {
            if (at + 27 > file.Length || !file.AsSpan(at, 4).SequenceEqual("OggS"u8))
                return new RecordingLook(FileFault.Broken);
            var segments = file[at + 26];
            var body = at + 27 + segments;
            var end = body;
            foreach (var length in file.AsSpan(at + 27, segments))
                end += length;
            if (end > file.Length)
                return new RecordingLook(FileFault.Broken);
            if ((file[at + 5] & 2) != 0)
            {
                var first = file.AsSpan(body..end);
                isVideo |= first.StartsWith((ReadOnlySpan<byte>)[0x80, (byte)'t', (byte)'h', (byte)'e', (byte)'o']);
                isSound |= first.StartsWith("OpusHead"u8) || first.StartsWith((ReadOnlySpan<byte>)[1, (byte)'v', (byte)'o', (byte)'r', (byte)'b']) || first.StartsWith("Speex"u8) || first.StartsWith((ReadOnlySpan<byte>)[0x7F, (byte)'F', (byte)'L', (byte)'A', (byte)'C']);
            }

            at = end;
        }

        return isVideo || isSound ? new RecordingLook(null, isVideo) : new RecordingLook(FileFault.NotKnown);
    }
}

/// <summary>Sound in chunks (RIFF; Multimedia Programming Interface and Data Specifications 1.0, 1991; from memory).</summary>
internal static class WavLook
{
    public static RecordingLook Of(byte[] file)
    {
        var (hasFormat, hasSound) = (false, false);
        for (var at = 12; at + 8 <= file.Length;)
        {
            var size = BinaryPrimitives.ReadUInt32LittleEndian(file.AsSpan(at + 4));
            var isSound = file.AsSpan(at, 4).SequenceEqual("data"u8);
            hasFormat |= file.AsSpan(at, 4).SequenceEqual("fmt "u8);
            hasSound |= isSound;
            // A recording that was stopped in haste says no length.
            if (isSound && size is 0 or uint.MaxValue)
                break;
            if (size > file.Length - at - 8)
                return new RecordingLook(FileFault.Broken);
            at += 8 + (int)size + (int)(size & 1);
        }

        return new RecordingLook(hasFormat && hasSound ? null : FileFault.Broken);
    }
}

/// <summary>Sound in frames (ISO/IEC 11172-3, layer III, from memory), behind tags or not.</summary>
internal static class Mp3Look
{
    private static readonly int[] Rates1 = [0, 32, 40, 48, 56, 64, 80, 96, 112, 128, 160, 192, 224, 256, 320];
    private static readonly int[] Rates2 = [0, 8, 16, 24, 32, 40, 48, 56, 64, 80, 96, 112, 128, 144, 160];
    private static readonly int[] Samples = [44_100, 48_000, 32_000];

    public static RecordingLook Of(byte[] file)
    {
        var at = 0;
        if (file.AsSpan().StartsWith("ID3"u8))
        {
            // Seven bits a byte, so that no length looks like a frame.
            at = 10 + (file[6] << 21 | file[7] << 14 | file[8] << 7 | file[9]);
            while (at < file.Length && file[at] == 0)
                at++;
        }

        var first = FrameAt(file, at);
        if (first is null)
            return new RecordingLook(file[0] == 'I' ? FileFault.Broken : FileFault.NotKnown);
        return new RecordingLook(FrameAt(file, at + first.Value) is null ? FileFault.Broken : null);
    }

    /// <summary>How long the frame at a place is, in bytes; null where none begins.</summary>
    private static int? FrameAt(byte[] file, int at)
    {
        if (at < 0 || at + 4 > file.Length || file[at] != 0xFF || (file[at + 1] & 0xE6) != 0xE2)
            return null;
        var version = file[at + 1] >> 3 & 3;
        var (rate, samples) = (file[at + 2] >> 4, file[at + 2] >> 2 & 3);
        if (version == 1 || rate is 0 or 15 || samples == 3)
            return null;
        var kilobits = version == 3 ? Rates1[rate] : Rates2[rate];
        var frequency = Samples[samples] >> (version == 3 ? 0 : version == 2 ? 1 : 2);
        return (version == 3 ? 144 : 72) * kilobits * 1000 / frequency + (file[at + 2] >> 1 & 1);
    }
}
