using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Requirements.Scores;
using CoopLessons.Data.Requirements;
using CoopLessons.Web.Pages.Account;

namespace CoopLessons.Web.Pages.Assessments;

/// <summary>One area's result as typed.</summary>
public sealed class ResultInput : IValidatableObject
{
    [StringLength(Assessment.LongestArea, ErrorMessage = "At most {1} signs here.")]
    public string? Area { get; set; }

    [Range(1, 99, ErrorMessage = "A percentile is a whole number from {1} to {2}.")]
    public int? Percentile { get; set; }

    [Range(1, 9, ErrorMessage = "A stanine is a whole number from {1} to {2}.")]
    public int? Stanine { get; set; }

    [StringLength(Assessment.LongestText, ErrorMessage = "At most {1} signs here.")]
    public string? GradeEquivalent { get; set; }

    [StringLength(Assessment.LongestText, ErrorMessage = "At most {1} signs here.")]
    public string? Points { get; set; }

    public ScoreResult Read() => new(Area?.Trim() ?? "", Percentile, Stanine, GradeEquivalent?.Trim() ?? "", Points?.Trim() ?? "");

    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
    {
        if (Read() is { HasFigure: true, Area: "" })
            yield return new ValidationResult("Say of which area this is.", [nameof(Area)]);
        if (new[] { Area, GradeEquivalent, Points }.Any(t => t?.Any(char.IsControl) == true))
            yield return new ValidationResult("Write each on one line.", [nameof(Area)]);
    }
}

/// <summary>A test or an evaluation as a parent writes it down.</summary>
public sealed class AssessmentInput : IValidatableObject
{
    [Required(ErrorMessage = "Choose the day.")]
    public DateOnly? Date { get; set; }

    [EnumDataType(typeof(AssessmentKind), ErrorMessage = "Choose one of these.")]
    public AssessmentKind Kind { get; set; }

    [Required(ErrorMessage = "Say what it was.")]
    [StringLength(Assessment.LongestWhat, ErrorMessage = "At most {1} signs here.")]
    [Visible]
    public string? What { get; set; }

    [StringLength(Assessment.LongestBy, ErrorMessage = "At most {1} signs here.")]
    public string? By { get; set; }

    [StringLength(Assessment.LongestBy, ErrorMessage = "At most {1} signs here.")]
    public string? Qualification { get; set; }

    [StringLength(Assessment.LongestOutcome, ErrorMessage = "At most {1} signs here.")]
    public string? Outcome { get; set; }

    public List<ResultInput> Results { get; set; } = [];
    public Guid? PieceId { get; set; }

    /// <summary>A line for each usual area, then those that the paper calls otherwise, then two empty ones.</summary>
    public static AssessmentInput Of(Assessment? row) => new()
    {
        Date = row?.Date,
        Kind = row?.Kind ?? default,
        What = row?.What,
        By = row?.By,
        Qualification = row?.Qualification,
        Outcome = row?.Outcome,
        PieceId = row?.PieceId,
        Results =
        [
            .. AssessmentWords.Areas.Select(a => Line(a, row?.Results.FirstOrDefault(r => r.Area == a))),
            .. (row?.Results ?? []).Where(r => !AssessmentWords.Areas.Contains(r.Area)).Select(r => Line(r.Area, r)), Line(null, null), Line(null, null),
        ],
    };

    public AssessmentFacts Read() => new(
        Date!.Value, Kind, What!.Trim(), By?.Trim() ?? "", Qualification?.Trim() ?? "", Outcome?.ReplaceLineEndings("\n").Trim() ?? "",
        [.. Results.Select(r => r.Read()).Where(r => r.HasFigure)], PieceId);

    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
    {
        if (Date is { Year: < 1990 or > 2200 })
            yield return new ValidationResult("Choose a day from the year 1990 on.", [nameof(Date)]);
        foreach (var (text, field) in new[] { (What, nameof(What)), (By, nameof(By)), (Qualification, nameof(Qualification)) })
        {
            if (text?.Any(char.IsControl) == true)
                yield return new ValidationResult("Write this on one line.", [field]);
        }

        var areas = Results.Select(r => r.Read()).Where(r => r.HasFigure).Select(r => r.Area).ToList();
        if (areas.Count > Assessment.MostResults)
            yield return new ValidationResult($"At most {Assessment.MostResults} results are kept of one paper.", [nameof(Results)]);
        if (areas.Distinct(StringComparer.OrdinalIgnoreCase).Count() < areas.Count)
            yield return new ValidationResult("Each area stands there once.", [nameof(Results)]);
    }

    private static ResultInput Line(string? area, ScoreResult? result) =>
        new() { Area = area, Percentile = result?.Percentile, Stanine = result?.Stanine, GradeEquivalent = result?.GradeEquivalent, Points = result?.Points };
}
