using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Families.Going;

/// <summary>
/// That a family was asked to be deleted, and that it was. It is found by the hash of its secret address, names nobody, and
/// outlasts the family; once that is gone it holds no id of it either.
/// </summary>
public sealed class LeavingReceipt : IOwnedByNobody
{
    /// <summary>Between asking and deleting.</summary>
    public static readonly TimeSpan Grace = TimeSpan.FromDays(7);

    private LeavingReceipt() { }

    /// <param name="secret">From <see cref="Invitation.NewSecret"/>; shown once.</param>
    public LeavingReceipt(string secret, Guid familyId, DateTime now) => (SecretHash, FamilyId, AskedAt, DueAt) = (Invitation.Hash(secret), familyId, now, now + Grace);

    public string SecretHash { get; private set; } = "";

    /// <summary>Null once it is gone, or stays.</summary>
    public Guid? FamilyId { get; private set; }
    public DateTime AskedAt { get; private set; }
    public DateTime DueAt { get; private set; }
    public DateTime? StoppedAt { get; private set; }
    public DateTime? DoneAt { get; private set; }

    /// <summary>How many rows were deleted.</summary>
    public int Rows { get; private set; }

    /// <summary>How many files were.</summary>
    public int Files { get; private set; }

    internal sealed class Mapping : IEntityTypeConfiguration<LeavingReceipt>
    {
        public void Configure(EntityTypeBuilder<LeavingReceipt> b)
        {
            b.HasKey(r => r.SecretHash);
            b.Property(r => r.SecretHash).HasMaxLength(64);
            b.HasIndex(r => r.FamilyId);
            b.HasIndex(r => r.DueAt);
        }
    }
}
