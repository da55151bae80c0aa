using CoopLessons.Core.Units;
using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Planning;

/// <summary>What the family would like of each week, such as science on Wednesdays or music in the morning.</summary>
public sealed class WeeklyWish : IFamilyOwned, IVersioned
{
    private WeeklyWish() { }

    /// <exception cref="ArgumentException">Not exactly one of subject and kind, or neither a day nor the morning.</exception>
    public WeeklyWish(Guid id, Guid? subjectId, ActivityKind? kind, DayOfWeek? day, bool morning)
    {
        Id = id;
        Wish(subjectId, kind, day, morning);
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public Guid? SubjectId { get; private set; }
    public ActivityKind? Kind { get; private set; }

    /// <summary>Null for any day.</summary>
    public DayOfWeek? Day { get; private set; }

    /// <summary>Over by noon.</summary>
    public bool Morning { get; private set; }
    public int Version { get; private set; }

    public void Wish(Guid? subjectId, ActivityKind? kind, DayOfWeek? day, bool morning)
    {
        if (subjectId is null == kind is null)
            throw new ArgumentException("A wish is about a subject or about a kind of work.", nameof(kind));
        if (day is null && !morning)
            throw new ArgumentException("A wish names a day or the morning.", nameof(day));
        (SubjectId, Kind, Day, Morning) = (subjectId, kind, day, morning);
    }

    internal sealed class Mapping : IEntityTypeConfiguration<WeeklyWish>
    {
        public void Configure(EntityTypeBuilder<WeeklyWish> b)
        {
            b.HasKey(w => new { w.FamilyId, w.Id });
            b.HasOne<FamilySubject>().WithMany().HasForeignKey(w => new { w.FamilyId, w.SubjectId }).OnDelete(DeleteBehavior.NoAction);
            b.ToTable(t => t.HasCheckConstraint("CK_Wishes_OneOf", "(\"SubjectId\" IS NULL) <> (\"Kind\" IS NULL)"));
        }
    }
}
