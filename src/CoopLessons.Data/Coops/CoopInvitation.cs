using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops;

/// <summary>A link by which a family joins a co-op: opens once, for a while, and can be withdrawn; the row holds only the hash of its secret.</summary>
public sealed class CoopInvitation : ICoopOwned, IVersioned
{
    private CoopInvitation() { }

    public CoopInvitation(Guid coopId, Guid id, string secret, string forWhom, CoopFamily from, DateTime now) =>
        (CoopId, Id, SecretHash, ForWhom, FromId, From, MadeAt, EndsAt) = (coopId, id, Invitation.Hash(secret), forWhom, from.FamilyId, from.Name, now, now + Invitation.Life);

    public Guid CoopId { get; private set; }
    public Guid Id { get; private set; }
    public string SecretHash { get; private set; } = "";

    /// <summary>The family that is meant, as the inviting one calls it.</summary>
    public string ForWhom { get; private set; } = "";

    /// <summary>The family that invites; its open links end when it leaves or leads no longer.</summary>
    public Guid FromId { get; private set; }
    public string From { get; private set; } = "";
    public DateTime MadeAt { get; private set; }
    public DateTime EndsAt { get; private set; }
    public DateTime? WithdrawnAt { get; private set; }
    public DateTime? TakenAt { get; private set; }
    public int Version { get; private set; }

    public bool IsOpen(DateTime now) => WithdrawnAt is null && TakenAt is null && now < EndsAt;

    public void Withdraw(DateTime now) => WithdrawnAt ??= now;

    /// <exception cref="InvalidOperationException">The invitation is no longer open.</exception>
    public void Take(DateTime now)
    {
        if (!IsOpen(now))
            throw new InvalidOperationException("The invitation is no longer open.");
        TakenAt = now;
    }

    internal sealed class Mapping : IEntityTypeConfiguration<CoopInvitation>
    {
        public void Configure(EntityTypeBuilder<CoopInvitation> b)
        {
            b.HasKey(i => new { i.CoopId, i.Id });
            b.Property(i => i.SecretHash).HasMaxLength(64);
            b.HasIndex(i => i.SecretHash).IsUnique();
            b.Property(i => i.ForWhom).HasMaxLength(Family.LongestName);
            b.Property(i => i.From).HasMaxLength(Family.LongestName);
        }
    }
}
