using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using PdfSharp.Pdf;
using PdfSharp.Pdf.Advanced;

namespace CoopLessons.Documents.Pdf;

/// <summary>Header, objects, cross-reference table and trailer as ISO 32000-1, 7.5 lays them out, written from front to end.</summary>
internal static class WrittenPdf
{
    public static void Write(PdfDocument document, Stream file, CarriedStreams? carried)
    {
        using var counted = new Counted(file);
        counted.Write("%PDF-1.7\n%"u8);
        counted.Write([0xE2, 0xE3, 0xCF, 0xD3, (byte)'\n']);
        var offsets = new SortedDictionary<int, long>();
        foreach (var item in document.Internals.GetAllObjects().OrderBy(PdfInternals.GetObjectNumber))
        {
            offsets[PdfInternals.GetObjectNumber(item)] = counted.Position;
            if (item is PdfDictionary dictionary && carried?.Holds(dictionary) == true)
                WriteCarried(document, dictionary, counted, carried);
            else
                document.Internals.WriteObject(counted, item);
            counted.WriteByte((byte)'\n');
        }

        var size = offsets.Keys.Max() + 1;
        var id = counted.Digest();
        var start = counted.Position;
        var end = new StringBuilder();
        end.Append(CultureInfo.InvariantCulture, $"xref\n0 {size}\n0000000000 65535 f \n");
        for (var number = 1; number < size; number++)
        {
            end.Append(offsets.TryGetValue(number, out var offset)
                ? string.Create(CultureInfo.InvariantCulture, $"{offset:0000000000} 00000 n \n")
                : "0000000000 65535 f \n");
        }

        var root = PdfInternals.GetObjectNumber(document.Internals.Catalog);
        var info = PdfInternals.GetObjectNumber(document.Info);
        end.Append(CultureInfo.InvariantCulture, $"trailer\n<</Size {size}/Root {root} 0 R/Info {info} 0 R/ID[<{id}><{id}>]>>\nstartxref\n{start}\n%%EOF\n");
        counted.Write(Encoding.Latin1.GetBytes(end.ToString()));
    }

    /// <summary>A dictionary whose stream lies elsewhere: the same members without a stream of its own, then the bytes from there.</summary>
    private static void WriteCarried(PdfDocument document, PdfDictionary dictionary, Stream file, CarriedStreams carried)
    {
        var members = new PdfDictionary(document);
        foreach (var (key, value) in dictionary.Elements)
        {
            if (value is not null)
                members.Elements[key] = value is PdfObject { Reference: null } direct ? direct.Clone() : value;
        }

        members.Elements.SetInteger("/Length", carried.LengthOf(dictionary));
        var number = PdfInternals.GetObjectNumber(dictionary).ToString(CultureInfo.InvariantCulture);
        file.Write(Encoding.Latin1.GetBytes(number + " 0 obj\n"));
        document.Internals.WriteObject(file, members);
        file.Write("\nstream\n"u8);
        carried.CopyTo(dictionary, file);
        file.Write("\nendstream\nendobj\n"u8);
    }

    /// <summary>Passes everything on and keeps count and digest of it; what it writes to need not be able to say where it stands.</summary>
    private sealed class Counted(Stream file) : Stream
    {
        private readonly IncrementalHash _digest = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        private long _count;

        public override bool CanRead => false;
        public override bool CanSeek => false;
        public override bool CanWrite => true;
        public override long Length => _count;

        public override long Position
        {
            get => _count;
            set => throw new NotSupportedException();
        }

        /// <summary>The first sixteen bytes of the digest of what was written so far.</summary>
        public string Digest() => Convert.ToHexString(_digest.GetCurrentHash()[..16]);

        public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

        public override void Write(ReadOnlySpan<byte> buffer)
        {
            file.Write(buffer);
            _digest.AppendData(buffer);
            _count += buffer.Length;
        }

        public override void WriteByte(byte value) => Write([value]);

        public override void Flush() => file.Flush();

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        protected override void Dispose(bool disposing)
        {
            if (disposing)
                _digest.Dispose();
            base.Dispose(disposing);
        }
    }
}
