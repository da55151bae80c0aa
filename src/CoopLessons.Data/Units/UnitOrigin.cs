using CoopLessons.Core.Sharing;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Travel;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Units;

/// <summary>From where a unit of the family's came, or under which name it went out, and up to where both sides know each other.</summary>
public sealed class UnitOrigin : IFamilyOwned, IVersioned
{
    /// <summary>So many states are remembered, the newest; a longer way goes back to the last one that came in.</summary>
    public const int MostKnown = 60;

    private UnitOrigin() { }

    /// <param name="sharedId">The author's own unit; for the author the unit's own id.</param>
    public UnitOrigin(Guid unitId, Guid sharedId, PublishedBundle start, IReadOnlyDictionary<string, Guid> subjects)
    {
        (UnitId, SharedId) = (unitId, sharedId);
        Reach(start, subjects, []);
    }

    public Guid FamilyId { get; private set; }
    public Guid UnitId { get; private set; }
    public Guid SharedId { get; private set; }

    /// <summary>The co-op in which it is shared; null where it came as a file.</summary>
    [NamesCoop]
    public Guid? CoopId { get; private set; }

    /// <summary>The revision there that came in last; 0 where it came as a file.</summary>
    public int Number { get; private set; }

    /// <summary>From whom, as it was told.</summary>
    public string From { get; private set; } = "";

    /// <summary>What both sides knew last: the base of the next merge.</summary>
    public string BaseText { get; private set; } = "";

    /// <summary>Own subjects by the codes of those bundles.</summary>
    public Dictionary<string, Guid> Subjects { get; private set; } = [];

    /// <summary>What was left for later.</summary>
    public List<OpenCollision> Open { get; private set; } = [];

    /// <summary>Hashes of what came in or went out, the newest last.</summary>
    public List<string> Known { get; private set; } = [];
    public int Version { get; private set; }

    public PublishedBundle Base => PublishedBundle.Kept(BaseText);

    public void ComeFrom(string from, Guid? coopId, int number) => (From, CoopId, Number) = (from, coopId, number);

    /// <summary>Something came in.</summary>
    public void Reach(PublishedBundle theirs, IReadOnlyDictionary<string, Guid> subjects, IEnumerable<OpenCollision> open)
    {
        (BaseText, Subjects, Open) = (theirs.Text, new(subjects), [.. open]);
        Know(theirs.Hash);
    }

    /// <summary>Went out, or came in: the other side may go on from it.</summary>
    public void Know(string hash) => Known = [.. Known.Where(h => h != hash).Append(hash).TakeLast(MostKnown)];

    internal sealed class Mapping : IEntityTypeConfiguration<UnitOrigin>
    {
        public void Configure(EntityTypeBuilder<UnitOrigin> b)
        {
            b.HasKey(o => new { o.FamilyId, o.UnitId });
            b.HasIndex(o => new { o.FamilyId, o.SharedId });
            b.Property(o => o.From).HasMaxLength(Families.Family.LongestName);
            b.Property(o => o.Subjects).AsJson();
            b.Property(o => o.Open).AsJson();
            b.Property(o => o.Known).AsJson();
            b.Ignore(o => o.Base);
            b.HasOne<Unit>().WithOne().HasForeignKey<UnitOrigin>(o => new { o.FamilyId, o.UnitId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
