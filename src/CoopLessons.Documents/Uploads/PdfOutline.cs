using CoopLessons.Documents.Pdf;

namespace CoopLessons.Documents.Uploads;

/// <summary>
/// A first look over a PDF's bytes, before anything reads it in earnest: brackets nested so deep that a reader would run
/// out of stack, and compressed tables, objects or page contents that would unpack to more than this program may hold.
/// </summary>
internal static class PdfOutline
{
    private const int DeepestNesting = 256;

    /// <summary>What a stream that is not an image may unpack to, in bytes.</summary>
    private const long MostUnpacked = 64_000_000;
    private const int LongestHead = 4096;

    public static bool IsBearable(byte[] file)
    {
        var depth = 0;
        for (var at = 0; at < file.Length; at++)
        {
            switch (file[at])
            {
                case (byte)'[' or (byte)'<':
                    if (++depth > DeepestNesting)
                        return false;
                    break;
                case (byte)']' or (byte)'>':
                    depth = Math.Max(0, depth - 1);
                    break;
                case (byte)'s' when Begins(file, at, "stream"u8) && (at < 3 || !file.AsSpan(at - 3, 3).SequenceEqual("end"u8)):
                    depth = 0;
                    var from = at + "stream"u8.Length;
                    from += Begins(file, from, "\r\n"u8) ? 2 : 1;
                    var length = file.AsSpan(Math.Min(from, file.Length)).IndexOf("endstream"u8);
                    if (length < 0)
                        return true;
                    if (!UnpacksWell(file, Math.Max(0, at - LongestHead)..at, from, length))
                        return false;
                    at = from + length + "endstream"u8.Length - 1;
                    break;
            }
        }

        return true;
    }

    /// <summary>Whether the last trailer or any cross-reference stream says that the file is encrypted (ISO 32000-1, 7.6.1).</summary>
    public static bool IsLocked(byte[] file)
    {
        for (var at = file.AsSpan().IndexOf("/Encrypt"u8); at >= 0;)
        {
            var after = at + "/Encrypt"u8.Length;
            // A reference or a dictionary stands behind it; /EncryptMetadata is a longer name.
            if (after < file.Length && (char.IsWhiteSpace((char)file[after]) || file[after] == '<'))
                return true;
            var next = file.AsSpan(after).IndexOf("/Encrypt"u8);
            at = next < 0 ? -1 : after + next;
        }

        return false;
    }

    private static bool UnpacksWell(byte[] file, Range before, int from, int length)
    {
        var head = file.AsSpan(before);
        var start = head.LastIndexOf(" obj"u8);
        head = start < 0 ? head : head[start..];
        if (head.IndexOf("FlateDecode"u8) < 0 || head.IndexOf("/Image"u8) >= 0)
            return true;
        // Deflated twice over is nothing that a program writes.
        var first = head.IndexOf("FlateDecode"u8);
        if (head[(first + 1)..].IndexOf("FlateDecode"u8) >= 0)
            return false;
        try
        {
            return WholeZlib.Inflated(file.AsMemory(from, length), MostUnpacked) <= MostUnpacked;
        }
        catch (InvalidDataException)
        {
            // Whether a damaged stream matters shows when the pages are taken.
            return true;
        }
    }

    private static bool Begins(byte[] file, int at, ReadOnlySpan<byte> word) => at + word.Length <= file.Length && file.AsSpan(at, word.Length).SequenceEqual(word);
}
