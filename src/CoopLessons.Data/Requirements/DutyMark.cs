using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Requirements;

/// <summary>What the family says of one duty of a learner's year: done, due on a date of its own, a line about it.</summary>
public sealed class DutyMark : IFamilyOwned
{
    public const int LongestKey = 200;
    public const int LongestNote = 300;

    private DutyMark() { }

    public DutyMark(Guid learnerId, Guid schoolYearId, string key) => (LearnerId, SchoolYearId, Key) = (learnerId, schoolYearId, key);

    public Guid FamilyId { get; private set; }
    public Guid LearnerId { get; private set; }
    public Guid SchoolYearId { get; private set; }

    /// <summary>The key by which the list of duties knows it.</summary>
    public string Key { get; private set; } = "";

    /// <summary>Null while it is open.</summary>
    public DateOnly? DoneOn { get; private set; }

    /// <summary>The family's own due date; null where the law's holds.</summary>
    public DateOnly? SetDue { get; private set; }
    public string Note { get; private set; } = "";

    /// <summary>Whether it says nothing, so that the row is not needed.</summary>
    public bool IsEmpty => DoneOn is null && SetDue is null && Note.Length == 0;

    public void Done(DateOnly? on) => DoneOn = on;

    public void DueOn(DateOnly? date) => SetDue = date;

    public void Remark(string note) => Note = note;

    internal sealed class Mapping : IEntityTypeConfiguration<DutyMark>
    {
        public void Configure(EntityTypeBuilder<DutyMark> b)
        {
            b.HasKey(m => new { m.FamilyId, m.LearnerId, m.SchoolYearId, m.Key });
            b.Property(m => m.Key).HasMaxLength(LongestKey);
            b.Property(m => m.Note).HasMaxLength(LongestNote);
            b.Ignore(m => m.IsEmpty);
            b.HasOne<Learner>().WithMany().HasForeignKey(m => new { m.FamilyId, m.LearnerId }).OnDelete(DeleteBehavior.Cascade);
            b.HasOne<SchoolYear>().WithMany().HasForeignKey(m => new { m.FamilyId, m.SchoolYearId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
