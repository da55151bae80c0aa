using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops.Days;

/// <summary>A day on which a co-op meets for its classes.</summary>
public sealed class CoopMeeting : ICoopOwned, IVersioned
{
    public const int LongestWhere = 120;
    public const int LongestNote = 500;

    private CoopMeeting() { }

    public CoopMeeting(Guid coopId, Guid id, DateOnly on, string where) => (CoopId, Id, On, Where) = (coopId, id, on, where);

    public Guid CoopId { get; private set; }
    public Guid Id { get; private set; }
    public DateOnly On { get; private set; }

    /// <summary>As it stands after “at”: “the mill house”.</summary>
    public string Where { get; private set; } = "";
    public string Note { get; private set; } = "";

    /// <summary>Null while the meeting stands.</summary>
    public DateTime? CalledOffAt { get; private set; }

    /// <summary>Why, in a few words: “snow”.</summary>
    public string CalledOffFor { get; private set; } = "";

    /// <summary>The meeting that fell through and is made up for on this day; null for an ordinary one.</summary>
    public Guid? InsteadOf { get; private set; }
    public int Version { get; private set; }

    public bool Stands => CalledOffAt is null;

    public void Describe(DateOnly on, string where, string note) => (On, Where, Note) = (on, where, note);

    public void CallOff(string why, DateTime now)
    {
        CalledOffAt ??= now;
        CalledOffFor = why;
    }

    /// <summary>It is held all the same.</summary>
    public void MeetAfterAll() => (CalledOffAt, CalledOffFor) = (null, "");

    public void MakeUpFor(CoopMeeting lost) => InsteadOf = lost.Id;

    internal sealed class Mapping : IEntityTypeConfiguration<CoopMeeting>
    {
        public void Configure(EntityTypeBuilder<CoopMeeting> b)
        {
            b.HasKey(m => new { m.CoopId, m.Id });
            b.Property(m => m.Id).ValueGeneratedNever();
            b.HasIndex(m => new { m.CoopId, m.On }).IsUnique();
            b.Property(m => m.Where).HasMaxLength(LongestWhere);
            b.Property(m => m.Note).HasMaxLength(LongestNote);
            b.Property(m => m.CalledOffFor).HasMaxLength(LongestNote);
            b.Ignore(m => m.Stands);
        }
    }
}
