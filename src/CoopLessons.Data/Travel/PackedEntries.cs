using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;

namespace CoopLessons.Data.Travel;

/// <summary>Writes the entries of a ZIP one after the other, and remembers how long each is and its hash.</summary>
internal sealed class PackedEntries(Stream to) : IAsyncDisposable
{
    private readonly ZipArchive _zip = new(to, ZipArchiveMode.Create, leaveOpen: true, Encoding.UTF8);
    private readonly List<TravelEntry> _entries = [];

    public IReadOnlyList<TravelEntry> Entries => _entries;

    /// <param name="packed">False for what is packed already: pictures, papers.</param>
    public async Task PutAsync(string path, bool packed, Func<Stream, Task> write, CancellationToken ct)
    {
        var entry = _zip.CreateEntry(path, packed ? CompressionLevel.Optimal : CompressionLevel.NoCompression);
        // The same family is the same file, whenever it is made.
        entry.LastWriteTime = FamilyFile.Still;
        await using var into = await entry.OpenAsync(ct);
        await using var counted = new Counted(into);
        await write(counted);
        _entries.Add(new TravelEntry(path, counted.Bytes, counted.Hash()));
    }

    public Task PutTextAsync(string path, string text, CancellationToken ct) =>
        PutAsync(path, packed: true, to => to.WriteAsync(FamilyFile.Utf8.GetBytes(text), ct).AsTask(), ct);

    public ValueTask DisposeAsync() => _zip.DisposeAsync();

    private sealed class Counted(Stream into) : Stream
    {
        private readonly IncrementalHash _sum = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);

        public long Bytes { get; private set; }

        public string Hash() => Convert.ToHexStringLower(_sum.GetHashAndReset());

        public override bool CanRead => false;
        public override bool CanSeek => false;
        public override bool CanWrite => true;
        public override long Length => throw new NotSupportedException();
        public override long Position { get => Bytes; set => throw new NotSupportedException(); }

        public override void Write(byte[] buffer, int offset, int count)
        {
            _sum.AppendData(buffer, offset, count);
            Bytes += count;
            into.Write(buffer, offset, count);
        }

        public override async ValueTask WriteAsync(ReadOnlyMemory<byte> buffer, CancellationToken cancellationToken = default)
        {
            _sum.AppendData(buffer.Span);
            Bytes += buffer.Length;
            await into.WriteAsync(buffer, cancellationToken);
        }

        public override Task WriteAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) =>
            WriteAsync(buffer.AsMemory(offset, count), cancellationToken).AsTask();

        public override void Flush() => into.Flush();

        public override Task FlushAsync(CancellationToken cancellationToken) => into.FlushAsync(cancellationToken);

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        protected override void Dispose(bool disposing)
        {
            if (disposing)
                _sum.Dispose();
            base.Dispose(disposing);
        }
    }
}
