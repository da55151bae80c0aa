namespace CoopLessons.Core.Families;

/// <summary>Ages in completed years.</summary>
public static class Age
{
    /// <summary>Completed years on a date; a child born on 29 February turns a year older on 1 March of a common year. Zero before birth.</summary>
    public static int On(DateOnly date, DateOnly birth)
    {
        var years = date.Year - birth.Year;
        if ((date.Month, date.Day).CompareTo((birth.Month, birth.Day)) < 0)
            years--;
        return Math.Max(0, years);
    }
}

/// <summary>
/// A learner's level in one subject, as the grade whose work it is: 0 for kindergarten, 1–12. Private to the family;
/// the grade that a form asks for is another thing.
/// </summary>
public readonly record struct Level
{
    /// <exception cref="ArgumentOutOfRangeException">Outside 0–12.</exception>
    public Level(int grade)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(grade);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(grade, 12);
        Grade = grade;
    }

    public int Grade { get; }

    /// <summary>The age for which work of this level is usually written: grade and six (common practice, no source).</summary>
    public int UsualAge => Grade + 6;

    public string Name => Grade == 0 ? "kindergarten" : $"grade {Grade}";
}
