using System.Buffers.Binary;
using System.Security.Cryptography;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Log.Sheets;

/// <summary>Rows of a file that were taken into the log at once, and can be taken out again at once.</summary>
public sealed class LogImport : IFamilyOwned, IVersioned
{
    private LogImport() { }

    /// <param name="lines">Of the rows that went in.</param>
    /// <param name="bad">How many rows could not.</param>
    /// <param name="there">How many were left out since they were there already.</param>
    public LogImport(Guid id, string fileName, Author by, DateTime now, IEnumerable<int> lines, int bad, int there) =>
        (Id, FileName, By, At, Lines, Bad, There) = (id, fileName, by.Name, now, [.. lines], bad, there);

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public string FileName { get; private set; } = "";

    /// <summary>As the family calls them.</summary>
    public string By { get; private set; } = "";
    public DateTime At { get; private set; }
    public List<int> Lines { get; private set; } = [];
    public int Bad { get; private set; }
    public int There { get; private set; }

    /// <summary>Null while its entries stand.</summary>
    public DateTime? UndoneAt { get; private set; }
    public int Version { get; private set; }

    public void Undo(DateTime now) => UndoneAt ??= now;

    /// <summary>The entry of a row follows from the import and its line, so that a second sending finds it there.</summary>
    public static Guid EntryId(Guid importId, int line)
    {
        Span<byte> said = stackalloc byte[20];
        importId.TryWriteBytes(said, bigEndian: true, out _);
        BinaryPrimitives.WriteInt32BigEndian(said[16..], line);
        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(said, hash);
        // RFC 9562 § 5.8: an id of one’s own making.
        hash[6] = (byte)(hash[6] & 0x0F | 0x80);
        hash[8] = (byte)(hash[8] & 0x3F | 0x80);
        return new Guid(hash[..16], bigEndian: true);
    }

    internal sealed class Mapping : IEntityTypeConfiguration<LogImport>
    {
        public void Configure(EntityTypeBuilder<LogImport> b)
        {
            b.HasKey(i => new { i.FamilyId, i.Id });
            b.Property(i => i.Id).ValueGeneratedNever();
            b.Property(i => i.FileName).HasMaxLength(BroughtSheet.LongestName);
            b.Property(i => i.By).HasMaxLength(People.Person.LongestName);
            b.Property(i => i.Lines).AsJson();
        }
    }
}
