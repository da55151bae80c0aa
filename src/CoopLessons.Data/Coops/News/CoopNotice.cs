using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops.News;

/// <summary>What a notice tells.</summary>
public enum NoticeAbout
{
    /// <summary>Whatever its writer says.</summary>
    Word,

    /// <summary>A meeting falls through.</summary>
    CalledOff,

    /// <summary>A meeting that was called off is held all the same.</summary>
    MeetAfterAll,

    /// <summary>A day was chosen on which a lost meeting is made up for.</summary>
    MadeUp,
}

/// <summary>A notice of a co-op to all its families. Never edited: whoever had read it would not know. Its writer may withdraw it.</summary>
public sealed class CoopNotice : ICoopOwned, IVersioned
{
    public const int LongestTitle = 120;
    public const int LongestText = 4000;

    private CoopNotice() { }

    /// <param name="title">One line.</param>
    public CoopNotice(Guid coopId, Guid id, CoopFamily from, string title, string text, DateTime now, NoticeAbout about = NoticeAbout.Word, Guid? meetingId = null)
    {
        (CoopId, Id, FromId, From, At, About, MeetingId) = (coopId, id, from.FamilyId, from.Name, now, about, meetingId);
        (Title, Text) = (string.Join(' ', title.Split(['\r', '\n'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)), text);
    }

    public Guid CoopId { get; private set; }
    public Guid Id { get; private set; }
    public DateTime At { get; private set; }

    /// <summary>The family that wrote it, and its name as it was then.</summary>
    public Guid FromId { get; private set; }
    public string From { get; private set; } = "";
    public string Title { get; private set; } = "";

    /// <summary>May be empty where the title says all.</summary>
    public string Text { get; private set; } = "";
    public NoticeAbout About { get; private set; }

    /// <summary>The meeting that it is about; null for none.</summary>
    public Guid? MeetingId { get; private set; }

    /// <summary>From then on only that there was a notice is shown; null while it stands.</summary>
    public DateTime? WithdrawnAt { get; private set; }
    public int Version { get; private set; }

    public bool Stands => WithdrawnAt is null;

    /// <summary>What changed a meeting is changed back by another notice, not by taking the first away.</summary>
    public bool MayBeWithdrawnBy(Guid familyId) => Stands && About == NoticeAbout.Word && FromId == familyId;

    public void Withdraw(DateTime now) => WithdrawnAt ??= now;

    internal sealed class Mapping : IEntityTypeConfiguration<CoopNotice>
    {
        public void Configure(EntityTypeBuilder<CoopNotice> b)
        {
            b.HasKey(n => new { n.CoopId, n.Id });
            b.Property(n => n.Id).ValueGeneratedNever();
            b.HasIndex(n => new { n.CoopId, n.At });
            b.Property(n => n.From).HasMaxLength(Family.LongestName);
            b.Property(n => n.Title).HasMaxLength(LongestTitle);
            b.Property(n => n.Text).HasMaxLength(LongestText);
            b.Property(n => n.About).HasConversion<string>().HasMaxLength(20);
            b.Ignore(n => n.Stands);
        }
    }
}
