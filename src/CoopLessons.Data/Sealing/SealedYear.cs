using CoopLessons.Core.Calendar;
using CoopLessons.Core.Sealing;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Sealing;

/// <summary>
/// A school year that is read-only from its sealing on, for all learners. Names and choices of the family are kept as they
/// stood, so that the family may change them for years to come.
/// </summary>
public sealed class SealedYear : IFamilyOwned, IAppendOnly
{
    private SealedYear() { }

    /// <param name="on">The day of the sealing in the family's time zone.</param>
    /// <param name="now">UTC.</param>
    public SealedYear(SchoolYear year, Family family, DateOnly on, Author by, DateTime now)
    {
        (SchoolYearId, YearName, First, Last) = (year.Id, year.Name, year.First, year.Last);
        (FamilyName, CountingPolicy, MinimumDay) = (family.Name, family.CountingPolicy, family.MinimumDay);
        (SealedOn, SealedAt, SealedById, SealedBy) = (on, now, by.PersonId, by.Name);
    }

    public Guid FamilyId { get; private set; }
    public Guid SchoolYearId { get; private set; }
    public string YearName { get; private set; } = "";
    public DateOnly First { get; private set; }

    /// <summary>Included.</summary>
    public DateOnly Last { get; private set; }
    public string FamilyName { get; private set; } = "";
    public string CountingPolicy { get; private set; } = "";

    /// <summary>Minutes.</summary>
    public int MinimumDay { get; private set; }
    public DateOnly SealedOn { get; private set; }

    /// <summary>UTC.</summary>
    public DateTime SealedAt { get; private set; }
    public Guid SealedById { get; private set; }

    /// <summary>As the family calls them.</summary>
    public string SealedBy { get; private set; } = "";

    public DayRange Days => new(First, Last);

    internal sealed class Mapping : IEntityTypeConfiguration<SealedYear>
    {
        public void Configure(EntityTypeBuilder<SealedYear> b)
        {
            b.HasKey(s => new { s.FamilyId, s.SchoolYearId });
            b.Property(s => s.YearName).HasMaxLength(SchoolYear.LongestName);
            b.Property(s => s.FamilyName).HasMaxLength(Family.LongestName);
            b.Property(s => s.CountingPolicy).HasMaxLength(Family.LongestPolicy);
            b.Property(s => s.SealedBy).HasMaxLength(People.Person.LongestName);
            b.Ignore(s => s.Days);
            // No action rather than restrict: where the whole family goes, both go with it.
            b.HasOne<SchoolYear>().WithMany().HasForeignKey(s => new { s.FamilyId, s.SchoolYearId }).OnDelete(DeleteBehavior.NoAction);
        }
    }
}

/// <summary>The record of one learner's year as it was sealed.</summary>
public sealed class SealedRecord : IFamilyOwned, IAppendOnly
{
    private SealedRecord() { }

    public SealedRecord(Guid schoolYearId, Guid learnerId, YearRecord record) =>
        (SchoolYearId, LearnerId, LearnerName, Text, Fingerprint) = (schoolYearId, learnerId, record.Learner, record.Text, record.Fingerprint.Hex);

    public Guid FamilyId { get; private set; }
    public Guid SchoolYearId { get; private set; }
    public Guid LearnerId { get; private set; }

    /// <summary>As it was on that day.</summary>
    public string LearnerName { get; private set; } = "";

    /// <summary>The record in its one form; its UTF-8 is what the fingerprint is of.</summary>
    public string Text { get; private set; } = "";

    /// <summary>64 digits.</summary>
    public string Fingerprint { get; private set; } = "";

    internal sealed class Mapping : IEntityTypeConfiguration<SealedRecord>
    {
        public void Configure(EntityTypeBuilder<SealedRecord> b)
        {
            b.HasKey(r => new { r.FamilyId, r.SchoolYearId, r.LearnerId });
            b.Property(r => r.LearnerName).HasMaxLength(Learner.LongestName);
            b.Property(r => r.Fingerprint).HasMaxLength(64);
            b.HasOne<SealedYear>().WithMany().HasForeignKey(r => new { r.FamilyId, r.SchoolYearId }).OnDelete(DeleteBehavior.Cascade);
            b.HasOne<Learner>().WithMany().HasForeignKey(r => new { r.FamilyId, r.LearnerId }).OnDelete(DeleteBehavior.NoAction);
        }
    }
}

/// <summary>A late correction of one learner's sealed year, with the record as it left it.</summary>
public sealed class Amendment : IFamilyOwned, IAppendOnly
{
    public const int LongestWhy = LogRevision.LongestWhy;

    private Amendment() { }

    /// <param name="record">With the amendment's story.</param>
    /// <param name="entryId">The entry of the log that was corrected; null where it was another thing, or several.</param>
    /// <param name="on">The day in the family's time zone.</param>
    /// <exception cref="ArgumentException">A record without an amendment's story.</exception>
    public Amendment(Guid schoolYearId, Guid learnerId, YearRecord record, Guid? entryId, DateOnly on, Author by, DateTime now)
    {
        var told = record.Amendment ?? throw new ArgumentException("The record of an amendment tells it.", nameof(record));
        (SchoolYearId, LearnerId, Number, EntryId, Why, Changes) = (schoolYearId, learnerId, told.Number, entryId, told.Why, [.. told.Changes]);
        (AmendedOn, At, ById, By, Text, Fingerprint) = (on, now, by.PersonId, by.Name, record.Text, record.Fingerprint.Hex);
    }

    public Guid FamilyId { get; private set; }
    public Guid SchoolYearId { get; private set; }
    public Guid LearnerId { get; private set; }

    /// <summary>1 for the first of the learner's year.</summary>
    public int Number { get; private set; }
    public Guid? EntryId { get; private set; }
    public string Why { get; private set; } = "";

    /// <summary>What was and what is, in words.</summary>
    public List<RecordChange> Changes { get; private set; } = [];
    public DateOnly AmendedOn { get; private set; }

    /// <summary>UTC.</summary>
    public DateTime At { get; private set; }
    public Guid ById { get; private set; }
    public string By { get; private set; } = "";

    /// <summary>The whole record after it, which names the fingerprint before it.</summary>
    public string Text { get; private set; } = "";

    /// <summary>64 digits.</summary>
    public string Fingerprint { get; private set; } = "";

    internal sealed class Mapping : IEntityTypeConfiguration<Amendment>
    {
        public void Configure(EntityTypeBuilder<Amendment> b)
        {
            b.HasKey(a => new { a.FamilyId, a.SchoolYearId, a.LearnerId, a.Number });
            b.Property(a => a.Number).ValueGeneratedNever();
            b.Property(a => a.Why).HasMaxLength(LongestWhy);
            b.Property(a => a.Changes).AsJson();
            b.Property(a => a.By).HasMaxLength(People.Person.LongestName);
            b.Property(a => a.Fingerprint).HasMaxLength(64);
            b.HasOne<SealedRecord>().WithMany().HasForeignKey(a => new { a.FamilyId, a.SchoolYearId, a.LearnerId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
