using System.Security.Cryptography;
using System.Text;
using CoopLessons.Data.People;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Notices;

/// <summary>A browser that takes notices for a person: the address at its push service, and the keys that only it can open.</summary>
public sealed class NoticeDevice : IPersonOwned
{
    public const int LongestEndpoint = 1000;

    /// <summary>Uncompressed point of P-256 (RFC 8291 § 3.1).</summary>
    public const int KeyBytes = 65;

    /// <summary>RFC 8291 § 3.2.</summary>
    public const int SecretBytes = 16;

    private NoticeDevice() { }

    public NoticeDevice(Guid id, Guid personId, string endpoint, byte[] key, byte[] secret, string device, DateTime now) =>
        (Id, PersonId, Endpoint, EndpointHash, Key, Secret, Device, Since) = (id, personId, endpoint, Hash(endpoint), key, secret, device, now);

    public Guid Id { get; private set; }
    public Guid PersonId { get; private set; }
    public string Endpoint { get; private set; } = "";
    public string EndpointHash { get; private set; } = "";
    public byte[] Key { get; private set; } = [];
    public byte[] Secret { get; private set; } = [];

    /// <summary>What the browser calls itself, shortened.</summary>
    public string Device { get; private set; } = "";
    public DateTime Since { get; private set; }

    public static string Hash(string endpoint) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(endpoint)));

    internal sealed class Mapping : IEntityTypeConfiguration<NoticeDevice>
    {
        public void Configure(EntityTypeBuilder<NoticeDevice> b)
        {
            b.HasKey(d => d.Id);
            b.Property(d => d.Id).ValueGeneratedNever();
            b.Property(d => d.Endpoint).HasMaxLength(LongestEndpoint);
            b.Property(d => d.EndpointHash).HasMaxLength(64);
            b.HasIndex(d => d.EndpointHash).IsUnique();
            b.Property(d => d.Device).HasMaxLength(120);
            b.HasIndex(d => d.PersonId);
            b.HasOne<Person>().WithMany().HasForeignKey(d => d.PersonId).OnDelete(DeleteBehavior.Cascade);
        }
    }
}

/// <summary>Of what a person wants to be told; nobody is told anything before they say so.</summary>
public sealed class NoticeChoice : IPersonOwned
{
    private NoticeChoice() { }

    public NoticeChoice(Guid personId) => PersonId = personId;

    public Guid PersonId { get; private set; }

    /// <summary>When something that waits must be looked at.</summary>
    public bool Waits { get; private set; }

    /// <summary>Before a date that the law sets.</summary>
    public bool LawDates { get; private set; }

    /// <summary>When a co-op tells its families something.</summary>
    public bool CoopNews { get; private set; }

    public bool IsAny => Waits || LawDates || CoopNews;

    public void Choose(bool waits, bool lawDates, bool coopNews) => (Waits, LawDates, CoopNews) = (waits, lawDates, coopNews);

    internal sealed class Mapping : IEntityTypeConfiguration<NoticeChoice>
    {
        public void Configure(EntityTypeBuilder<NoticeChoice> b)
        {
            b.HasKey(c => c.PersonId);
            b.Property(c => c.PersonId).ValueGeneratedNever();
            b.Ignore(c => c.IsAny);
            b.HasOne<Person>().WithOne().HasForeignKey<NoticeChoice>(c => c.PersonId).OnDelete(DeleteBehavior.Cascade);
        }
    }
}

/// <summary>A notice that was, or is just being, sent to a device. Its key stands once, so that it goes out once whoever sends.</summary>
public sealed class SentNotice : IPersonOwned
{
    public const int LongestKey = 200;

    private SentNotice() { }

    public SentNotice(NoticeDevice device, string key, DateTime now) => (PersonId, DeviceId, Key, At) = (device.PersonId, device.Id, key, now);

    public Guid DeviceId { get; private set; }
    public string Key { get; private set; } = "";
    public Guid PersonId { get; private set; }
    public DateTime At { get; private set; }

    internal sealed class Mapping : IEntityTypeConfiguration<SentNotice>
    {
        public void Configure(EntityTypeBuilder<SentNotice> b)
        {
            b.HasKey(s => new { s.DeviceId, s.Key });
            b.Property(s => s.Key).HasMaxLength(LongestKey);
            b.HasIndex(s => s.At);
            b.HasOne<NoticeDevice>().WithMany().HasForeignKey(s => s.DeviceId).OnDelete(DeleteBehavior.Cascade);
            b.HasOne<Person>().WithMany().HasForeignKey(s => s.PersonId).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
