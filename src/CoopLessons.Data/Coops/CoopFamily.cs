using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops;

/// <summary>What a family's guardians may do in a co-op. Each part includes the ones before it.</summary>
public enum CoopPart
{
    /// <summary>Takes part, takes units up, shows what it wants to show.</summary>
    Member,

    /// <summary>Publishes units and teaches classes, too.</summary>
    Teacher,

    /// <summary>Invites, says who has which part, and words what the co-op agreed on.</summary>
    Leader,
}

/// <summary>A family's part in a co-op, under the name by which it goes there. Stays when it leaves, or is deleted, since what it gave bears its name.</summary>
public sealed class CoopFamily : ICoopOwned, IVersioned
{
    private CoopFamily() { }

    public CoopFamily(Guid coopId, Guid familyId, string name, CoopPart part, DateTime now) =>
        (CoopId, FamilyId, Name, Part, Since) = (coopId, familyId, name, part, now);

    public Guid CoopId { get; private set; }
    public Guid FamilyId { get; private set; }
    public string Name { get; private set; } = "";
    public CoopPart Part { get; private set; }
    public DateTime Since { get; private set; }

    /// <summary>From then on nothing of the co-op is open to the family; null while it belongs to it.</summary>
    public DateTime? LeftAt { get; private set; }
    public int Version { get; private set; }

    public bool Leads => Part == CoopPart.Leader;

    public bool Teaches => Part >= CoopPart.Teacher;

    public void Become(CoopPart part) => Part = part;

    public void GoBy(string name) => Name = name;

    public void Leave(DateTime now) => (LeftAt, Part) = (now, CoopPart.Member);

    public void Return(string name, DateTime now) => (Name, LeftAt, Since, Part) = (name, null, now, CoopPart.Member);

    internal sealed class Mapping : IEntityTypeConfiguration<CoopFamily>
    {
        public void Configure(EntityTypeBuilder<CoopFamily> b)
        {
            b.HasKey(f => new { f.CoopId, f.FamilyId });
            b.Property(f => f.Name).HasMaxLength(Family.LongestName);
            b.Property(f => f.Part).HasConversion<string>().HasMaxLength(20);
            b.HasIndex(f => f.FamilyId);
        }
    }
}
