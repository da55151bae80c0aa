using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops.Days;

/// <summary>
/// A parent's word on a class that a child was in: it went into the log, or it did not. Said once for each child, so that
/// nothing comes into the log twice; the family's own, also after it left the co-op.
/// </summary>
public sealed class BeenWord : IFamilyOwned
{
    private BeenWord() { }

    public BeenWord(Guid meetingId, Guid classId, Guid learnerId, Guid? entryId, DateTime now) =>
        (MeetingId, ClassId, LearnerId, EntryId, SaidAt) = (meetingId, classId, learnerId, entryId, now);

    public Guid FamilyId { get; private set; }
    public Guid MeetingId { get; private set; }
    public Guid ClassId { get; private set; }
    public Guid LearnerId { get; private set; }

    /// <summary>The entry of the log that it became; null where it was declined.</summary>
    public Guid? EntryId { get; private set; }
    public DateTime SaidAt { get; private set; }

    internal sealed class Mapping : IEntityTypeConfiguration<BeenWord>
    {
        public void Configure(EntityTypeBuilder<BeenWord> b)
        {
            b.HasKey(w => new { w.FamilyId, w.MeetingId, w.ClassId, w.LearnerId });
            b.HasOne<Learner>().WithMany().HasForeignKey(w => new { w.FamilyId, w.LearnerId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
