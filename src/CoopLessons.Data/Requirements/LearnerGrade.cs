using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Requirements;

/// <summary>The grade in which a learner stands in a school year, as a form asks for it; the work may be of other levels.</summary>
public sealed class LearnerGrade : IFamilyOwned
{
    private LearnerGrade() { }

    public LearnerGrade(Guid learnerId, Guid schoolYearId, int grade)
    {
        (LearnerId, SchoolYearId) = (learnerId, schoolYearId);
        Become(grade);
    }

    public Guid FamilyId { get; private set; }
    public Guid LearnerId { get; private set; }
    public Guid SchoolYearId { get; private set; }

    /// <summary>0 for kindergarten, 1–12.</summary>
    public int Grade { get; private set; }

    /// <exception cref="ArgumentOutOfRangeException">Outside 0–12.</exception>
    public void Become(int grade)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(grade);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(grade, 12);
        Grade = grade;
    }

    internal sealed class Mapping : IEntityTypeConfiguration<LearnerGrade>
    {
        public void Configure(EntityTypeBuilder<LearnerGrade> b)
        {
            b.HasKey(g => new { g.FamilyId, g.LearnerId, g.SchoolYearId });
            b.HasOne<Learner>().WithMany().HasForeignKey(g => new { g.FamilyId, g.LearnerId }).OnDelete(DeleteBehavior.Cascade);
            b.HasOne<SchoolYear>().WithMany().HasForeignKey(g => new { g.FamilyId, g.SchoolYearId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
