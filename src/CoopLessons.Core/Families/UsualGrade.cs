namespace CoopLessons.Core.Families;

/// <summary>The grade that is usual for a child's age; what a family says of a grade wins over it.</summary>
public static class UsualGrade
{
    private const int EarliestMonth = 5;

    /// <summary>
    /// Completed years on the September 1 by which the school year begins, less five (common practice, no source): 0 for
    /// kindergarten, 1–12; null for a child below or above them. A year that begins in May or later has the September of
    /// its own calendar year, an earlier one that of the year before.
    /// </summary>
    public static int? In(DateOnly yearBegins, DateOnly birth)
    {
        var september = new DateOnly(yearBegins.Month >= EarliestMonth ? yearBegins.Year : yearBegins.Year - 1, 9, 1);
        var grade = Age.On(september, birth) - 5;
        return grade is >= 0 and <= 12 ? grade : null;
    }
}
