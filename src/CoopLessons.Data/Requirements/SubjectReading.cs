using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Requirements;

/// <summary>The family's decision whether one of its subjects counts for one of a pathway's; it wins over what the catalog proposes.</summary>
public sealed class SubjectReading : IFamilyOwned
{
    private SubjectReading() { }

    public SubjectReading(string code, string pathwayId, string statuteSubject, Guid subjectId, bool counts) =>
        (Code, PathwayId, StatuteSubject, SubjectId, Counts) = (code, pathwayId, statuteSubject, subjectId, counts);

    public Guid FamilyId { get; private set; }

    /// <summary>As in <see cref="LearnerPathway"/>: empty for a pathway of the family's own.</summary>
    public string Code { get; private set; } = "";
    public string PathwayId { get; private set; } = "";

    /// <summary>The id of the pathway's subject.</summary>
    public string StatuteSubject { get; private set; } = "";
    public Guid SubjectId { get; private set; }
    public bool Counts { get; private set; }

    public void Decide(bool counts) => Counts = counts;

    internal sealed class Mapping : IEntityTypeConfiguration<SubjectReading>
    {
        public void Configure(EntityTypeBuilder<SubjectReading> b)
        {
            b.HasKey(r => new { r.FamilyId, r.Code, r.PathwayId, r.StatuteSubject, r.SubjectId });
            b.Property(r => r.Code).HasMaxLength(8);
            b.Property(r => r.PathwayId).HasMaxLength(LearnerPathway.LongestPathwayId);
            b.Property(r => r.StatuteSubject).HasMaxLength(LearnerPathway.LongestPathwayId);
            b.HasOne<FamilySubject>().WithMany().HasForeignKey(r => new { r.FamilyId, r.SubjectId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
