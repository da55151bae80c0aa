using CoopLessons.Data.Families;
using CoopLessons.Data.Files;
using CoopLessons.Data.Log;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Evidence;

/// <summary>What a piece is, as its content was found to be.</summary>
public enum PieceKind { Photo, Paper, Sound, Video }

/// <summary>What is said of a piece, set together.</summary>
/// <param name="Date">The day of the work.</param>
/// <param name="Learners">Whose work it is or who is in it; may be empty until somebody says so.</param>
/// <param name="SubjectId">What it shows; null until somebody says so.</param>
/// <param name="EntryId">The entry of the log that it belongs to; null for none.</param>
/// <param name="Caption">One line, in the child's own words where there are any.</param>
/// <param name="FacesOut">Faces are to be left out wherever it is shown outside the family.</param>
/// <param name="SetAside">Chosen for the portfolio.</param>
public sealed record PieceFacts(
    DateOnly Date, IReadOnlyList<Guid> Learners, Guid? SubjectId, Guid? EntryId, string Caption, bool FacesOut = false, bool SetAside = false);

/// <summary>The files of a piece.</summary>
/// <param name="Name">What the device called it, with the ending of what it is.</param>
/// <param name="Shown">What is kept of it and shown.</param>
/// <param name="Small">A small picture for lists; null for what is no picture.</param>
/// <param name="Original">As it came; kept besides only where the family says so, and where it differs.</param>
public sealed record PieceFiles(string Name, StoredFile Shown, StoredFile? Small = null, StoredFile? Original = null);

/// <summary>A photo, paper, sound or video that shows something that was done or made.</summary>
public sealed class Piece : IFamilyOwned, IVersioned
{
    public const int LongestCaption = 200;
    public const int LongestName = 100;

    /// <summary>How long a piece that was removed can be brought back.</summary>
    public static readonly TimeSpan WayBack = TimeSpan.FromDays(30);

    private Piece() { }

    /// <param name="id">Made where it was taken, so that a second sending is recognised.</param>
    /// <param name="takenAt">Minutes after midnight of its day, as the file or the phone said; null where nobody did.</param>
    /// <param name="now">UTC.</param>
    public Piece(Guid id, PieceKind kind, PieceFiles files, int? takenAt, PieceFacts facts, Author by, DateTime now)
    {
        (Id, Kind, TakenAt, Name) = (id, kind, takenAt, files.Name);
        (Hash, SmallHash, OriginalHash) = (files.Shown.Hash, files.Small?.Hash, files.Original?.Hash);
        (BroughtById, BroughtBy, BroughtAt) = (by.PersonId, by.Name, now);
        Describe(facts);
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public PieceKind Kind { get; private set; }
    public string Hash { get; private set; } = "";

    /// <summary>The picture as it stands in lists; null for what is no picture.</summary>
    public string? SmallHash { get; private set; }
    public string? OriginalHash { get; private set; }

    /// <summary>What the device called the file, with the ending of what it is.</summary>
    public string Name { get; private set; } = "";
    public DateOnly Date { get; private set; }
    public int? TakenAt { get; private set; }
    public List<Guid> Learners { get; private set; } = [];
    public Guid? SubjectId { get; private set; }
    public Guid? EntryId { get; private set; }
    public string Caption { get; private set; } = "";
    public bool FacesOut { get; private set; }
    public bool SetAside { get; private set; }
    public Guid BroughtById { get; private set; }

    /// <summary>As the family calls them.</summary>
    public string BroughtBy { get; private set; } = "";
    public DateTime BroughtAt { get; private set; }

    /// <summary>UTC; null while it stands. A removed piece is shown nowhere but where it can be brought back.</summary>
    public DateTime? RemovedAt { get; private set; }
    public int Version { get; private set; }

    public PieceFacts Facts => new(Date, Learners, SubjectId, EntryId, Caption, FacesOut, SetAside);

    public void Describe(PieceFacts facts)
    {
        Learners = [.. facts.Learners.Distinct()];
        (Date, SubjectId, EntryId, Caption) = (facts.Date, facts.SubjectId, facts.EntryId, facts.Caption);
        (FacesOut, SetAside) = (facts.FacesOut, facts.SetAside);
    }

    public void Remove(DateTime now) => RemovedAt ??= now;

    public void BringBack() => RemovedAt = null;

    internal sealed class Mapping : IEntityTypeConfiguration<Piece>
    {
        public void Configure(EntityTypeBuilder<Piece> b)
        {
            b.HasKey(p => new { p.FamilyId, p.Id });
            b.Property(p => p.Id).ValueGeneratedNever();
            b.Property(p => p.Kind).HasConversion<string>().HasMaxLength(20);
            b.Property(p => p.Hash).HasMaxLength(64);
            b.Property(p => p.SmallHash).HasMaxLength(64);
            b.Property(p => p.OriginalHash).HasMaxLength(64);
            b.Property(p => p.Name).HasMaxLength(LongestName);
            b.Property(p => p.Learners).AsJson();
            b.Property(p => p.Caption).HasMaxLength(LongestCaption);
            b.Property(p => p.BroughtBy).HasMaxLength(People.Person.LongestName);
            b.HasIndex(p => new { p.FamilyId, p.Date });
            b.HasIndex(p => new { p.FamilyId, p.EntryId });
            b.Ignore(p => p.Facts);
            b.HasOne<StoredFile>().WithMany().HasForeignKey(p => new { p.FamilyId, p.Hash }).OnDelete(DeleteBehavior.NoAction);
            b.HasOne<StoredFile>().WithMany().HasForeignKey(p => new { p.FamilyId, p.SmallHash }).OnDelete(DeleteBehavior.NoAction);
            b.HasOne<StoredFile>().WithMany().HasForeignKey(p => new { p.FamilyId, p.OriginalHash }).OnDelete(DeleteBehavior.NoAction);
            b.HasOne<FamilySubject>().WithMany().HasForeignKey(p => new { p.FamilyId, p.SubjectId }).OnDelete(DeleteBehavior.NoAction);
            b.HasOne<LogEntry>().WithMany().HasForeignKey(p => new { p.FamilyId, p.EntryId }).OnDelete(DeleteBehavior.NoAction);
        }
    }
}
