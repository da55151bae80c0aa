using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Files;

/// <summary>Kinds of files on the shelf, as they were found to be by their content; <see cref="AsItCame"/> for an original that nothing here shows.</summary>
public enum StoredKind { Pdf, Png, Jpeg, Mp3, Mp4, WebM, Ogg, Wav, AsItCame }

/// <summary>A file on the family's shelf. It is named by its content alone and never changes.</summary>
public sealed class StoredFile : IFamilyOwned
{
    private StoredFile() { }

    /// <param name="hash">As <see cref="FileShelf.PutAsync"/> gave it.</param>
    /// <param name="pages">1 or more; an image has one.</param>
    /// <param name="at">UTC.</param>
    public StoredFile(string hash, StoredKind kind, long bytes, int pages, string by, DateTime at) =>
        (Hash, Kind, Bytes, Pages, UploadedBy, UploadedAt) = (hash, kind, bytes, pages, by, at);

    public Guid FamilyId { get; private set; }
    public string Hash { get; private set; } = "";
    public StoredKind Kind { get; private set; }
    public long Bytes { get; private set; }
    public int Pages { get; private set; }

    /// <summary>As the family calls them.</summary>
    public string UploadedBy { get; private set; } = "";
    public DateTime UploadedAt { get; private set; }

    internal sealed class Mapping : IEntityTypeConfiguration<StoredFile>
    {
        public void Configure(EntityTypeBuilder<StoredFile> b)
        {
            b.HasKey(f => new { f.FamilyId, f.Hash });
            b.Property(f => f.Hash).HasMaxLength(64);
            b.Property(f => f.UploadedBy).HasMaxLength(People.Person.LongestName);
        }
    }
}
