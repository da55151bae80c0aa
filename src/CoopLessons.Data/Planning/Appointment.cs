using CoopLessons.Core.Calendar;
using CoopLessons.Core.Schedule;
using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Planning;

/// <summary>Why somebody is not free: a co-op day, a lesson out of the house, a young child's sleep, or being away.</summary>
public enum AppointmentKind { CoOp, LessonOut, Nap, Away }

/// <summary>What a family says of an appointment, set together.</summary>
/// <param name="Learners">The children who are taken up by it; may be empty.</param>
/// <param name="Adults">The adults who are; may be empty.</param>
/// <param name="First">The first day on which it takes place.</param>
/// <param name="StartsAt">Minutes after midnight; it ends on the same day.</param>
/// <param name="Repeats">A rule of RFC 5545, read by <see cref="RepeatRule"/>; empty for a single day.</param>
/// <param name="SubjectId">What a log of it counts as; null where nobody said.</param>
public sealed record AppointmentFacts(
    string Title,
    AppointmentKind Kind,
    IReadOnlyList<Guid> Learners,
    IReadOnlyList<Guid> Adults,
    DateOnly First,
    int StartsAt,
    int Minutes,
    string Repeats,
    IReadOnlyList<DateOnly> Except,
    Guid? SubjectId);

/// <summary>Something that stands at its time and is planned around.</summary>
public sealed class Appointment : IFamilyOwned, IVersioned
{
    public const int LongestTitle = 120;
    public const int MostExcept = 60;

    private Appointment() { }

    public Appointment(Guid id, AppointmentFacts facts)
    {
        Id = id;
        Describe(facts);
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public string Title { get; private set; } = "";
    public AppointmentKind Kind { get; private set; }
    public List<Guid> Learners { get; private set; } = [];
    public List<Guid> Adults { get; private set; } = [];
    public DateOnly First { get; private set; }
    public int StartsAt { get; private set; }
    public int Minutes { get; private set; }
    public string Repeats { get; private set; } = "";

    /// <summary>Days of the rule on which it does not take place.</summary>
    public List<DateOnly> Except { get; private set; } = [];
    public Guid? SubjectId { get; private set; }
    public int Version { get; private set; }

    public Stretch Time => new(StartsAt, StartsAt + Minutes);

    public AppointmentFacts Facts => new(Title, Kind, Learners, Adults, First, StartsAt, Minutes, Repeats, Except, SubjectId);

    public void Describe(AppointmentFacts facts)
    {
        (Title, Kind, First, StartsAt, Minutes) = (facts.Title, facts.Kind, facts.First, facts.StartsAt, facts.Minutes);
        (Repeats, SubjectId) = (facts.Repeats, facts.SubjectId);
        Learners = [.. facts.Learners.Distinct()];
        Adults = [.. facts.Adults.Distinct()];
        Except = [.. facts.Except.Distinct().Order()];
    }

    /// <summary>The days of the range on which it takes place, ascending. A rule that cannot be read leaves the first day.</summary>
    public IReadOnlyList<DateOnly> DaysIn(DayRange range)
    {
        var rule = RepeatRule.TryRead(Repeats, out var read, out _) ? read : RepeatRule.Once;
        return [.. rule.DaysIn(First, range).Where(d => !Except.Contains(d))];
    }

    public bool IsOn(DateOnly date) => DaysIn(new DayRange(date, date)).Count > 0;

    /// <summary>Whether it can be written into the log: a sleep and being away are nothing that was learned.</summary>
    public bool IsLearning => Kind is AppointmentKind.CoOp or AppointmentKind.LessonOut;

    internal sealed class Mapping : IEntityTypeConfiguration<Appointment>
    {
        public void Configure(EntityTypeBuilder<Appointment> b)
        {
            b.HasKey(a => new { a.FamilyId, a.Id });
            b.Property(a => a.Title).HasMaxLength(LongestTitle);
            b.Property(a => a.Repeats).HasMaxLength(RepeatRule.Longest);
            b.Property(a => a.Learners).AsJson();
            b.Property(a => a.Adults).AsJson();
            b.Property(a => a.Except).AsJson();
            b.Ignore(a => a.Facts).Ignore(a => a.Time).Ignore(a => a.IsLearning);
            b.HasOne<FamilySubject>().WithMany().HasForeignKey(a => new { a.FamilyId, a.SubjectId }).OnDelete(DeleteBehavior.NoAction);
        }
    }
}
