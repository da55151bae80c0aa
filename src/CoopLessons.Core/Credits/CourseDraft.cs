using System.Globalization;
using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Credits;

/// <summary>What the log holds of a course, to be told in words.</summary>
/// <param name="Subjects">Subjects by minutes, the most first.</param>
/// <param name="Units">Titles of units from which work came, the first met first.</param>
/// <param name="Books">Titles read, each once.</param>
/// <param name="Deeds">What was done, in the log's words, the longest time first.</param>
/// <param name="Elsewhere">Study outside the log.</param>
public sealed record CourseInLog(
    string Title,
    CourseTotal Total,
    IReadOnlyList<(string Name, Minutes Minutes)> Subjects,
    IReadOnlyList<string> Units,
    IReadOnlyList<string> Books,
    IReadOnlyList<string> Deeds,
    IReadOnlyList<StudyElsewhere> Elsewhere);

/// <summary>A course description as the log gives it: facts in plain sentences, for the parent to change. The same log gives the same draft.</summary>
public static class CourseDraft
{
    /// <summary>More than so many names of a kind are not drafted: the parent knows which matter.</summary>
    public const int MostNamed = 12;

    /// <returns>One sentence a line; empty where there is nothing to tell.</returns>
    public static IReadOnlyList<string> Of(CourseInLog facts)
    {
        var lines = new List<string>();
        var total = facts.Total;
        if (total.FromLog > Minutes.Zero)
        {
            var days = total.Credits.Where(c => c.Credit.Minutes > Minutes.Zero).Select(c => c.Credit.Date).Distinct().Order().ToList();
            lines.Add(string.Create(CultureInfo.InvariantCulture,
                $"{facts.Title} took {total.FromLog.Clock} hours on {Count(days.Count, "day", "days")} from {days[0]:d MMMM yyyy} to {days[^1]:d MMMM yyyy}{Divided(facts.Subjects)}."));
        }

        if (facts.Units.Count > 0)
            lines.Add($"Unit studies: {Listed(facts.Units)}.");
        if (facts.Books.Count > 0)
            lines.Add($"Read: {Listed(facts.Books)}.");
        if (facts.Deeds.Count > 0)
            lines.Add($"Work: {Listed([.. facts.Deeds.Select(Small)])}.");
        lines.AddRange(facts.Elsewhere.Select(s => string.Create(CultureInfo.InvariantCulture,
            $"{s.What}{(s.With.Length > 0 ? $" with {s.With}" : "")}, {s.Minutes.Clock} hours, {s.Days.First:d MMMM yyyy} to {s.Days.Last:d MMMM yyyy}.")));
        return lines;
    }

    private static string Divided(IReadOnlyList<(string Name, Minutes Minutes)> subjects) =>
        subjects.Count < 2 ? "" : $": {string.Join(", ", subjects.Select(s => $"{s.Name} {s.Minutes.Clock}"))}";

    private static string Listed(IReadOnlyList<string> names) =>
        string.Join("; ", names.Take(MostNamed)) + (names.Count > MostNamed ? string.Create(CultureInfo.InvariantCulture, $"; and {names.Count - MostNamed} more") : "");

    private static string Count(int count, string one, string many) => string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many)}");

    // A sentence's end inside a list would end the list's.
    private static string Small(string what) => what.Trim().TrimEnd('.');
}
