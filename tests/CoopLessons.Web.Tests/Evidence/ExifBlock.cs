using System.Buffers.Binary;
using System.Text;

namespace CoopLessons.Web.Tests.Evidence;

/// <summary>
/// A block of tags as a camera writes it, big end first: Exif 2.3 (CIPA DC-008-2012), 4.6.2 for the directories, 4.6.4 to
/// 4.6.6 for the tags. The place is that of nothing but the middle of a lake.
/// </summary>
internal static class ExifBlock
{
    public const string Device = "Millrace pinhole";

    public static byte[] Of(int orientation = 1, string? takenAt = null, bool withPlace = true)
    {
        var exif = takenAt is null ? [] : new List<Tag> { Text(0x9003, takenAt) };
        List<Tag> gps = withPlace ? [Text(1, "N"), Rationals(2, 39, 15, 30), Text(3, "W"), Rationals(4, 94, 12, 6)] : [];
        List<Tag> first = [Text(0x0110, Device), Short(0x0112, orientation)];
        var pointers = (exif.Count > 0 ? 1 : 0) + (gps.Count > 0 ? 1 : 0);
        var after = 8 + Length(first, pointers);
        if (exif.Count > 0)
            first.Add(Long(0x8769, after));
        if (gps.Count > 0)
            first.Add(Long(0x8825, after + (exif.Count > 0 ? Length(exif, 0) : 0)));
        using var block = new MemoryStream();
        block.Write("MM\0*"u8);
        block.Write([0, 0, 0, 8]);
        foreach (var directory in new[] { first, exif, gps }.Where(d => d.Count > 0))
            Write(block, directory);
        return block.ToArray();
    }

    /// <summary>In a JPEG's segment APP1, behind the first mark.</summary>
    public static byte[] InJpeg(byte[] jpeg, byte[] block)
    {
        byte[] segment = [0xFF, 0xE1, 0, 0, .. "Exif\0\0"u8, .. block];
        BinaryPrimitives.WriteUInt16BigEndian(segment.AsSpan(2), (ushort)(segment.Length - 2));
        return [.. jpeg[..2], .. segment, .. jpeg[2..]];
    }

    private sealed record Tag(int Number, int Type, int Count, byte[] Value);

    private static Tag Text(int number, string text) => new(number, 2, text.Length + 1, [.. Encoding.ASCII.GetBytes(text), 0]);

    private static Tag Short(int number, int value) => new(number, 3, 1, [(byte)(value >> 8), (byte)value]);

    private static Tag Long(int number, int value) => new(number, 4, 1, [(byte)(value >> 24), (byte)(value >> 16), (byte)(value >> 8), (byte)value]);

    private static Tag Rationals(int number, params int[] values) =>
        new(number, 5, values.Length, [.. values.SelectMany(v => new byte[] { (byte)(v >> 24), (byte)(v >> 16), (byte)(v >> 8), (byte)v, 0, 0, 0, 1 })]);

    private static int Length(List<Tag> tags, int more) => 2 + 12 * (tags.Count + more) + 4 + tags.Sum(t => t.Value.Length > 4 ? t.Value.Length + (t.Value.Length & 1) : 0);

    private static void Write(MemoryStream block, List<Tag> tags)
    {
        var at = (int)block.Position + 2 + 12 * tags.Count + 4;
        var values = new List<byte>();
        Span<byte> entry = stackalloc byte[12];
        block.Write([(byte)(tags.Count >> 8), (byte)tags.Count]);
        foreach (var tag in tags)
        {
            entry.Clear();
            BinaryPrimitives.WriteUInt16BigEndian(entry, (ushort)tag.Number);
            BinaryPrimitives.WriteUInt16BigEndian(entry[2..], (ushort)tag.Type);
            BinaryPrimitives.WriteInt32BigEndian(entry[4..], tag.Count);
            if (tag.Value.Length <= 4)
            {
                tag.Value.CopyTo(entry[8..]);
            }
            else
            {
                BinaryPrimitives.WriteInt32BigEndian(entry[8..], at + values.Count);
                values.AddRange(tag.Value);
                if ((tag.Value.Length & 1) == 1)
                    values.Add(0);
            }

            block.Write(entry);
        }

        block.Write([0, 0, 0, 0, .. values]);
    }
}
