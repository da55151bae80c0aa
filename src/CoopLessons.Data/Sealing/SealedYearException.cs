using CoopLessons.Core.Calendar;

namespace CoopLessons.Data.Sealing;

/// <summary>Something was about to change the record of a sealed year, and not as a late correction. Nothing was saved.</summary>
/// <param name="what">In a parent's words, what it is and how it belongs to the year: <c>3 March 2026 lies in</c>.</param>
/// <param name="mayCorrect">Whether it can be saved as a late correction instead.</param>
public sealed class SealedYearException(SealedYear year, string what, bool mayCorrect = true) : InvalidOperationException(
    $"{what} the school year {year.YearName}, which was sealed on {year.SealedOn.Plain()}. Nothing was saved.")
{
    public Guid SchoolYearId { get; } = year.SchoolYearId;
    public string YearName { get; } = year.YearName;
    public DateOnly SealedOn { get; } = year.SealedOn;
    public bool MayCorrect { get; } = mayCorrect;
}
