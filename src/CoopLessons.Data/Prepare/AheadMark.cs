using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Prepare;

/// <summary>What became of something that is begun ahead of an activity: begun and seen to, or not needed.</summary>
public sealed class AheadMark : IFamilyOwned, IVersioned
{
    private AheadMark() { }

    /// <param name="what">As the activity names it.</param>
    public AheadMark(Guid id, Guid activityId, string what) => (Id, ActivityId, What) = (id, activityId, what);

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public Guid ActivityId { get; private set; }
    public string What { get; private set; } = "";

    /// <summary>Null while it is only marked as not needed.</summary>
    public DateOnly? BegunOn { get; private set; }

    /// <summary>The day of the activity as it stood when it was begun.</summary>
    public DateOnly? MeantFor { get; private set; }
    public DateOnly? TendedOn { get; private set; }
    public bool NotNeeded { get; private set; }
    public int Version { get; private set; }

    public void Begin(DateOnly on, DateOnly meantFor) => (BegunOn, MeantFor, TendedOn, NotNeeded) = (on, meantFor, null, false);

    /// <exception cref="InvalidOperationException">Nothing was begun.</exception>
    public void Tend(DateOnly on)
    {
        if (BegunOn is null)
            throw new InvalidOperationException("Nothing was begun that somebody could see to.");
        TendedOn = on;
    }

    /// <summary>The parent thought about the day that moved, and leaves it as it was begun.</summary>
    public void MeanFor(DateOnly day) => MeantFor = day;

    public void NeedNot() => (BegunOn, MeantFor, TendedOn, NotNeeded) = (null, null, null, true);

    internal sealed class Mapping : IEntityTypeConfiguration<AheadMark>
    {
        public void Configure(EntityTypeBuilder<AheadMark> b)
        {
            b.HasKey(m => new { m.FamilyId, m.Id });
            b.Property(m => m.Id).ValueGeneratedNever();
            b.Property(m => m.What).HasMaxLength(Activity.LongestTitle);
            b.HasIndex(m => new { m.FamilyId, m.ActivityId, m.What }).IsUnique();
            b.HasOne<Activity>().WithMany().HasForeignKey(m => new { m.FamilyId, m.ActivityId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
