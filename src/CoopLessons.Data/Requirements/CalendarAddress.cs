using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Travel;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Requirements;

/// <summary>
/// A secret address at which a calendar program reads the family's due dates, until the family ends it. The row holds
/// only the hash of its secret.
/// </summary>
[StaysHere("its address is a secret of this server")]
public sealed class CalendarAddress : IFamilyOwned, IVersioned
{
    private CalendarAddress() { }

    /// <param name="secret">From <see cref="Invitation.NewSecret"/>; shown once.</param>
    /// <param name="withNames">Whether the titles name the children.</param>
    /// <param name="withCoops">Whether the meetings and notices of the family's co-ops are told, too.</param>
    public CalendarAddress(Guid id, string secret, bool withNames, DateTime now, bool withCoops = false) =>
        (Id, SecretHash, WithNames, MadeAt, WithCoops) = (id, Invitation.Hash(secret), withNames, now, withCoops);

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public string SecretHash { get; private set; } = "";
    public DateTime MadeAt { get; private set; }
    public bool WithNames { get; private set; }
    public bool WithCoops { get; private set; }

    /// <summary>Null while it answers.</summary>
    public DateTime? EndedAt { get; private set; }
    public int Version { get; private set; }

    public void End(DateTime now) => EndedAt ??= now;

    internal sealed class Mapping : IEntityTypeConfiguration<CalendarAddress>
    {
        public void Configure(EntityTypeBuilder<CalendarAddress> b)
        {
            b.HasKey(a => new { a.FamilyId, a.Id });
            b.Property(a => a.SecretHash).HasMaxLength(64);
            b.HasIndex(a => a.SecretHash).IsUnique();
        }
    }
}
