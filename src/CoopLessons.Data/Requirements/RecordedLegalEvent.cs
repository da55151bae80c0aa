using CoopLessons.Core.Requirements;
using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Requirements;

/// <summary>Something that happened to a learner and from which the law counts days. Told or taken back, never changed.</summary>
public sealed class RecordedLegalEvent : IFamilyOwned
{
    private RecordedLegalEvent() { }

    public RecordedLegalEvent(Guid id, Guid learnerId, LegalEvent what, DateOnly on) => (Id, LearnerId, Event, On) = (id, learnerId, what, on);

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public Guid LearnerId { get; private set; }
    public LegalEvent Event { get; private set; }
    public DateOnly On { get; private set; }

    internal sealed class Mapping : IEntityTypeConfiguration<RecordedLegalEvent>
    {
        public void Configure(EntityTypeBuilder<RecordedLegalEvent> b)
        {
            b.HasKey(e => new { e.FamilyId, e.Id });
            b.HasOne<Learner>().WithMany().HasForeignKey(e => new { e.FamilyId, e.LearnerId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
