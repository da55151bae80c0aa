using CoopLessons.Core.Families;
using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops;

/// <summary>
/// A child as a family shows it to a co-op: a copy of what was agreed to and of nothing else, taken away when the family
/// withdraws it or leaves. The birth date is never in it.
/// </summary>
public sealed class ShownLearner : IShownByFamily, IVersioned
{
    private ShownLearner() { }

    public ShownLearner(Guid coopId, Guid familyId, Guid learnerId) => (CoopId, FamilyId, LearnerId) = (coopId, familyId, learnerId);

    public Guid CoopId { get; private set; }
    public Guid FamilyId { get; private set; }
    public Guid LearnerId { get; private set; }
    public string Name { get; private set; } = "";

    /// <summary>In whole years on the day on which it was shown; null where it is not shown.</summary>
    public int? Age { get; private set; }

    /// <summary>Whether anything is said of allergies; where not, an empty list means nothing.</summary>
    public bool ShowsAllergies { get; private set; }
    public List<Allergen> Allergies { get; private set; } = [];
    public string AllergyNote { get; private set; } = "";
    public int Version { get; private set; }

    /// <summary>Copies what may be shown, as it is today.</summary>
    public void Show(Learner learner, bool age, bool allergies, DateOnly today)
    {
        Name = learner.Name;
        Age = age ? learner.AgeOn(today) : null;
        ShowsAllergies = allergies;
        Allergies = allergies ? [.. learner.Allergies] : [];
        AllergyNote = allergies ? learner.AllergyNote : "";
    }

    internal sealed class Mapping : IEntityTypeConfiguration<ShownLearner>
    {
        public void Configure(EntityTypeBuilder<ShownLearner> b)
        {
            b.HasKey(l => new { l.CoopId, l.FamilyId, l.LearnerId });
            b.Property(l => l.Name).HasMaxLength(Learner.LongestName);
            b.Property(l => l.AllergyNote).HasMaxLength(Learner.LongestAllergyNote);
            b.Property(l => l.Allergies).AsJson();
            b.HasOne<Learner>().WithMany().HasForeignKey(l => new { l.FamilyId, l.LearnerId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}

/// <summary>Whom to call of a family on a class day, as that family shows it.</summary>
public sealed class ShownContact : IShownByFamily, IVersioned
{
    public const int LongestTelephone = 40;

    private ShownContact() { }

    public ShownContact(Guid coopId, Guid familyId) => (CoopId, FamilyId) = (coopId, familyId);

    public Guid CoopId { get; private set; }
    public Guid FamilyId { get; private set; }
    public string Name { get; private set; } = "";
    public string Telephone { get; private set; } = "";
    public int Version { get; private set; }

    public void Be(string name, string telephone) => (Name, Telephone) = (name, telephone);

    internal sealed class Mapping : IEntityTypeConfiguration<ShownContact>
    {
        public void Configure(EntityTypeBuilder<ShownContact> b)
        {
            b.HasKey(c => new { c.CoopId, c.FamilyId });
            b.Property(c => c.Name).HasMaxLength(People.Person.LongestName);
            b.Property(c => c.Telephone).HasMaxLength(LongestTelephone);
        }
    }
}
