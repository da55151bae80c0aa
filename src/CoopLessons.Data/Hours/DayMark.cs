using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Hours;

/// <summary>A hand-made mark on a learner's date; it wins over the computed standing.</summary>
public sealed class DayMark : IFamilyOwned, IVersioned
{
    private DayMark() { }

    public DayMark(Guid learnerId, DateOnly date, bool counts, string by, DateTime now)
    {
        (LearnerId, Date) = (learnerId, date);
        Set(counts, by, now);
    }

    public Guid FamilyId { get; private set; }
    public Guid LearnerId { get; private set; }
    public DateOnly Date { get; private set; }
    public bool Counts { get; private set; }
    public string By { get; private set; } = "";
    public DateTime At { get; private set; }
    public int Version { get; private set; }

    public void Set(bool counts, string by, DateTime now) => (Counts, By, At) = (counts, by, now);

    internal sealed class Mapping : IEntityTypeConfiguration<DayMark>
    {
        public void Configure(EntityTypeBuilder<DayMark> b)
        {
            b.HasKey(m => new { m.FamilyId, m.LearnerId, m.Date });
            b.Property(m => m.By).HasMaxLength(60);
            b.HasOne<Learner>().WithMany().HasForeignKey(m => new { m.FamilyId, m.LearnerId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
