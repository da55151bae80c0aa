using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops.Days;

/// <summary>A room in which a co-op's classes are, or a place out of doors.</summary>
public sealed class CoopRoom : ICoopOwned, IVersioned
{
    public const int LongestName = 60;

    private CoopRoom() { }

    public CoopRoom(Guid coopId, Guid id, string name, int? holds) => (CoopId, Id, Name, Holds) = (coopId, id, name, holds);

    public Guid CoopId { get; private set; }
    public Guid Id { get; private set; }

    /// <summary>As it stands after “in”: “the barn”.</summary>
    public string Name { get; private set; } = "";

    /// <summary>How many children it holds at most; null where nobody set a limit.</summary>
    public int? Holds { get; private set; }
    public int Version { get; private set; }

    public void Describe(string name, int? holds) => (Name, Holds) = (name, holds);

    internal sealed class Mapping : IEntityTypeConfiguration<CoopRoom>
    {
        public void Configure(EntityTypeBuilder<CoopRoom> b)
        {
            b.HasKey(r => new { r.CoopId, r.Id });
            b.Property(r => r.Id).ValueGeneratedNever();
            b.Property(r => r.Name).HasMaxLength(LongestName);
        }
    }
}
