using CoopLessons.Core.Calendar;
using CoopLessons.Core.Credits;
using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Credits;

/// <summary>What a high school course is, set together.</summary>
/// <param name="Days">From its first to its last day, both included; it stands in the year of its last.</param>
/// <param name="Aim">The credit for which it is meant, above zero.</param>
/// <param name="CollegeCredits">Hundredths, as the college gave them; null where the credit rests on something else.</param>
/// <param name="College">Which college; may be empty.</param>
public sealed record CourseTerms(string Title, CourseArea Area, CourseLevel Level, DayRange Days, CreditBasis Basis, CreditCount Aim, int? CollegeCredits = null, string College = "");

/// <summary>Something that a parent says is lacking, such as a laboratory or an essay.</summary>
public sealed record LackingLine(string What, bool There);

/// <summary>A course of a learner in the years of high school, with what comes to it by rule.</summary>
public sealed class HighSchoolCourse : IFamilyOwned, IVersioned
{
    public const int LongestTitle = 80;
    public const int LongestCollege = 80;
    public const int LongestMark = 6;
    public const int LongestDescription = 4000;
    public const int LongestLine = 120;
    public const int MostLines = 20;
    public const int MostRules = 20;

    /// <summary>Of one learner.</summary>
    public const int Most = 80;

    private readonly List<HighSchoolRule> _rules = [];

    private HighSchoolCourse() { }

    public HighSchoolCourse(Guid id, Guid learnerId, int order, CourseTerms terms)
    {
        (Id, LearnerId, Order) = (id, learnerId, order);
        Describe(terms);
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public Guid LearnerId { get; private set; }

    /// <summary>Place in the parent's order: of two courses that ask for the same, the first has it.</summary>
    public int Order { get; private set; }
    public string Title { get; private set; } = "";
    public CourseArea Area { get; private set; }
    public CourseLevel Level { get; private set; }
    public DateOnly First { get; private set; }

    /// <summary>Included.</summary>
    public DateOnly Last { get; private set; }
    public CreditBasis Basis { get; private set; }

    /// <summary>Hundredths.</summary>
    public int Aim { get; private set; }
    public int? CollegeCredits { get; private set; }
    public string College { get; private set; } = "";
    public MarkKind Marked { get; private set; }

    /// <summary>A mark of the family's scale where it was marked so; else empty.</summary>
    public string Mark { get; private set; } = "";

    /// <summary>Hundredths that the parent awards; null while that is open.</summary>
    public int? Awarded { get; private set; }

    /// <summary>As the parent wrote it, a sentence or more a line.</summary>
    public string Description { get; private set; } = "";
    public List<LackingLine> Lacking { get; private set; } = [];
    public int Version { get; private set; }
    public IReadOnlyList<HighSchoolRule> Rules => _rules;

    public DayRange Days => new(First, Last);

    public CourseTerms Terms => new(Title, Area, Level, Days, Basis, new CreditCount(Aim), CollegeCredits, College);

    public void Describe(CourseTerms terms)
    {
        (Title, Area, Level, First, Last) = (terms.Title, terms.Area, terms.Level, terms.Days.First, terms.Days.Last);
        (Basis, Aim, CollegeCredits, College) = (terms.Basis, terms.Aim.Hundredths, terms.CollegeCredits, terms.College);
    }

    public void StandAt(int order) => Order = order;

    /// <param name="mark">Read where <paramref name="kind"/> is a mark of the scale.</param>
    /// <param name="awarded">Null while it is open.</param>
    public void SetMark(MarkKind kind, string mark, CreditCount? awarded) =>
        (Marked, Mark, Awarded) = (kind, kind == MarkKind.Graded ? mark : "", kind == MarkKind.Open ? null : awarded?.Hundredths ?? 0);

    public void Tell(string description) => Description = description;

    public void Lacks(IEnumerable<LackingLine> lines) => Lacking = [.. lines];

    public void AddRule(Guid id, CourseRule rule) => _rules.Add(new HighSchoolRule(id, rule));

    public bool RemoveRule(Guid id) => _rules.RemoveAll(r => r.Id == id) > 0;

    /// <summary>The credit that stands on papers: none for a mark without points, also where it had points when it was given; null while it is open.</summary>
    public CreditCount? Earned(GradeScale scale) => Awarded is not { } awarded ? null : scale.Step(Mark) is { EarnsCredit: false } ? CreditCount.Zero : new CreditCount(awarded);

    /// <summary>How an average sees it: a mark that earns nothing counts over what was attempted.</summary>
    public MarkedCourse ToMarked(GradeScale scale) =>
        new(Level, Marked, Mark, new CreditCount(scale.Step(Mark) is { EarnsCredit: true } ? Awarded ?? 0 : Aim));

    internal sealed class Mapping : IEntityTypeConfiguration<HighSchoolCourse>
    {
        public void Configure(EntityTypeBuilder<HighSchoolCourse> b)
        {
            b.HasKey(c => new { c.FamilyId, c.Id });
            b.Property(c => c.Id).ValueGeneratedNever();
            b.Property(c => c.Title).HasMaxLength(LongestTitle);
            b.Property(c => c.Area).HasConversion<string>().HasMaxLength(20);
            b.Property(c => c.Level).HasConversion<string>().HasMaxLength(20);
            b.Property(c => c.Basis).HasConversion<string>().HasMaxLength(20);
            b.Property(c => c.Marked).HasConversion<string>().HasMaxLength(20);
            b.Property(c => c.College).HasMaxLength(LongestCollege);
            b.Property(c => c.Mark).HasMaxLength(LongestMark);
            b.Property(c => c.Description).HasMaxLength(LongestDescription);
            b.Property(c => c.Lacking).AsJson();
            b.Ignore(c => c.Days).Ignore(c => c.Terms);
            b.HasOne<Learner>().WithMany().HasForeignKey(c => new { c.FamilyId, c.LearnerId }).OnDelete(DeleteBehavior.Cascade);
            b.HasMany(c => c.Rules).WithOne().HasForeignKey(r => new { r.FamilyId, r.CourseId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}

/// <summary>A subject of the family between two dates that comes to a course of itself.</summary>
public sealed class HighSchoolRule : IFamilyOwned
{
    private HighSchoolRule() { }

    internal HighSchoolRule(Guid id, CourseRule rule) =>
        (Id, SubjectId, First, Last, UnitId) = (id, rule.SubjectId, rule.Days.First, rule.Days.Last, rule.UnitId);

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public Guid CourseId { get; private set; }
    public Guid SubjectId { get; private set; }
    public DateOnly First { get; private set; }

    /// <summary>Included.</summary>
    public DateOnly Last { get; private set; }

    /// <summary>Only what belongs to this unit; null for all. The unit may be gone since: then nothing does.</summary>
    public Guid? UnitId { get; private set; }

    public CourseRule ToCore() => new(SubjectId, new DayRange(First, Last), UnitId);

    internal sealed class Mapping : IEntityTypeConfiguration<HighSchoolRule>
    {
        public void Configure(EntityTypeBuilder<HighSchoolRule> b)
        {
            b.HasKey(r => new { r.FamilyId, r.Id });
            b.Property(r => r.Id).ValueGeneratedNever();
            b.HasOne<FamilySubject>().WithMany().HasForeignKey(r => new { r.FamilyId, r.SubjectId }).OnDelete(DeleteBehavior.NoAction);
        }
    }
}
