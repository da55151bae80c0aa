using CoopLessons.Core.Requirements.Scores;
using CoopLessons.Data.Requirements;

namespace CoopLessons.Web.Pages.Assessments;

/// <summary>How these pages call tests, evaluations and their results.</summary>
public static class AssessmentWords
{
    /// <summary>Areas for which the form has a line, as laws and papers call them.</summary>
    public static readonly IReadOnlyList<string> Areas = [ScoreResult.Composite, "reading", "language arts", "mathematics", "science", "social studies"];

    public static string Of(AssessmentKind kind) => kind switch
    {
        AssessmentKind.NormReferencedTest => "norm-referenced test",
        AssessmentKind.StateTest => "state test",
        AssessmentKind.PortfolioEvaluation => "evaluation of the portfolio",
        AssessmentKind.WrittenNarrative => "written narrative",
        _ => "something else",
    };

    public static string Of(ScoreResult result)
    {
        string[] parts =
        [
            result.Percentile is { } rank ? $"{Stanine.Ordinal(rank)} percentile" : "", result.Stanine is { } stanine ? $"{Stanine.Ordinal(stanine)} stanine" : "",
            result.GradeEquivalent.Length > 0 ? $"grade equivalent {result.GradeEquivalent}" : "", result.Points.Length > 0 ? $"{result.Points} points" : "",
        ];
        return $"{result.Area}: {string.Join(", ", parts.Where(p => p.Length > 0))}";
    }

    public static string Of(ScoreVerdict verdict) => verdict switch
    {
        ScoreVerdict.Reached => "reached",
        ScoreVerdict.NotReached => "not reached",
        _ => "cannot tell",
    };

    public static string Icon(ScoreVerdict verdict) => verdict switch
    {
        ScoreVerdict.Reached => "check",
        ScoreVerdict.NotReached => "minus",
        _ => "circle-help",
    };
}
