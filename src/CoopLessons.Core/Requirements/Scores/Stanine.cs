using System.Globalization;

namespace CoopLessons.Core.Requirements.Scores;

/// <summary>
/// The nine bands of a standard-nine scale over percentile ranks. The bands hold 4, 7, 12, 17, 20, 17, 12, 7 and 4 of a
/// hundred (source: New Zealand's Ministry of Education, "Percentages, percentiles, and stanines", assessment.tki.org.nz,
/// read on 28 November 2026), so that a band begins at the percentile rank that the bands below it fill: the fourth at the
/// 23rd, as Virginia's families are told, too. A publisher's own norms may differ by a rank.
/// </summary>
public static class Stanine
{
    private static readonly int[] Shares = [4, 7, 12, 17, 20, 17, 12, 7, 4];

    /// <summary>The lowest percentile rank of a stanine, 1–9.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No stanine.</exception>
    public static int LowestRank(int stanine)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(stanine, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(stanine, 9);
        return stanine == 1 ? 1 : Shares.Take(stanine - 1).Sum();
    }

    /// <summary>The highest percentile rank of a stanine, 1–9.</summary>
    public static int HighestRank(int stanine) => stanine == 9 ? 99 : LowestRank(stanine + 1) - 1;

    /// <summary>The stanine in which a percentile rank lies.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 1–99.</exception>
    public static int Of(int rank)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(rank, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(rank, 99);
        return Enumerable.Range(1, 9).Last(s => LowestRank(s) <= rank);
    }

    /// <summary><c>1st</c>, <c>22nd</c>, <c>33rd</c>, <c>41st</c>, <c>13th</c>.</summary>
    public static string Ordinal(int number) => string.Create(CultureInfo.InvariantCulture, $"{number}{(number % 100 is >= 11 and <= 13 ? "th" : (number % 10) switch { 1 => "st", 2 => "nd", 3 => "rd", _ => "th" })}");
}
