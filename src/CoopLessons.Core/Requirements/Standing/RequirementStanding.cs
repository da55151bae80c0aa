using CoopLessons.Core.Calendar;
using CoopLessons.Core.Requirements.Forecasts;

namespace CoopLessons.Core.Requirements.Standing;

/// <summary>One figure of a pathway held against the log.</summary>
/// <param name="Counts">Whether it weighs in the pathway's verdict: it binds, or the family took it as a goal.</param>
/// <param name="Window">The days over which it is measured.</param>
/// <param name="Measured">Null where nothing is counted: alternatives, things to judge, figures not asked.</param>
/// <param name="Target">The full figure; null where none is known.</param>
/// <param name="ProRated">The figure cut down to the days asked, where only a part of the year is: arithmetic, not law.</param>
/// <param name="Why">One sentence that says why in numbers.</param>
/// <param name="Parts">Alternatives, or the quarters, halves or terms of the year.</param>
/// <param name="Forecast">Where a year's running total is measured against a figure.</param>
public sealed record RequirementStanding(
    Requirement Requirement,
    bool Counts,
    LegalWindow Window,
    Verdict Verdict,
    Quantity? Measured,
    Quantity? Target,
    Quantity? ProRated,
    string Why,
    IReadOnlyList<RequirementStanding> Parts,
    Forecast? Forecast)
{
    /// <summary>What is still missing to the full figure; null where nothing is measured against one.</summary>
    public Quantity? Missing => Measured is { } measured && Target is { } target ? measured.MissingTo(target) : null;

    /// <summary>What each date adds to the total; null where no total is measured.</summary>
    public IReadOnlyDictionary<DateOnly, int>? Amounts { get; init; }

    /// <summary>The part of the year that it stands for, where the figure is asked of parts.</summary>
    public DayRange? Part { get; init; }
}
