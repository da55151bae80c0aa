using CoopLessons.Core.Sealing;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Travel;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Sealing;

/// <summary>What a mark was given out for.</summary>
public enum MarkKind { Record, Amendment, File }

/// <summary>
/// A fingerprint or a file's digest that was given out. Whoever holds a paper asks whether it is known, and nobody can say
/// beforehand of which family it is: so a row is read by its digits across families, as a secret address is by its secret.
/// Twelve digits of a digest cannot be guessed, and the row holds nothing but what they stand for.
/// </summary>
public sealed class KnownMark : IFamilyOwned, IAppendOnly
{
    private KnownMark() { }

    /// <param name="number">Of the amendment; 0 for what is none.</param>
    /// <param name="on">The day on which it was given out, in the family's time zone.</param>
    public KnownMark(Fingerprint mark, MarkKind kind, Guid schoolYearId, Guid learnerId, int number, DateOnly on) =>
        (Mark, Opening, Kind, SchoolYearId, LearnerId, Number, On, GivenOutHere) = (mark.Hex, OpeningOf(mark.Hex), kind, schoolYearId, learnerId, number, on, true);

    public Guid FamilyId { get; private set; }

    /// <summary>64 digits.</summary>
    public string Mark { get; private set; } = "";

    /// <summary>The first twelve of them, as they stand on a sheet's foot.</summary>
    public string Opening { get; private set; } = "";
    public MarkKind Kind { get; private set; }
    public Guid SchoolYearId { get; private set; }
    public Guid LearnerId { get; private set; }
    public int Number { get; private set; }
    public DateOnly On { get; private set; }

    /// <summary>False for one that came with a family from elsewhere: this server cannot vouch for it.</summary>
    [StaysHere("says what this server gave out itself")]
    public bool GivenOutHere { get; private set; }

    /// <summary>The digits by which rows are looked up.</summary>
    /// <param name="digits">Twelve or more.</param>
    public static string OpeningOf(string digits) => digits[..Fingerprint.ShortDigits];

    internal sealed class Mapping : IEntityTypeConfiguration<KnownMark>
    {
        public void Configure(EntityTypeBuilder<KnownMark> b)
        {
            b.HasKey(m => new { m.FamilyId, m.SchoolYearId, m.LearnerId, m.Mark });
            b.Property(m => m.Mark).HasMaxLength(64);
            b.Property(m => m.Opening).HasMaxLength(Fingerprint.ShortDigits);
            b.Property(m => m.Kind).HasConversion<string>().HasMaxLength(20);
            b.HasIndex(m => m.Opening);
        }
    }
}

/// <summary>A paper of a sealed year that was given out as a file.</summary>
public sealed class PaperMade : IFamilyOwned, IAppendOnly
{
    public const int LongestKind = 40;

    private PaperMade() { }

    /// <param name="kind">What paper it is, in small letters, such as <c>hours</c>.</param>
    /// <param name="fingerprint">That of the record, as it stands on the paper.</param>
    /// <param name="file">Of the file's bytes.</param>
    public PaperMade(Guid schoolYearId, Guid learnerId, string kind, Fingerprint fingerprint, Fingerprint file, DateOnly madeOn) =>
        (SchoolYearId, LearnerId, Kind, Fingerprint, FileMark, MadeOn) = (schoolYearId, learnerId, kind, fingerprint.Hex, file.Hex, madeOn);

    public Guid FamilyId { get; private set; }

    /// <summary>SHA-256 of the file: 64 digits. Files that are alike byte for byte are one paper.</summary>
    public string FileMark { get; private set; } = "";
    public Guid SchoolYearId { get; private set; }
    public Guid LearnerId { get; private set; }
    public string Kind { get; private set; } = "";
    public string Fingerprint { get; private set; } = "";

    /// <summary>In the family's time zone.</summary>
    public DateOnly MadeOn { get; private set; }

    internal sealed class Mapping : IEntityTypeConfiguration<PaperMade>
    {
        public void Configure(EntityTypeBuilder<PaperMade> b)
        {
            b.HasKey(p => new { p.FamilyId, p.SchoolYearId, p.LearnerId, p.FileMark });
            b.Property(p => p.FileMark).HasMaxLength(64);
            b.Property(p => p.Kind).HasMaxLength(LongestKind);
            b.Property(p => p.Fingerprint).HasMaxLength(64);
            b.HasOne<SealedRecord>().WithMany().HasForeignKey(p => new { p.FamilyId, p.SchoolYearId, p.LearnerId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
