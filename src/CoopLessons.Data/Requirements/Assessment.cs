using CoopLessons.Core.Requirements.Scores;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Requirements;

/// <summary>In which way a learner's work was assessed.</summary>
public enum AssessmentKind
{
    NormReferencedTest,
    StateTest,
    PortfolioEvaluation,
    WrittenNarrative,
    Other,
}

/// <summary>What is written of an assessment, set together.</summary>
/// <param name="What">As the family calls it.</param>
/// <param name="By">Who gave or wrote it, and with which qualification, as typed.</param>
/// <param name="Outcome">In words; may be empty.</param>
/// <param name="Results">May be empty.</param>
/// <param name="PieceId">A paper that shows it; null for none.</param>
public sealed record AssessmentFacts(
    DateOnly Date, AssessmentKind Kind, string What, string By, string Qualification, string Outcome, IReadOnlyList<ScoreResult> Results, Guid? PieceId = null);

/// <summary>A test or an evaluation of a learner.</summary>
public sealed class Assessment : IFamilyOwned, IVersioned
{
    public const int LongestWhat = 120;
    public const int LongestBy = 80;
    public const int LongestOutcome = 1000;
    public const int LongestArea = 40;
    public const int LongestText = 20;
    public const int MostResults = 12;

    private Assessment() { }

    public Assessment(Guid id, Guid learnerId, AssessmentFacts facts)
    {
        (Id, LearnerId) = (id, learnerId);
        Describe(facts);
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public Guid LearnerId { get; private set; }
    public DateOnly Date { get; private set; }
    public AssessmentKind Kind { get; private set; }
    public string What { get; private set; } = "";
    public string By { get; private set; } = "";
    public string Qualification { get; private set; } = "";
    public string Outcome { get; private set; } = "";
    public List<ScoreResult> Results { get; private set; } = [];
    public Guid? PieceId { get; private set; }
    public int Version { get; private set; }

    public AssessmentFacts Facts => new(Date, Kind, What, By, Qualification, Outcome, Results, PieceId);

    public void Describe(AssessmentFacts facts)
    {
        (Date, Kind, What, By, Qualification) = (facts.Date, facts.Kind, facts.What, facts.By, facts.Qualification);
        (Outcome, Results, PieceId) = (facts.Outcome, [.. facts.Results], facts.PieceId);
    }

    internal sealed class Mapping : IEntityTypeConfiguration<Assessment>
    {
        public void Configure(EntityTypeBuilder<Assessment> b)
        {
            b.HasKey(a => new { a.FamilyId, a.Id });
            b.Property(a => a.Id).ValueGeneratedNever();
            b.Property(a => a.Kind).HasConversion<string>().HasMaxLength(20);
            b.Property(a => a.What).HasMaxLength(LongestWhat);
            b.Property(a => a.By).HasMaxLength(LongestBy);
            b.Property(a => a.Qualification).HasMaxLength(LongestBy);
            b.Property(a => a.Outcome).HasMaxLength(LongestOutcome);
            b.Property(a => a.Results).AsJson();
            b.Ignore(a => a.Facts);
            b.HasOne<Learner>().WithMany().HasForeignKey(a => new { a.FamilyId, a.LearnerId }).OnDelete(DeleteBehavior.Cascade);
            b.HasOne<Piece>().WithMany().HasForeignKey(a => new { a.FamilyId, a.PieceId }).OnDelete(DeleteBehavior.NoAction);
        }
    }
}
