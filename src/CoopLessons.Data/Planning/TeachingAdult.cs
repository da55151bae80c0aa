using CoopLessons.Data.People;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Planning;

/// <summary>A grown-up who is there to teach, whether or not they sign in. Never removed while sessions name them; one who has left is set aside.</summary>
public sealed class TeachingAdult : IFamilyOwned, IVersioned
{
    public const int LongestName = 60;
    public const int LongestPhone = 40;

    private TeachingAdult() { }

    public TeachingAdult(Guid id, string name, Guid? personId, string phone, int order)
    {
        (Id, Order) = (id, order);
        Describe(name, personId, phone);
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public string Name { get; private set; } = "";

    /// <summary>The person of the family who signs in as this adult, where there is one.</summary>
    public Guid? PersonId { get; private set; }

    /// <summary>For a helper's sheet, as the family writes it.</summary>
    public string Phone { get; private set; } = "";
    public bool SetAside { get; private set; }
    public int Order { get; private set; }
    public int Version { get; private set; }

    public void Describe(string name, Guid? personId, string phone) => (Name, PersonId, Phone) = (name, personId, phone);

    public void StandAt(int order) => Order = order;

    public void PutAside() => SetAside = true;

    public void BringBack() => SetAside = false;

    internal sealed class Mapping : IEntityTypeConfiguration<TeachingAdult>
    {
        public void Configure(EntityTypeBuilder<TeachingAdult> b)
        {
            b.HasKey(a => new { a.FamilyId, a.Id });
            b.Property(a => a.Name).HasMaxLength(LongestName);
            b.Property(a => a.Phone).HasMaxLength(LongestPhone);
            b.HasOne<Person>().WithMany().HasForeignKey(a => a.PersonId).OnDelete(DeleteBehavior.SetNull);
        }
    }
}
