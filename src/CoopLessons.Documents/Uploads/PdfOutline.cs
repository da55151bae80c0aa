using CoopLessons.Documents.Pdf;

namespace CoopLessons.Documents.Uploads;

/// <summary>
/// A first look over a PDF's bytes, before anything reads it in earnest: brackets nested so deep that a reader would run
/// out of stack, and compressed tables, objects or contents that would unpack to more than this program may hold. It
/// believes nothing that the file says of itself: every place where a stream may begin is tried.
/// </summary>
internal static class PdfOutline
{
    /// <summary>
    /// Brackets open at once. Compressed bytes hold brackets by chance, as many of either kind: twenty-five megabytes of
    /// them wander some hundreds from balance, never so far.
    /// </summary>
    private const int DeepestNesting = 10_000;

    /// <summary>What one stream that is not an image may unpack to, in bytes; and all of them together.</summary>
    private const long MostUnpacked = 64_000_000;
    private const long MostUnpackedInAll = 400_000_000;

    public static bool IsBearable(byte[] file)
    {
        var depth = 0;
        if (!Nests(file, ref depth))
            return false;
        var unpacked = 0L;
        var before = 0;
        for (var at = Next(file, 0); at >= 0; at = Next(file, at))
        {
            var head = Plain(file.AsSpan(before..at));
            before = at;
            var isObjects = head.IndexOf("/ObjStm"u8) >= 0 || head.IndexOf("/XRef"u8) >= 0;
            if (!isObjects && head.IndexOf("/Image"u8) >= 0)
                continue;
            var first = head.IndexOf("FlateDecode"u8);
            // Deflated twice over, or objects packed in another way, is nothing that a program writes.
            if (first >= 0 && head[(first + 1)..].IndexOf("FlateDecode"u8) >= 0)
                return false;
            if (!LooksDeflated(file, at))
            {
                if (isObjects && head.IndexOf("/Filter"u8) >= 0)
                    return false;
                continue;
            }

            if (!Unpacks(file.AsMemory(at), isObjects, ref unpacked))
                return false;
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

    private static bool Nests(ReadOnlySpan<byte> bytes, ref int depth)
    {
        foreach (var one in bytes)
        {
            if (one is (byte)'[' or (byte)'<' && ++depth > DeepestNesting)
                return false;
            if (one is (byte)']' or (byte)'>' && depth > 0)
                depth--;
        }

        return true;
    }

    /// <summary>Where the next stream's bytes may begin: behind the word and its line end; -1 for none.</summary>
    private static int Next(byte[] file, int from)
    {
        while (true)
        {
            var found = file.AsSpan(from).IndexOf("stream"u8);
            if (found < 0)
                return -1;
            var start = from + found;
            from = start + "stream"u8.Length;
            if (start >= 3 && file.AsSpan(start - 3, 3).SequenceEqual("end"u8))
                continue;
            if (from < file.Length && file[from] == '\r')
                from++;
            if (from < file.Length && file[from] == '\n')
                from++;
            return from;
        }
    }

    /// <summary>The text with letters that were written as numbers written out (ISO 32000-1, 7.3.5), so that no name hides.</summary>
    private static ReadOnlySpan<byte> Plain(ReadOnlySpan<byte> text)
    {
        if (text.IndexOf((byte)'#') < 0)
            return text;
        var plain = new byte[text.Length];
        var length = 0;
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] == '#' && i + 2 < text.Length && char.IsAsciiHexDigit((char)text[i + 1]) && char.IsAsciiHexDigit((char)text[i + 2]))
            {
                plain[length++] = (byte)(Convert.FromHexString([(char)text[i + 1], (char)text[i + 2]])[0]);
                i += 2;
            }
            else
            {
                plain[length++] = text[i];
            }
        }

        return plain.AsSpan(0, length);
    }

    /// <summary>Whether a zlib stream's head stands there (RFC 1950, 2.2).</summary>
    private static bool LooksDeflated(byte[] file, int at) => at + 2 < file.Length && (file[at] & 15) == 8 && (file[at] * 256 + file[at + 1]) % 31 == 0;

    private static bool Unpacks(ReadOnlyMemory<byte> bytes, bool isObjects, ref long unpacked)
    {
        var buffer = new byte[81_920];
        var (count, depth) = (0L, 0);
        try
        {
            using var raw = WholeZlib.Inflate(bytes);
            int read;
            while ((read = raw.Read(buffer)) > 0)
            {
                count += read;
                if (count > MostUnpacked || (isObjects && !Nests(buffer.AsSpan(0, read), ref depth)))
                    return false;
            }
        }
        catch (InvalidDataException)
        {
            // Whether a damaged stream matters shows when the pages are taken.
        }

        unpacked += count;
        return unpacked <= MostUnpackedInAll;
    }
}
