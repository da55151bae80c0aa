using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.People;

/// <summary>A row that belongs to one person, whatever families they act for.</summary>
public interface IPersonOwned
{
    Guid PersonId { get; }
}

/// <summary>Somebody who can sign in.</summary>
public sealed class Person : IdentityUser<Guid>
{
    public const int LongestName = 60;

    public string Name { get; set; } = "";

    /// <summary>A name of a family that was brought from elsewhere: there is no address and no password to sign in with.</summary>
    public bool IsNameOnly => Email is null;

    public static Person Named(string name, string email) =>
        new() { Id = Guid.CreateVersion7(), Name = name, Email = email, UserName = email, SecurityStamp = Guid.NewGuid().ToString("N") };

    /// <summary>Somebody of a brought family who cannot sign in here.</summary>
    public static Person NameOnly(Guid id, string name) => new() { Id = id, Name = name, SecurityStamp = Guid.NewGuid().ToString("N") };
}

/// <summary>
/// One sign-in on one device, kept on the server so that signing out ends it for good. The cookie holds the key;
/// this row holds only its hash.
/// </summary>
public sealed class SignInSession : IPersonOwned
{
    private SignInSession() { }

    public SignInSession(string keyHash, Guid personId, byte[] ticket, string device, DateTime now, DateTime endsAt)
    {
        (KeyHash, PersonId, Device, StartedAt) = (keyHash, personId, device, now);
        Renew(ticket, now, endsAt);
    }

    public string KeyHash { get; private set; } = "";
    public Guid PersonId { get; private set; }

    /// <summary>The sealed ticket.</summary>
    public byte[] Ticket { get; private set; } = [];

    /// <summary>What the browser calls itself, shortened.</summary>
    public string Device { get; private set; } = "";
    public DateTime StartedAt { get; private set; }
    public DateTime SeenAt { get; private set; }
    public DateTime EndsAt { get; private set; }

    public void Renew(byte[] ticket, DateTime now, DateTime endsAt) => (Ticket, SeenAt, EndsAt) = (ticket, now, endsAt);

    internal sealed class Mapping : IEntityTypeConfiguration<SignInSession>
    {
        public void Configure(EntityTypeBuilder<SignInSession> b)
        {
            b.HasKey(s => s.KeyHash);
            b.Property(s => s.KeyHash).HasMaxLength(64);
            b.Property(s => s.Device).HasMaxLength(120);
            b.HasIndex(s => s.PersonId);
            b.HasOne<Person>().WithMany().HasForeignKey(s => s.PersonId).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
