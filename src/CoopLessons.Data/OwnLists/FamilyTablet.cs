using CoopLessons.Data.People;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Travel;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.OwnLists;

/// <summary>
/// A device on which children open their lists: the family's tablet, or one that was lent to a child for a while. Its
/// cookie holds a random key, this row the hash. It opens nothing but the lists, and ends when its maker is no longer a guardian.
/// </summary>
[StaysHere("what opens the tablet is a secret of this server")]
public sealed class FamilyTablet : IFamilyOwned, IVersioned
{
    /// <summary>Without use.</summary>
    public static readonly TimeSpan Life = TimeSpan.FromDays(90);

    /// <summary>A child who does nothing for so long is finished.</summary>
    public static readonly TimeSpan Idle = TimeSpan.FromMinutes(30);

    /// <summary>How long a lent list stays open at most.</summary>
    public static readonly TimeSpan LentLife = TimeSpan.FromHours(2);

    private FamilyTablet() { }

    private FamilyTablet(Guid id, string keyHash, Guid madeById, string device, DateTime now) =>
        (Id, KeyHash, MadeById, Device, MadeAt, SeenAt) = (id, keyHash, madeById, device, now, now);

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public string KeyHash { get; private set; } = "";
    public Guid MadeById { get; private set; }

    /// <summary>What the browser calls itself, shortened.</summary>
    public string Device { get; private set; } = "";
    public DateTime MadeAt { get; private set; }
    public DateTime SeenAt { get; private set; }
    public DateTime EndsAt { get; private set; }

    /// <summary>The children whose names it shows.</summary>
    public List<Guid> Learners { get; private set; } = [];

    /// <summary>Lent to one child for a while, without a PIN.</summary>
    public bool Lent { get; private set; }
    public Guid? OpenFor { get; private set; }
    public DateTime? OpenUntil { get; private set; }
    public int Version { get; private set; }

    public static FamilyTablet Shared(Guid id, string keyHash, Guid madeById, string device, IEnumerable<Guid> learners, DateTime now) =>
        new(id, keyHash, madeById, device, now) { EndsAt = now + Life, Learners = [.. learners.Distinct()] };

    public static FamilyTablet LentTo(Guid learnerId, Guid id, string keyHash, Guid madeById, string device, DateTime now) =>
        new(id, keyHash, madeById, device, now) { EndsAt = now + LentLife, Learners = [learnerId], Lent = true, OpenFor = learnerId, OpenUntil = now + LentLife };

    public bool IsOver(DateTime now) => EndsAt <= now;

    /// <summary>The child whose list is open; null where nobody's is.</summary>
    public Guid? ChildAt(DateTime now) => OpenFor is { } child && OpenUntil > now && Learners.Contains(child) ? child : null;

    public void Open(Guid learnerId, DateTime now) => (OpenFor, OpenUntil) = (learnerId, now + Idle);

    /// <summary>The child is finished; what was lent is given back with it.</summary>
    public void Finish(DateTime now)
    {
        (OpenFor, OpenUntil) = (null, null);
        if (Lent)
            EndsAt = now;
    }

    internal sealed class Mapping : IEntityTypeConfiguration<FamilyTablet>
    {
        public void Configure(EntityTypeBuilder<FamilyTablet> b)
        {
            b.HasKey(t => new { t.FamilyId, t.Id });
            b.Property(t => t.KeyHash).HasMaxLength(64);
            b.HasIndex(t => t.KeyHash).IsUnique();
            b.Property(t => t.Device).HasMaxLength(120);
            b.Property(t => t.Learners).AsJson();
            b.HasOne<Person>().WithMany().HasForeignKey(t => t.MadeById).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
