using CoopLessons.Data.People;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Families;

/// <summary>A person's part in a family.</summary>
public sealed class Membership : IFamilyOwned, IVersioned
{
    private Membership() { }

    public Membership(Guid personId, string name, Role role, DateTime now) => (PersonId, Name, Role, Since, ChosenAt) = (personId, name, role, now, now);

    public Guid FamilyId { get; private set; }
    public Guid PersonId { get; private set; }

    /// <summary>How the family calls this person; signs what they write.</summary>
    public string Name { get; private set; } = "";
    public Role Role { get; private set; }
    public DateTime Since { get; private set; }

    /// <summary>When the person last chose to act for this family; the latest choice holds.</summary>
    public DateTime ChosenAt { get; private set; }
    public int Version { get; private set; }

    public void Choose(DateTime now) => ChosenAt = now;

    public void Become(Role role) => Role = role;

    internal sealed class Mapping : IEntityTypeConfiguration<Membership>
    {
        public void Configure(EntityTypeBuilder<Membership> b)
        {
            b.HasKey(m => new { m.FamilyId, m.PersonId });
            b.Property(m => m.Name).HasMaxLength(Person.LongestName);
            b.HasIndex(m => m.PersonId);
            b.HasOne<Person>().WithMany().HasForeignKey(m => m.PersonId).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
