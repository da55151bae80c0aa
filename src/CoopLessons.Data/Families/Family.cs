using CoopLessons.Core.Hours;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Travel;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Families;

/// <summary>A family: the owner of everything it writes.</summary>
public sealed class Family : IFamilyOwned, IVersioned
{
    public const int LongestName = 60;
    public const int LongestPolicy = 300;
    public const int UsualMinimumDay = 60;
    public const string UsualPolicy = "We count the minutes in which a child was learning with somebody or alone at set work; waiting, meals and chores that are already mastered are left out.";

    private Family() { }

    public Family(Guid id, string name, string timeZone, DateTime now)
    {
        (Id, Name, TimeZone, CreatedAt) = (id, name, timeZone, now);
    }

    public Guid Id { get; private set; }
    Guid IFamilyOwned.FamilyId => Id;
    public string Name { get; private set; } = "";

    /// <summary>IANA name. Days of the log are days in this zone.</summary>
    public string TimeZone { get; private set; } = "";

    /// <summary>Two-letter code of the state, or empty where the family lives elsewhere or would rather not say.</summary>
    public string State { get; private set; } = "";

    /// <summary>One line on what the family counts, printed on every report.</summary>
    public string CountingPolicy { get; private set; } = UsualPolicy;

    /// <summary>Minutes from which a day is a school day where no law sets a length.</summary>
    public int MinimumDay { get; private set; } = UsualMinimumDay;

    /// <summary>Whether a photo is kept as it came besides what is shown of it: with the place where it was taken.</summary>
    public bool KeepOriginals { get; private set; }

    /// <summary>When everything of the family is deleted, UTC; null while nobody asked for it.</summary>
    [StaysHere("says that it is to be deleted here")]
    public DateTime? LeavesAt { get; private set; }

    /// <summary>Who asked for that, as the family calls them.</summary>
    [StaysHere("goes with the day of deleting")]
    public string LeavingAskedBy { get; private set; } = "";
    public DateTime CreatedAt { get; private set; }
    public int Version { get; private set; }

    public void Describe(string name, string timeZone, string state) => (Name, TimeZone, State) = (name, timeZone, state);

    public void CountBy(string policy, Minutes minimumDay) => (CountingPolicy, MinimumDay) = (policy, minimumDay.Value);

    public void KeepPhotosAsTheyCame(bool keep) => KeepOriginals = keep;

    public void AskToLeave(string by, DateTime at) => (LeavesAt, LeavingAskedBy) = (at, by);

    public void Stay() => (LeavesAt, LeavingAskedBy) = (null, "");

    public DateOnly Today(TimeProvider clock) => DateOnly.FromDateTime(Local(clock.GetUtcNow()).DateTime);

    public DateTimeOffset Local(DateTimeOffset instant) => TimeZoneInfo.ConvertTime(instant, Zone);

    public TimeZoneInfo Zone => TimeZoneInfo.TryFindSystemTimeZoneById(TimeZone, out var zone) ? zone : TimeZoneInfo.Utc;

    internal sealed class Mapping : IEntityTypeConfiguration<Family>
    {
        public void Configure(EntityTypeBuilder<Family> b)
        {
            b.HasKey(f => f.Id);
            b.Property(f => f.Id).ValueGeneratedNever();
            b.Property(f => f.Name).HasMaxLength(LongestName);
            b.Property(f => f.LeavingAskedBy).HasMaxLength(People.Person.LongestName);
            b.Property(f => f.TimeZone).HasMaxLength(60);
            b.Property(f => f.State).HasMaxLength(2);
            b.Property(f => f.CountingPolicy).HasMaxLength(LongestPolicy);
        }
    }
}
