using CoopLessons.Core.Calendar;
using CoopLessons.Core.Credits;
using CoopLessons.Core.Hours;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Credits;

/// <summary>Study of a course that the log does not hold: a summer course, years before the log, a laboratory.</summary>
public sealed class OtherStudy : IFamilyOwned, IVersioned
{
    public const int LongestWhat = 120;
    public const int LongestWith = 80;

    /// <summary>A thousand hours, in minutes.</summary>
    public const int MostMinutes = 60_000;

    /// <summary>Of one course.</summary>
    public const int Most = 30;

    private OtherStudy() { }

    public OtherStudy(Guid id, Guid courseId, StudyElsewhere study)
    {
        (Id, CourseId) = (id, courseId);
        Describe(study);
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public Guid CourseId { get; private set; }
    public DateOnly First { get; private set; }

    /// <summary>Included.</summary>
    public DateOnly Last { get; private set; }
    public int Minutes { get; private set; }
    public string What { get; private set; } = "";
    public string With { get; private set; } = "";
    public int Version { get; private set; }

    public StudyElsewhere ToCore() => new(new DayRange(First, Last), new Minutes(Minutes), What, With);

    public void Describe(StudyElsewhere study) =>
        (First, Last, Minutes, What, With) = (study.Days.First, study.Days.Last, study.Minutes.Value, study.What, study.With);

    internal sealed class Mapping : IEntityTypeConfiguration<OtherStudy>
    {
        public void Configure(EntityTypeBuilder<OtherStudy> b)
        {
            b.HasKey(s => new { s.FamilyId, s.Id });
            b.Property(s => s.Id).ValueGeneratedNever();
            b.Property(s => s.What).HasMaxLength(LongestWhat);
            b.Property(s => s.With).HasMaxLength(LongestWith);
            b.HasOne<HighSchoolCourse>().WithMany().HasForeignKey(s => new { s.FamilyId, s.CourseId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
