using CoopLessons.Core.Calendar;
using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Units;

/// <summary>A unit study in a family's own hands: written here, taken in from a bundle, or both.</summary>
public sealed class Unit : IFamilyOwned, IVersioned
{
    public const int LongestTitle = 120;
    public const int LongestSummary = 2000;
    public const int MostWeeks = 12;

    /// <summary>How many weeks after its end what it left is still offered: a unit that runs a little longer is common.</summary>
    public const int WeeksAfter = 2;

    private readonly List<UnitSubject> _subjects = [];
    private readonly List<Activity> _activities = [];

    private Unit() { }

    public Unit(Guid id, string title, string summary, int weeks)
    {
        Id = id;
        Describe(title, summary, weeks);
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public string Title { get; private set; } = "";
    public string Summary { get; private set; } = "";
    public int Weeks { get; private set; }

    /// <summary>The Monday of week 1; null while the unit is on the shelf.</summary>
    public DateOnly? StartsOn { get; private set; }
    public int Version { get; private set; }
    public IReadOnlyList<UnitSubject> Subjects => _subjects;
    public IReadOnlyList<Activity> Activities => _activities;

    public bool IsTaken => StartsOn is not null;
    public IReadOnlySet<Guid> LeftOut => _subjects.Where(s => s.LeftOut).Select(s => s.SubjectId).ToHashSet();

    /// <summary>Which of its weeks a week is, 1 for the first; may lie before or after them. Null while the unit is on the shelf.</summary>
    public int? WeekOn(Week week) => StartsOn is { } starts ? (week.Days.Last.DayNumber - starts.DayNumber) / 7 + 1 : null;

    public void Describe(string title, string summary, int weeks) => (Title, Summary, Weeks) = (title, summary, weeks);

    public void Take(DateOnly monday) => StartsOn = monday;

    public void PutBackOnTheShelf() => StartsOn = null;

    /// <summary>Adds a subject to the unit where it is not there yet.</summary>
    public void Hold(Guid subjectId)
    {
        if (_subjects.All(s => s.SubjectId != subjectId))
            _subjects.Add(new UnitSubject(subjectId));
    }

    public bool LeaveOut(Guid subjectId) => Choose(subjectId, leftOut: true);

    public bool BringBack(Guid subjectId) => Choose(subjectId, leftOut: false);

    public void Add(Activity activity)
    {
        foreach (var subjectId in activity.Details.SubjectIds)
            Hold(subjectId);
        _activities.Add(activity);
    }

    /// <summary>Takes an activity out of the unit.</summary>
    /// <exception cref="InvalidOperationException">The unit has no activity of this code.</exception>
    public Activity Drop(string code)
    {
        var activity = _activities.Single(a => a.Code == code);
        _activities.Remove(activity);
        return activity;
    }

    /// <summary>Lets go of all subjects but these.</summary>
    public void HoldOnly(IReadOnlySet<Guid> subjects) => _subjects.RemoveAll(s => !subjects.Contains(s.SubjectId));

    /// <summary>The activities that the family does: not left out themselves, and with a subject that was taken.</summary>
    public IEnumerable<Activity> InPlan()
    {
        var leftOut = LeftOut;
        return _activities.Where(a => a.IsInPlan(leftOut)).OrderBy(a => a.Week).ThenBy(a => a.Order);
    }

    private bool Choose(Guid subjectId, bool leftOut)
    {
        var subject = _subjects.FirstOrDefault(s => s.SubjectId == subjectId);
        subject?.Choose(leftOut);
        return subject is not null;
    }

    internal sealed class Mapping : IEntityTypeConfiguration<Unit>
    {
        public void Configure(EntityTypeBuilder<Unit> b)
        {
            b.HasKey(u => new { u.FamilyId, u.Id });
            b.Property(u => u.Title).HasMaxLength(LongestTitle);
            b.Property(u => u.Summary).HasMaxLength(LongestSummary);
            b.Ignore(u => u.IsTaken).Ignore(u => u.LeftOut);
            b.HasMany(u => u.Subjects).WithOne().HasForeignKey(s => new { s.FamilyId, s.UnitId }).OnDelete(DeleteBehavior.Cascade);
            b.HasMany(u => u.Activities).WithOne().HasForeignKey(a => new { a.FamilyId, a.UnitId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}

/// <summary>A subject of a unit, and whether the family leaves it out.</summary>
public sealed class UnitSubject : IFamilyOwned
{
    private UnitSubject() { }

    internal UnitSubject(Guid subjectId) => SubjectId = subjectId;

    public Guid FamilyId { get; private set; }
    public Guid UnitId { get; private set; }
    public Guid SubjectId { get; private set; }
    public bool LeftOut { get; private set; }

    internal void Choose(bool leftOut) => LeftOut = leftOut;

    internal sealed class Mapping : IEntityTypeConfiguration<UnitSubject>
    {
        public void Configure(EntityTypeBuilder<UnitSubject> b)
        {
            b.HasKey(s => new { s.FamilyId, s.UnitId, s.SubjectId });
            b.HasOne<FamilySubject>().WithMany().HasForeignKey(s => new { s.FamilyId, s.SubjectId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
