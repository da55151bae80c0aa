using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Evidence;

/// <summary>What a short portfolio may hold besides its cover, totals and hours of each subject.</summary>
public enum PortfolioPart
{
    /// <summary>Minutes of each subject in each month, and where they were.</summary>
    Months,

    /// <summary>The dates of the school days.</summary>
    Days,
    Reading,

    /// <summary>Each subject with its samples and what is written of it.</summary>
    Subjects,

    /// <summary>Subjects of the family besides those that the law asks for.</summary>
    OwnSubjects,

    /// <summary>What is not there, said plainly.</summary>
    Missing,
    Pairs,

    /// <summary>The log day by day.</summary>
    Log,
    Law,
}

/// <summary>What a family decided of one subject of a portfolio.</summary>
/// <param name="Key">As <see cref="SubjectAsked.Key"/>.</param>
/// <param name="Narrative">The parent's own sentences; may be empty.</param>
/// <param name="Samples">Chosen by hand; null where the program chooses.</param>
public sealed record SubjectChoice(string Key, string Narrative, IReadOnlyList<Guid>? Samples);

/// <summary>Two samples that a family shows side by side.</summary>
/// <param name="Words">What the child or the parent says changed; may be empty.</param>
public sealed record ChosenPair(Guid Early, Guid Late, string Skill, string Words);

/// <summary>What a family decided of a learner's portfolio of one year; what it did not decide, the program proposes.</summary>
public sealed class Portfolio : IFamilyOwned, IVersioned
{
    public const int LongestReader = 120;
    public const int LongestText = 4000;
    public const int LongestSkill = 80;
    public const int LongestWords = 600;
    public const int MostPairs = 12;

    /// <summary>Samples by hand of one subject.</summary>
    public const int MostSamples = 12;

    /// <summary>Where nobody said anything: what most readers ask for (common practice, no source).</summary>
    public static readonly IReadOnlyList<PortfolioPart> UsualParts = [PortfolioPart.Days, PortfolioPart.Reading, PortfolioPart.Subjects, PortfolioPart.Missing, PortfolioPart.Pairs];

    private Portfolio() { }

    public Portfolio(Guid learnerId, Guid schoolYearId) => (LearnerId, SchoolYearId, Parts) = (learnerId, schoolYearId, [.. UsualParts]);

    public Guid FamilyId { get; private set; }
    public Guid LearnerId { get; private set; }
    public Guid SchoolYearId { get; private set; }
    public List<PortfolioPart> Parts { get; private set; } = [];

    /// <summary>For whom it is made; may be empty.</summary>
    public string Reader { get; private set; } = "";

    /// <summary>The parent's own words at its beginning; may be empty.</summary>
    public string Opening { get; private set; } = "";
    public List<SubjectChoice> Subjects { get; private set; } = [];
    public List<ChosenPair> Pairs { get; private set; } = [];
    public int Version { get; private set; }

    public void Describe(IEnumerable<PortfolioPart> parts, string reader, string opening) =>
        (Parts, Reader, Opening) = ([.. parts.Distinct().Order()], reader, opening);

    public SubjectChoice Of(string key) => Subjects.FirstOrDefault(s => s.Key == key) ?? new SubjectChoice(key, "", null);

    public void Decide(SubjectChoice choice) =>
        Subjects = [.. Subjects.Where(s => s.Key != choice.Key), .. choice is { Narrative: "", Samples: null } ? Array.Empty<SubjectChoice>() : [choice]];

    /// <summary>Puts the pair there, or says something else of one that is there.</summary>
    public void Pair(ChosenPair pair) => Pairs = [.. Pairs.Where(p => (p.Early, p.Late) != (pair.Early, pair.Late)), pair];

    public void Part(Guid early, Guid late) => Pairs = [.. Pairs.Where(p => (p.Early, p.Late) != (early, late))];

    internal sealed class Mapping : IEntityTypeConfiguration<Portfolio>
    {
        public void Configure(EntityTypeBuilder<Portfolio> b)
        {
            b.HasKey(p => new { p.FamilyId, p.LearnerId, p.SchoolYearId });
            b.Property(p => p.Parts).AsJson();
            b.Property(p => p.Reader).HasMaxLength(LongestReader);
            b.Property(p => p.Opening).HasMaxLength(LongestText);
            b.Property(p => p.Subjects).AsJson();
            b.Property(p => p.Pairs).AsJson();
            b.HasOne<Learner>().WithMany().HasForeignKey(p => new { p.FamilyId, p.LearnerId }).OnDelete(DeleteBehavior.Cascade);
            b.HasOne<SchoolYear>().WithMany().HasForeignKey(p => new { p.FamilyId, p.SchoolYearId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
