using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops.Sharing;

/// <summary>A family has a shared unit in its hands, up to a revision. What it made of it is nobody else's.</summary>
public sealed class UnitUse : IShownByFamily, IVersioned
{
    private UnitUse() { }

    public UnitUse(Guid coopId, Guid familyId, Guid sharedUnitId, DateTime now) => (CoopId, FamilyId, SharedUnitId, Since) = (coopId, familyId, sharedUnitId, now);

    public Guid CoopId { get; private set; }
    public Guid FamilyId { get; private set; }
    public Guid SharedUnitId { get; private set; }

    /// <summary>The newest revision that came in.</summary>
    public int Number { get; private set; }
    public DateTime Since { get; private set; }
    public int Version { get; private set; }

    public void Reach(int number) => Number = number;

    internal sealed class Mapping : IEntityTypeConfiguration<UnitUse>
    {
        public void Configure(EntityTypeBuilder<UnitUse> b)
        {
            b.HasKey(u => new { u.CoopId, u.FamilyId, u.SharedUnitId });
            b.HasOne<SharedUnit>().WithMany().HasForeignKey(u => new { u.CoopId, u.SharedUnitId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
