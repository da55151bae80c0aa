using System.Text.Json.Serialization;

namespace CoopLessons.Core.Requirements.Scores;

public enum ScoreMeasure
{
    /// <summary>Percentile rank on national norms, 1–99.</summary>
    Percentile,

    /// <summary>1–9.</summary>
    Stanine,
}

/// <summary>A score that a duty's threshold names, for arithmetic beside its words. Exactly one of the two figures is there.</summary>
/// <param name="AtLeast">Reaching it is enough.</param>
/// <param name="Above">Only more than it is enough.</param>
/// <param name="Areas">Each of these areas is held against it; null: the composite.</param>
/// <param name="Grades">Only in these grades; null: in all.</param>
/// <param name="When">A condition that no result shows.</param>
/// <param name="Below">What follows where it is not reached, in the law's sense; null where the law says nothing.</param>
public sealed record ScoreFloor(
    ScoreMeasure Measure, int? AtLeast = null, int? Above = null, IReadOnlyList<string>? Areas = null, Grades? Grades = null, string? When = null, string? Below = null)
{
    /// <summary>As a sentence asks for it: <c>above the 33rd percentile</c>.</summary>
    [JsonIgnore]
    public string Words => $"{(Above is null ? "at or above" : "above")} the {Stanine.Ordinal((Above ?? AtLeast)!.Value)} {(Measure == ScoreMeasure.Stanine ? "stanine" : "percentile")}";

    /// <summary>The lowest score that is enough.</summary>
    [JsonIgnore]
    public int Lowest => AtLeast ?? Above!.Value + 1;
}
