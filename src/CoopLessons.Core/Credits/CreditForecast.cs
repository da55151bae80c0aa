using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Credits;

/// <summary>How far a course is from the credit that it aims at: plain arithmetic, no guess.</summary>
/// <param name="SoFar">Minutes of study that are there.</param>
/// <param name="Needed">Minutes that the credit asks for.</param>
/// <param name="Earned">What the minutes so far make.</param>
public sealed record CreditForecast(Minutes SoFar, Minutes Needed, CreditCount Earned)
{
    /// <param name="perCredit">Minutes that make one credit, at least 1.</param>
    public static CreditForecast Of(Minutes soFar, CreditCount aim, Minutes perCredit)
    {
        var needed = (aim.Hundredths * (long)perCredit.Value + 99) / 100;
        return new CreditForecast(soFar, new Minutes((int)needed), CreditCount.ByHours(soFar, perCredit));
    }

    public Minutes Lacking => new(Math.Max(0, Needed.Value - SoFar.Value));

    /// <summary>Minutes a week that are lacking, rounded up, over so many weeks; null where none are left and something is lacking.</summary>
    /// <param name="weeks">Zero or more.</param>
    public Minutes? AWeekOver(int weeks) =>
        Lacking == Minutes.Zero ? Minutes.Zero : weeks < 1 ? null : new Minutes((Lacking.Value + weeks - 1) / weeks);

    /// <summary>Weeks, begun ones counted, from a day to a course's last day, both included; 0 once that has passed.</summary>
    public static int WeeksLeft(DateOnly today, DateOnly last) => last < today ? 0 : (last.DayNumber - today.DayNumber) / 7 + 1;
}
