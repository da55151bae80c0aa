using CoopLessons.Data.People;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Notices;

/// <summary>
/// A mail that goes out, or went. The row says what it is about and not what it says: that is read when it is sent, so that
/// nothing goes to somebody who was taken out meanwhile, or of a notice that was withdrawn.
/// </summary>
public sealed class MailToSend : IPersonOwned
{
    public const int LongestKey = 100;

    /// <summary>One that the mail server never took is given up then.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromDays(3);

    /// <summary>How long whoever sends it may take; after that it counts as not sent.</summary>
    public static readonly TimeSpan Hold = TimeSpan.FromMinutes(10);

    private static readonly TimeSpan LongestGap = TimeSpan.FromHours(6);

    private MailToSend() { }

    /// <summary>The mail by which an address proves to be the person's.</summary>
    public MailToSend(Guid id, Guid personId, DateTime now) =>
        // One a day, however often the choice is made: the address may be somebody else's.
        (Id, PersonId, Key, MadeAt, NextAt) = (id, personId, FormattableString.Invariant($"proof/{now:yyyy-MM-dd}"), now, now);

    /// <summary>A notice of a co-op.</summary>
    public MailToSend(Guid id, Guid personId, Guid familyId, Guid coopId, Guid noticeId, DateTime now) =>
        (Id, PersonId, Key, FamilyId, CoopId, NoticeId, MadeAt, NextAt) = (id, personId, $"notice/{noticeId:N}", familyId, coopId, noticeId, now, now);

    public Guid Id { get; private set; }
    public Guid PersonId { get; private set; }

    /// <summary>What it is about; stands once for a person, so that it goes out once whoever sends.</summary>
    public string Key { get; private set; } = "";

    /// <summary>For which family of the person; null where it proves an address.</summary>
    public Guid? FamilyId { get; private set; }
    public Guid? CoopId { get; private set; }
    public Guid? NoticeId { get; private set; }
    public DateTime MadeAt { get; private set; }
    public int Tries { get; private set; }

    /// <summary>It is not tried before then.</summary>
    public DateTime NextAt { get; private set; }

    /// <summary>Somebody sends it until then.</summary>
    public DateTime? HeldUntil { get; private set; }

    /// <summary>When the mail server took it, or when it was given up; null while it waits.</summary>
    public DateTime? DoneAt { get; private set; }

    public bool IsProof => NoticeId is null;

    public void Done(DateTime now) => (DoneAt, HeldUntil) = (now, null);

    /// <summary>Not now: again after a gap that doubles with each try, from a minute to six hours, for three days.</summary>
    public void Later(DateTime now)
    {
        Tries++;
        var gap = TimeSpan.FromMinutes(Math.Min(Math.Pow(2, Tries - 1), LongestGap.TotalMinutes));
        (HeldUntil, NextAt) = (null, now + gap);
        if (now - MadeAt >= Patience)
            Done(now);
    }

    internal sealed class Mapping : IEntityTypeConfiguration<MailToSend>
    {
        public void Configure(EntityTypeBuilder<MailToSend> b)
        {
            b.HasKey(m => m.Id);
            b.Property(m => m.Id).ValueGeneratedNever();
            b.Property(m => m.Key).HasMaxLength(LongestKey);
            b.HasIndex(m => new { m.PersonId, m.Key }).IsUnique();
            b.HasIndex(m => new { m.DoneAt, m.NextAt });
            b.Ignore(m => m.IsProof);
            b.HasOne<Person>().WithMany().HasForeignKey(m => m.PersonId).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
