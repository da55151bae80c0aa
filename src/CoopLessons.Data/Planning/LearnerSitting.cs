using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Planning;

/// <summary>How long a learner sits at one thing, where the parent knows it better than the proposal from the age.</summary>
public sealed class LearnerSitting : IFamilyOwned, IVersioned
{
    public const int Least = 5;
    public const int Most = 180;

    private LearnerSitting() { }

    public LearnerSitting(Guid learnerId, int minutes) => (LearnerId, Minutes) = (learnerId, minutes);

    public Guid FamilyId { get; private set; }
    public Guid LearnerId { get; private set; }
    public int Minutes { get; private set; }
    public int Version { get; private set; }

    public void Set(int minutes) => Minutes = minutes;

    internal sealed class Mapping : IEntityTypeConfiguration<LearnerSitting>
    {
        public void Configure(EntityTypeBuilder<LearnerSitting> b)
        {
            b.HasKey(s => new { s.FamilyId, s.LearnerId });
            b.HasOne<Learner>().WithMany().HasForeignKey(s => new { s.FamilyId, s.LearnerId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
