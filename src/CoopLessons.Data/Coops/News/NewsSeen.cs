using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Travel;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops.News;

/// <summary>Up to which notice of a co-op a family has looked. The family's own: the others do not see who reads what.</summary>
[StaysHere("says how much of a co-op’s news was seen, and stays with the co-op")]
public sealed class NewsSeen : IFamilyOwned
{
    private NewsSeen() { }

    public NewsSeen(Guid coopId) => CoopId = coopId;

    public Guid FamilyId { get; private set; }
    public Guid CoopId { get; private set; }

    /// <summary>When the newest notice was written that was seen.</summary>
    public DateTime UpTo { get; private set; }

    /// <summary>Of two pages opened at once the newer one counts.</summary>
    public void See(DateTime at) => UpTo = at > UpTo ? at : UpTo;

    /// <summary>How many notices of others came to each co-op since the family looked last, or joined; co-ops with none are left out.</summary>
    public static Task<Dictionary<Guid, int>> UnreadAsync(AppDb db, Guid familyId, CancellationToken ct) =>
        db.CoopNotices.Where(n => n.WithdrawnAt == null && n.FromId != familyId
                && db.CoopFamilies.Any(f => f.CoopId == n.CoopId && f.FamilyId == familyId && f.Since <= n.At)
                && !db.NewsSeen.Any(s => s.CoopId == n.CoopId && s.UpTo >= n.At))
            .GroupBy(n => n.CoopId).Select(g => new { g.Key, Count = g.Count() }).ToDictionaryAsync(g => g.Key, g => g.Count, ct);

    internal sealed class Mapping : IEntityTypeConfiguration<NewsSeen>
    {
        public void Configure(EntityTypeBuilder<NewsSeen> b)
        {
            b.HasKey(s => new { s.FamilyId, s.CoopId });
            b.HasOne<Coop>().WithMany().HasForeignKey(s => s.CoopId).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
