using CoopLessons.Core.Families;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Families;

/// <summary>A subject as the family names and orders it. One in use is retired rather than removed.</summary>
public sealed class FamilySubject : IFamilyOwned, IVersioned
{
    public const int LongestName = 60;

    /// <summary>Code of the subject that books belong to.</summary>
    public const string Reading = "reading";

    /// <summary>What a new family begins with; changed and ordered at will.</summary>
    public static readonly IReadOnlyList<(string Code, string Name)> Usual =
    [
        (Reading, "Reading"), ("writing", "Writing"), ("mathematics", "Mathematics"), ("science", "Science"),
        ("nature", "Nature study"), ("history", "History"), ("geography", "Geography"), ("citizenship", "Citizenship"),
        ("art", "Art"), ("music", "Music"), ("health", "Health"), ("movement", "Movement"), ("home-arts", "Home arts"),
    ];

    private FamilySubject() { }

    public FamilySubject(Guid id, string code, string name, int order) => (Id, Code, Name, Order) = (id, code, name, order);

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }

    /// <summary>By which a bundle's subject is recognised: lower-case words joined by hyphens.</summary>
    public string Code { get; private set; } = "";
    public string Name { get; private set; } = "";

    /// <summary>Place in the family's list; ties in the division of minutes go to the lower.</summary>
    public int Order { get; private set; }
    public bool Retired { get; private set; }
    public int Version { get; private set; }

    public Subject ToCore() => new(Id, Name);

    public void Rename(string name) => Name = name;

    public void StandAt(int order) => Order = order;

    public void Retire() => Retired = true;

    public void Return() => Retired = false;

    internal sealed class Mapping : IEntityTypeConfiguration<FamilySubject>
    {
        public void Configure(EntityTypeBuilder<FamilySubject> b)
        {
            b.HasKey(s => new { s.FamilyId, s.Id });
            b.Property(s => s.Code).HasMaxLength(40);
            b.HasIndex(s => new { s.FamilyId, s.Code }).IsUnique();
            b.Property(s => s.Name).HasMaxLength(LongestName);
        }
    }
}
