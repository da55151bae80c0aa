using System.Security.Cryptography;
using System.Text;
using CoopLessons.Data.People;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Travel;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Families;

/// <summary>
/// A link by which somebody joins a family. It ends after seven days, opens once and can be withdrawn; the row holds
/// only the hash of its secret.
/// </summary>
[StaysHere("the link in it is a secret, and lasts a week")]
public sealed class Invitation : IFamilyOwned, IVersioned
{
    public static readonly TimeSpan Life = TimeSpan.FromDays(7);

    private Invitation() { }

    public Invitation(Guid id, string secret, string forWhom, Role role, Guid fromId, string from, DateTime now)
    {
        (Id, SecretHash, ForWhom, Role, FromId, From, MadeAt, EndsAt) = (id, Hash(secret), forWhom, role, fromId, from, now, now + Life);
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public string SecretHash { get; private set; } = "";
    public string ForWhom { get; private set; } = "";
    public Role Role { get; private set; }

    /// <summary>The person who invites; their open links end when they no longer belong to the family.</summary>
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
    public Membership Accept(Guid personId, string name, DateTime now)
    {
        if (!IsOpen(now))
            throw new InvalidOperationException("The invitation is no longer open.");
        TakenAt = now;
        return new Membership(personId, name, Role, now);
    }

    /// <summary>A secret of 256 random bits that can stand in an address.</summary>
    public static string NewSecret() => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(32));

    public static string Hash(string secret) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));

    internal sealed class Mapping : IEntityTypeConfiguration<Invitation>
    {
        public void Configure(EntityTypeBuilder<Invitation> b)
        {
            b.HasKey(i => new { i.FamilyId, i.Id });
            b.Property(i => i.SecretHash).HasMaxLength(64);
            b.HasIndex(i => i.SecretHash).IsUnique();
            b.Property(i => i.ForWhom).HasMaxLength(Person.LongestName);
            b.Property(i => i.From).HasMaxLength(Person.LongestName);
        }
    }
}
