using System.Text.Json.Serialization;

namespace CoopLessons.Core.Credits;

/// <summary>A mark and the points that it stands for.</summary>
/// <param name="Points">Hundredths: 400 for 4.00.</param>
/// <param name="FromPercent">The lowest percentage to which it is given, where the family says so.</param>
public sealed record GradeStep(string Mark, int Points, int? FromPercent = null)
{
    /// <summary>A mark without points earns no credit; what was attempted still counts in the average.</summary>
    [JsonIgnore]
    public bool EarnsCredit => Points > 0;
}

/// <summary>A family's scale of marks, printed whole on its transcripts.</summary>
/// <param name="Steps">The best first; each mark once.</param>
/// <param name="HonorsAdds">Hundredths of a point that the weighted average adds for an honors course.</param>
/// <param name="CollegeAdds">The same for a course at college level.</param>
public sealed record GradeScale(IReadOnlyList<GradeStep> Steps, int HonorsAdds, int CollegeAdds)
{
    /// <summary>Half a point for honors and a whole one for college level, as school districts print it; other figures are in use too.</summary>
    public const int UsualHonorsAdds = 50;
    public const int UsualCollegeAdds = 100;

    /// <summary>Four points for an A and one less for each mark below: the common 4.0 scale.</summary>
    public static GradeScale Plain { get; } = new([new("A", 400), new("B", 300), new("C", 200), new("D", 100), new("F", 0)], UsualHonorsAdds, UsualCollegeAdds);

    /// <summary>The same with thirds between: 0.3 above a whole mark and 0.3 below it (common practice; some round to 0.33).</summary>
    public static GradeScale WithPlusAndMinus { get; } = new(
    [
        new("A", 400), new("A-", 370), new("B+", 330), new("B", 300), new("B-", 270), new("C+", 230), new("C", 200), new("C-", 170),
        new("D+", 130), new("D", 100), new("D-", 70), new("F", 0),
    ], UsualHonorsAdds, UsualCollegeAdds);

    public GradeStep? Step(string mark) => Steps.FirstOrDefault(s => s.Mark == mark);

    /// <summary>What the weighted average adds to a mark. A mark without points stays without.</summary>
    public int Adds(CourseLevel level, GradeStep step) => !step.EarnsCredit ? 0 : level switch
    {
        CourseLevel.Honors => HonorsAdds,
        CourseLevel.College => CollegeAdds,
        _ => 0,
    };
}
