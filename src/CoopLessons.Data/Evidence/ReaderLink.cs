using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Travel;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Evidence;

/// <summary>
/// A secret address at which an evaluator reads chosen parts of one learner’s year without signing in, up to a day or until a
/// guardian withdraws it. The row holds only the hash of its secret.
/// </summary>
[StaysHere("its address is a secret of this server")]
public sealed class ReaderLink : IFamilyOwned, IVersioned
{
    public const int LongestReader = 80;

    /// <summary>The longest time for which a link may be given, in days (common practice, no source).</summary>
    public const int MostDays = 180;

    private ReaderLink() { }

    /// <param name="secret">From <see cref="Invitation.NewSecret"/>; shown once.</param>
    /// <param name="endsOn">The last day on which it answers, where the family lives.</param>
    public ReaderLink(Guid id, string secret, Guid learnerId, Guid schoolYearId, string reader, IEnumerable<PortfolioPart> parts, DateOnly endsOn, DateTime now)
    {
        (Id, SecretHash, LearnerId, SchoolYearId) = (id, Invitation.Hash(secret), learnerId, schoolYearId);
        (Reader, Parts, EndsOn, MadeAt) = (reader, [.. parts.Distinct().Order()], endsOn, now);
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public string SecretHash { get; private set; } = "";
    public Guid LearnerId { get; private set; }
    public Guid SchoolYearId { get; private set; }

    /// <summary>To whom it was given, in the parent's words.</summary>
    public string Reader { get; private set; } = "";
    public List<PortfolioPart> Parts { get; private set; } = [];
    public DateOnly EndsOn { get; private set; }
    public DateTime MadeAt { get; private set; }

    /// <summary>Null unless a guardian took it back.</summary>
    public DateTime? WithdrawnAt { get; private set; }
    public int Version { get; private set; }

    /// <param name="today">Where the family lives.</param>
    public bool Answers(DateOnly today) => WithdrawnAt is null && today <= EndsOn;

    public void Withdraw(DateTime now) => WithdrawnAt ??= now;

    internal sealed class Mapping : IEntityTypeConfiguration<ReaderLink>
    {
        public void Configure(EntityTypeBuilder<ReaderLink> b)
        {
            b.HasKey(l => new { l.FamilyId, l.Id });
            b.Property(l => l.Id).ValueGeneratedNever();
            b.Property(l => l.SecretHash).HasMaxLength(64);
            b.Property(l => l.Reader).HasMaxLength(LongestReader);
            b.Property(l => l.Parts).AsJson();
            b.HasIndex(l => l.SecretHash).IsUnique();
            b.HasOne<Learner>().WithMany().HasForeignKey(l => new { l.FamilyId, l.LearnerId }).OnDelete(DeleteBehavior.Cascade);
            b.HasOne<SchoolYear>().WithMany().HasForeignKey(l => new { l.FamilyId, l.SchoolYearId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}

/// <summary>One look through a link.</summary>
[StaysHere("it tells of an address of this server")]
public sealed class ReaderLook : IFamilyOwned, IAppendOnly
{
    public const int LongestWhat = 80;

    private ReaderLook() { }

    /// <param name="what">What was opened, in words.</param>
    public ReaderLook(Guid id, Guid linkId, string what, DateTime now) => (Id, LinkId, What, At) = (id, linkId, what, now);

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public Guid LinkId { get; private set; }
    public string What { get; private set; } = "";
    public DateTime At { get; private set; }

    internal sealed class Mapping : IEntityTypeConfiguration<ReaderLook>
    {
        public void Configure(EntityTypeBuilder<ReaderLook> b)
        {
            b.HasKey(l => new { l.FamilyId, l.Id });
            b.Property(l => l.Id).ValueGeneratedNever();
            b.Property(l => l.What).HasMaxLength(LongestWhat);
            b.HasIndex(l => new { l.FamilyId, l.LinkId, l.At });
            b.HasOne<ReaderLink>().WithMany().HasForeignKey(l => new { l.FamilyId, l.LinkId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
