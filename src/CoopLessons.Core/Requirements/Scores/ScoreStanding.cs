using System.Text.Json.Serialization;

namespace CoopLessons.Core.Requirements.Scores;

/// <summary>One area's result, each figure where the paper has it.</summary>
/// <param name="Area"><see cref="Composite"/>, or an area as the paper calls it.</param>
/// <param name="Percentile">1–99.</param>
/// <param name="Stanine">1–9.</param>
/// <param name="GradeEquivalent">As printed, such as 7.4; may be empty.</param>
/// <param name="Points">As printed; may be empty.</param>
public sealed record ScoreResult(string Area, int? Percentile, int? Stanine, string GradeEquivalent, string Points)
{
    /// <summary>The whole test as one score.</summary>
    public const string Composite = "composite";

    [JsonIgnore]
    public bool HasFigure => Percentile is not null || Stanine is not null || GradeEquivalent.Length > 0 || Points.Length > 0;
}

public enum ScoreVerdict
{
    Reached,
    NotReached,

    /// <summary>The result has no figure that answers.</summary>
    CannotTell,
}

/// <summary>A result beside a figure of the law: arithmetic, no judgement of the child and no advice.</summary>
/// <param name="Words">The score and what is asked, in one sentence without the learner's name.</param>
public sealed record ScoreStanding(ScoreFloor Floor, string Area, ScoreVerdict Verdict, string Words)
{
    /// <summary>Each area that a floor asks for, in its order.</summary>
    /// <param name="results">Of one assessment.</param>
    public static IReadOnlyList<ScoreStanding> Of(ScoreFloor floor, IReadOnlyList<ScoreResult> results) =>
        [.. (floor.Areas ?? [ScoreResult.Composite]).Select(area => Of(floor, area, results.FirstOrDefault(r => string.Equals(r.Area, area, StringComparison.OrdinalIgnoreCase))))];

    private static ScoreStanding Of(ScoreFloor floor, string area, ScoreResult? result)
    {
        var asked = $"asked for: {floor.Words}";
        if (result is null or { Percentile: null, Stanine: null })
            return new(floor, area, ScoreVerdict.CannotTell, $"{area}: no {(floor.Measure == ScoreMeasure.Stanine ? "stanine" : "percentile")} is written down; {asked}");
        if (floor.Measure == ScoreMeasure.Stanine)
        {
            var stanine = result.Stanine ?? Scores.Stanine.Of(result.Percentile!.Value);
            var how = result.Stanine is null ? $"{Scores.Stanine.Ordinal(result.Percentile!.Value)} percentile, so {Scores.Stanine.Ordinal(stanine)} stanine" : $"{Scores.Stanine.Ordinal(stanine)} stanine";
            return new(floor, area, stanine >= floor.Lowest ? ScoreVerdict.Reached : ScoreVerdict.NotReached, $"{area} {how}; {asked}");
        }

        if (result.Percentile is { } rank)
            return new(floor, area, rank >= floor.Lowest ? ScoreVerdict.Reached : ScoreVerdict.NotReached, $"{area} {Scores.Stanine.Ordinal(rank)} percentile; {asked}");
        // A stanine is a band of ranks: it answers only where all of them do.
        var (low, high) = (Scores.Stanine.LowestRank(result.Stanine!.Value), Scores.Stanine.HighestRank(result.Stanine.Value));
        var verdict = low >= floor.Lowest ? ScoreVerdict.Reached : high < floor.Lowest ? ScoreVerdict.NotReached : ScoreVerdict.CannotTell;
        return new(floor, area, verdict, $"{area} {Scores.Stanine.Ordinal(result.Stanine.Value)} stanine, which holds the {Scores.Stanine.Ordinal(low)} to the {Scores.Stanine.Ordinal(high)} percentile; {asked}");
    }
}
