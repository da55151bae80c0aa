using CoopLessons.Core.Calendar;
using CoopLessons.Core.Requirements;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Evidence;

/// <summary>What a report on a term is about and what it is asked to hold.</summary>
/// <param name="DutyKey">Key of the paper that asks for it; empty for one of the family's own.</param>
/// <param name="Title">Such as “Quarterly report 2 of 4”.</param>
/// <param name="ExplainUnder">Per cent of the planned material below which an explanation is asked for; null where none is.</param>
/// <param name="Cite">Where that is asked, for the paper; may be empty.</param>
public sealed record TermAsked(string DutyKey, string Title, DayRange Days, IReadOnlyList<ReportPart> Parts, int? ExplainUnder, string Cite);

/// <summary>One subject of a report.</summary>
/// <param name="Key">As <see cref="SubjectAsked.Key"/>.</param>
/// <param name="PerCent">Of the planned material, as the parent says; null for what the plan says.</param>
/// <param name="Mark">A grade in the parent's own way; may be empty.</param>
/// <param name="Narrative">Sentences on how the child came on; may be empty.</param>
/// <param name="Explanation">Why less was covered than planned; may be empty.</param>
/// <param name="Fixed">The figures as they were when the report was finished; null before.</param>
public sealed record TermSubjectTold(string Key, string Name, int? PerCent, string Mark, string Narrative, string Explanation, TermFigures? Fixed = null);

/// <summary>What stands at the head of a report, as it was when it was finished.</summary>
/// <param name="Grade">As forms ask for it; empty where it is not said.</param>
/// <param name="Place">Place and pathway; empty where none was chosen.</param>
public sealed record TermHeading(string Family, string Learner, string Year, string Grade, string Place);

/// <summary>Figures of one subject in a term.</summary>
/// <param name="ReadAs">The family’s subjects that were read as it; may be empty.</param>
/// <param name="Topic">A matter within other subjects, which has no figures of its own.</param>
public sealed record TermFigures(int Minutes, int Days, int Planned, int Done, string ReadAs = "", bool Topic = false);

/// <summary>Figures of a whole term, as they were when the report was finished.</summary>
public sealed record TermTotals(int Minutes, int SchoolDays, int Entries, string Fingerprint, TermHeading? Heading = null);

/// <summary>A report on a term or a year: drafted from the log, told by the parent, kept as it was sent once it is finished.</summary>
public sealed class TermReport : IFamilyOwned, IVersioned
{
    public const int LongestTitle = 120;
    public const int LongestText = 4000;
    public const int LongestMark = 40;
    public const int LongestCite = 200;

    private TermReport() { }

    public TermReport(Guid id, Guid learnerId, Guid schoolYearId, TermAsked asked)
    {
        (Id, LearnerId, SchoolYearId) = (id, learnerId, schoolYearId);
        (DutyKey, Title, First, Last, ExplainUnder, Cite) = (asked.DutyKey, asked.Title, asked.Days.First, asked.Days.Last, asked.ExplainUnder, asked.Cite);
        Parts = [.. asked.Parts];
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public Guid LearnerId { get; private set; }
    public Guid SchoolYearId { get; private set; }
    public string DutyKey { get; private set; } = "";
    public string Title { get; private set; } = "";
    public DateOnly First { get; private set; }

    /// <summary>Included.</summary>
    public DateOnly Last { get; private set; }
    public List<ReportPart> Parts { get; private set; } = [];
    public int? ExplainUnder { get; private set; }
    public string Cite { get; private set; } = "";
    public string Opening { get; private set; } = "";
    public List<TermSubjectTold> Subjects { get; private set; } = [];

    /// <summary>Null while it is a draft.</summary>
    public TermTotals? Totals { get; private set; }
    public DateOnly? FinishedOn { get; private set; }

    /// <summary>As the family calls them; empty while it is a draft.</summary>
    public string FinishedBy { get; private set; } = "";
    public int Version { get; private set; }

    public DayRange Days => new(First, Last);

    public bool IsFinished => FinishedOn is not null;

    /// <exception cref="InvalidOperationException">It is finished: what was sent is not changed.</exception>
    public void Describe(string title, DayRange days, IEnumerable<ReportPart> parts, string opening, IEnumerable<TermSubjectTold> subjects)
    {
        RefuseIfFinished();
        (Title, First, Last, Opening) = (title, days.First, days.Last, opening);
        (Parts, Subjects) = ([.. parts.Distinct().Order()], [.. subjects]);
    }

    /// <summary>Fixes every figure as it stands; from now on it is read and no longer changed.</summary>
    /// <exception cref="InvalidOperationException">It is finished already.</exception>
    public void Finish(TermTotals totals, IEnumerable<TermSubjectTold> subjects, DateOnly today, Author by)
    {
        RefuseIfFinished();
        (Totals, FinishedOn, FinishedBy) = (totals, today, by.Name);
        Subjects = [.. subjects];
    }

    private void RefuseIfFinished()
    {
        if (IsFinished)
            throw new InvalidOperationException("A finished report is not changed; write a new one.");
    }

    internal sealed class Mapping : IEntityTypeConfiguration<TermReport>
    {
        public void Configure(EntityTypeBuilder<TermReport> b)
        {
            b.HasKey(r => new { r.FamilyId, r.Id });
            b.Property(r => r.Id).ValueGeneratedNever();
            b.Property(r => r.DutyKey).HasMaxLength(Requirements.DutyMark.LongestKey);
            b.Property(r => r.Title).HasMaxLength(LongestTitle);
            b.Property(r => r.Parts).AsJson();
            b.Property(r => r.Cite).HasMaxLength(LongestCite);
            b.Property(r => r.Opening).HasMaxLength(LongestText);
            b.Property(r => r.Subjects).AsJson();
            b.Property(r => r.Totals).AsJson();
            b.Property(r => r.FinishedBy).HasMaxLength(People.Person.LongestName);
            b.Ignore(r => r.Days).Ignore(r => r.IsFinished);
            b.HasIndex(r => new { r.FamilyId, r.LearnerId, r.SchoolYearId });
            b.HasOne<Learner>().WithMany().HasForeignKey(r => new { r.FamilyId, r.LearnerId }).OnDelete(DeleteBehavior.Cascade);
            b.HasOne<SchoolYear>().WithMany().HasForeignKey(r => new { r.FamilyId, r.SchoolYearId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
