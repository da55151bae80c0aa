using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops.Days;

/// <summary>What was held and who was there.</summary>
/// <param name="Title">Of the class on that day, since a class may change.</param>
/// <param name="Minutes">Of its period on that day.</param>
/// <param name="Subjects">Names, as the class had them.</param>
/// <param name="There">Children by their ids.</param>
/// <param name="Away">Those who had a place and were not there.</param>
public sealed record AttendanceFacts(
    Guid MeetingId, Guid ClassId, DateOnly On, string Title, int Minutes, IReadOnlyList<string> Subjects, IReadOnlyList<Guid> There, IReadOnlyList<Guid> Away);

/// <summary>
/// Who was there, as somebody took it once; of several of one class at one meeting the last one taken holds. It names no
/// child: ids of a family that left tell the others a number and no more.
/// </summary>
public sealed class AttendanceTaken : ICoopOwned
{
    private AttendanceTaken() { }

    public AttendanceTaken(Guid coopId, Guid id, AttendanceFacts facts, string by, DateTime takenAt)
    {
        (CoopId, Id, By, TakenAt) = (coopId, id, by, takenAt);
        (MeetingId, ClassId, On, Title, Minutes) = (facts.MeetingId, facts.ClassId, facts.On, facts.Title, facts.Minutes);
        (Subjects, There, Away) = ([.. facts.Subjects], [.. facts.There], [.. facts.Away]);
    }

    public Guid CoopId { get; private set; }

    /// <summary>Made on the page, so that a second sending changes nothing.</summary>
    public Guid Id { get; private set; }
    public Guid MeetingId { get; private set; }
    public Guid ClassId { get; private set; }
    public DateOnly On { get; private set; }
    public string Title { get; private set; } = "";
    public int Minutes { get; private set; }
    public List<string> Subjects { get; private set; } = [];
    public List<Guid> There { get; private set; } = [];
    public List<Guid> Away { get; private set; } = [];

    /// <summary>The family that took it.</summary>
    public string By { get; private set; } = "";

    /// <summary>When it was taken, on the phone where it waited there.</summary>
    public DateTime TakenAt { get; private set; }

    internal sealed class Mapping : IEntityTypeConfiguration<AttendanceTaken>
    {
        public void Configure(EntityTypeBuilder<AttendanceTaken> b)
        {
            b.HasKey(a => new { a.CoopId, a.Id });
            b.Property(a => a.Id).ValueGeneratedNever();
            b.HasIndex(a => new { a.CoopId, a.MeetingId, a.ClassId });
            b.Property(a => a.Title).HasMaxLength(CoopClass.LongestTitle);
            b.Property(a => a.By).HasMaxLength(Data.Families.Family.LongestName);
            b.Property(a => a.Subjects).AsJson();
            b.Property(a => a.There).AsJson();
            b.Property(a => a.Away).AsJson();
        }
    }
}
