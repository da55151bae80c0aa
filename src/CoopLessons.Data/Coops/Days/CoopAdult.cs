using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops.Days;

/// <summary>An adult whom a family names to a co-op: who may teach, host, mind the small or help there.</summary>
public sealed class CoopAdult : IShownByFamily, IVersioned
{
    private CoopAdult() { }

    public CoopAdult(Guid coopId, Guid familyId, Guid id, string name) => (CoopId, FamilyId, Id, Name) = (coopId, familyId, id, name);

    public Guid CoopId { get; private set; }
    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public string Name { get; private set; } = "";

    /// <summary>The family of the co-op with one of whose adults this one lives or is a couple; null for none. The two count as one in a room.</summary>
    public Guid? LivesWithFamily { get; private set; }

    /// <summary>The same for all who count as one in a room: whoever lives with another family is of its household.</summary>
    public Guid Household => LivesWithFamily ?? FamilyId;

    /// <summary>Somebody whom the co-op has not looked at, such as a visiting beekeeper: counts in no room.</summary>
    public bool Guest { get; private set; }

    /// <summary>No longer there; what was done stays with the name.</summary>
    public bool Gone { get; private set; }
    public int Version { get; private set; }

    public void Describe(string name, Guid? livesWithFamily, bool guest) => (Name, LivesWithFamily, Guest) = (name, livesWithFamily, guest);

    public void Go() => Gone = true;

    public void Return() => Gone = false;

    internal sealed class Mapping : IEntityTypeConfiguration<CoopAdult>
    {
        public void Configure(EntityTypeBuilder<CoopAdult> b)
        {
            b.HasKey(a => new { a.CoopId, a.Id });
            b.Property(a => a.Id).ValueGeneratedNever();
            b.Ignore(a => a.Household);
            b.HasIndex(a => new { a.CoopId, a.FamilyId });
            b.Property(a => a.Name).HasMaxLength(People.Person.LongestName);
        }
    }
}
