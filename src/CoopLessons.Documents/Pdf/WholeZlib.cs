using System.Buffers.Binary;
using System.IO.Compression;
using System.Runtime.InteropServices;
using PdfSharp.Pdf;

namespace CoopLessons.Documents.Pdf;

/// <summary>
/// A deflated stream of a PDF ends with a checksum (RFC 1950, 2.2) that many programs leave out or cut off. Readers take
/// it all the same; a file that is to pass a strict one carries it.
/// </summary>
internal static class WholeZlib
{
    private const uint Modulus = 65_521;

    /// <summary>The stream's bytes as they are where they are whole or not deflated; else deflated anew.</summary>
    /// <exception cref="InvalidDataException">The stream cannot be inflated.</exception>
    public static byte[] Mend(PdfDictionary dictionary)
    {
        var bytes = dictionary.Stream.Value;
        var filter = dictionary.Elements.GetValue("/Filter");
        if (filter is PdfArray { Elements.Count: 1 } alone)
            filter = alone.Elements[0];
        if (filter is not PdfName { Value: "/FlateDecode" } || IsWhole(bytes))
            return bytes;
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true))
        using (var raw = Inflate(bytes))
            raw.CopyTo(zlib);
        return packed.ToArray();
    }

    public static ZLibStream Inflate(ReadOnlyMemory<byte> bytes) => MemoryMarshal.TryGetArray(bytes, out var part)
        ? new ZLibStream(new MemoryStream(part.Array!, part.Offset, part.Count, writable: false), CompressionMode.Decompress)
        : throw new ArgumentException("Only memory of an array is inflated.", nameof(bytes));

    /// <summary>Whether it inflates and ends with the checksum of what comes out.</summary>
    private static bool IsWhole(byte[] bytes)
    {
        if (bytes.Length < 6)
            return false;
        var end = BinaryPrimitives.ReadUInt32BigEndian(bytes.AsSpan(bytes.Length - 4));
        try
        {
            using var raw = Inflate(bytes);
            return Adler(raw) == end;
        }
        catch (InvalidDataException)
        {
            return false;
        }
    }

    private static uint Adler(Stream raw)
    {
        var (a, b) = (1u, 0u);
        var buffer = new byte[81_920];
        int read;
        while ((read = raw.Read(buffer)) > 0)
        {
            // As many sums as fit 32 bits before the remainder is taken.
            for (var from = 0; from < read; from += 3_800)
            {
                foreach (var one in buffer.AsSpan(from, Math.Min(3_800, read - from)))
                {
                    a += one;
                    b += a;
                }

                a %= Modulus;
                b %= Modulus;
            }
        }

        return (b << 16) | a;
    }
}
