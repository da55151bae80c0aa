using CoopLessons.Core.Credits;
using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Credits;

/// <summary>What a parent typed for the head of a learner's transcript, and nothing else: what is left empty is not printed.</summary>
public sealed class TranscriptDetails : IFamilyOwned, IVersioned
{
    public const int LongestName = 80;
    public const int LongestAddress = 160;

    private TranscriptDetails() { }

    public TranscriptDetails(Guid learnerId) => LearnerId = learnerId;

    public Guid FamilyId { get; private set; }
    public Guid LearnerId { get; private set; }
    public string School { get; private set; } = "";
    public string Address { get; private set; } = "";

    /// <summary>The learner's whole name; empty: the name that the family uses.</summary>
    public string FullName { get; private set; } = "";
    public bool TellsBirthDate { get; private set; }
    public DateOnly? Graduated { get; private set; }
    public string Signer { get; private set; } = "";
    public PaperSize Paper { get; private set; }
    public int Version { get; private set; }

    public void Describe(TranscriptHeading heading, bool tellsBirthDate, PaperSize paper) =>
        (School, Address, FullName, TellsBirthDate, Graduated, Signer, Paper) =
            (heading.School, heading.Address, heading.FullName, tellsBirthDate, heading.Graduated, heading.Signer, paper);

    /// <summary>As it is printed.</summary>
    public TranscriptHeading HeadingFor(Family family, Learner learner) => new(
        School.Length > 0 ? School : $"{family.Name} home school", Address, FullName.Length > 0 ? FullName : learner.Name,
        TellsBirthDate ? learner.BirthDate : null, Graduated, Signer.Length > 0 ? Signer : "Parent or guardian");

    internal sealed class Mapping : IEntityTypeConfiguration<TranscriptDetails>
    {
        public void Configure(EntityTypeBuilder<TranscriptDetails> b)
        {
            b.HasKey(d => new { d.FamilyId, d.LearnerId });
            b.Property(d => d.School).HasMaxLength(LongestName);
            b.Property(d => d.Address).HasMaxLength(LongestAddress);
            b.Property(d => d.FullName).HasMaxLength(LongestName);
            b.Property(d => d.Signer).HasMaxLength(LongestName);
            b.HasOne<Learner>().WithMany().HasForeignKey(d => new { d.FamilyId, d.LearnerId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
