using CoopLessons.Core.Credits;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Credits;

/// <summary>A parent's word that one entry's minutes in one subject belong to a course, or do not.</summary>
public sealed class CoursePick : IFamilyOwned
{
    private CoursePick() { }

    public CoursePick(Guid courseId, LogPart part, bool isIn) => (CourseId, EntryId, SubjectId, IsIn) = (courseId, part.EntryId, part.SubjectId, isIn);

    public Guid FamilyId { get; private set; }
    public Guid CourseId { get; private set; }
    public Guid EntryId { get; private set; }
    public Guid SubjectId { get; private set; }

    /// <summary>False where they were put out.</summary>
    public bool IsIn { get; private set; }

    public LogPart Part => new(EntryId, SubjectId);

    public void Become(bool isIn) => IsIn = isIn;

    internal sealed class Mapping : IEntityTypeConfiguration<CoursePick>
    {
        public void Configure(EntityTypeBuilder<CoursePick> b)
        {
            b.HasKey(p => new { p.FamilyId, p.CourseId, p.EntryId, p.SubjectId });
            b.Ignore(p => p.Part);
            b.HasOne<HighSchoolCourse>().WithMany().HasForeignKey(p => new { p.FamilyId, p.CourseId }).OnDelete(DeleteBehavior.Cascade);
            b.HasOne<LogEntry>().WithMany().HasForeignKey(p => new { p.FamilyId, p.EntryId }).OnDelete(DeleteBehavior.Cascade);
            b.HasOne<FamilySubject>().WithMany().HasForeignKey(p => new { p.FamilyId, p.SubjectId }).OnDelete(DeleteBehavior.NoAction);
        }
    }
}
