using CoopLessons.Core.Hours;

namespace CoopLessons.Data.Scenario;

/// <summary>Who does a course at once.</summary>
public enum CourseHow
{
    /// <summary>Each child for itself, an entry each.</summary>
    Each,

    /// <summary>All children of the ages together, one entry.</summary>
    Together,

    /// <summary>A child for itself, on days that are still short.</summary>
    Filler,
}

/// <summary>A course that runs beside the units: what is written down of it, how long and how often.</summary>
/// <param name="At">The time before which it does not begin.</param>
/// <param name="PerWeek">Days of a full week on which it is held; fillers have none.</param>
/// <param name="Optional">Left out by a child who is well ahead of the year.</param>
/// <param name="PausesForUnit">Not held in the weeks of a unit.</param>
/// <param name="OnCoopDay">Held on the co-op day too.</param>
/// <param name="Families">The families that hold it; all where none are named.</param>
public sealed record CoopCourse(
    string Code,
    string Name,
    CourseHow How,
    TimeOnly At,
    int PerWeek,
    Place Place,
    IReadOnlyDictionary<string, int> Split,
    IReadOnlyList<string> Touches,
    IReadOnlyList<CourseBand> Bands,
    IReadOnlyList<string> Notes,
    bool Optional = false,
    bool PausesForUnit = false,
    bool OnCoopDay = false,
    IReadOnlyList<string>? Families = null)
{
    public CourseBand? BandFor(int age) => Bands.FirstOrDefault(b => age >= b.From && age <= b.To);

    public bool IsHeldBy(string family) => Families is null || Families.Contains(family);
}

/// <summary>How long a course is for some ages, both included, and the ways in which it is written down.</summary>
/// <param name="Texts">A word in braces is replaced by one of the co-op's words of that name.</param>
public sealed record CourseBand(int From, int To, int Minutes, IReadOnlyList<string> Texts);
