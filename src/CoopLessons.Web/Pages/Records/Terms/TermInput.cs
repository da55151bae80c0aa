using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Requirements;
using CoopLessons.Data.Evidence;

namespace CoopLessons.Web.Pages.Records;

/// <summary>What a parent writes into a report on a term.</summary>
public sealed class TermInput
{
    public int Version { get; set; }

    [Required(ErrorMessage = "Say what the report is called.")]
    [StringLength(TermReport.LongestTitle, ErrorMessage = "At most 120 letters.")]
    public string? Title { get; set; }

    [Required(ErrorMessage = "Say on which day the term begins.")]
    public DateOnly? First { get; set; }

    [Required(ErrorMessage = "Say on which day the term ends.")]
    public DateOnly? Last { get; set; }
    public List<ReportPart> Parts { get; set; } = [];

    [StringLength(TermReport.LongestText, ErrorMessage = "At most 4,000 letters.")]
    public string? Opening { get; set; }
    public List<SubjectInput> Subjects { get; set; } = [];

    public sealed class SubjectInput
    {
        public string? Key { get; set; }

        [Range(0, 100, ErrorMessage = "A share is 0 to 100 per cent.")]
        public int? PerCent { get; set; }

        [StringLength(TermReport.LongestMark, ErrorMessage = "At most 40 letters.")]
        public string? Mark { get; set; }

        [StringLength(TermReport.LongestText, ErrorMessage = "At most 4,000 letters.")]
        public string? Narrative { get; set; }

        [StringLength(TermReport.LongestText, ErrorMessage = "At most 4,000 letters.")]
        public string? Explanation { get; set; }
    }

    public static TermInput From(TermReport report, IReadOnlyList<TermSubjectTold> told) => new()
    {
        Version = report.Version,
        Title = report.Title,
        First = report.First,
        Last = report.Last,
        Parts = report.Parts,
        Opening = report.Opening,
        Subjects = [.. told.Select(t => new SubjectInput { Key = t.Key, PerCent = t.PerCent, Mark = t.Mark, Narrative = t.Narrative, Explanation = t.Explanation })],
    };

    /// <summary>What was written of the subjects that the term has, under their present names.</summary>
    public IReadOnlyList<TermSubjectTold> Told(TermAtHand term) => [.. term.Subjects.Select(s =>
    {
        var written = Subjects.Find(i => i.Key == s.Subject.Key);
        return written is null ? s.Drafted(term.Log.Learner.Name)
            : new TermSubjectTold(s.Subject.Key, s.Subject.Name, written.PerCent, (written.Mark ?? "").Trim(), (written.Narrative ?? "").Trim(), (written.Explanation ?? "").Trim());
    })];
}
