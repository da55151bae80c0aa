using System.Globalization;
using CoopLessons.Core.Calendar;

namespace CoopLessons.Core.Evidence;

/// <summary>One planned lesson or activity as far as it belongs to a subject.</summary>
/// <param name="Subjects">To which its minutes go.</param>
/// <param name="Done">Whether it was done.</param>
public sealed record PlannedThing(DateOnly Date, IReadOnlySet<Guid> Subjects, bool Done);

/// <summary>
/// How much of what was planned in one subject was covered in a term, counted in lessons and activities: one that belongs to
/// two subjects counts once in each.
/// </summary>
/// <param name="Planned">Placed on a day of the term, whether done, not done or let go.</param>
public sealed record MaterialCovered(int Planned, int Done)
{
    /// <param name="days">Of the term, both ends included.</param>
    public static MaterialCovered Of(IEnumerable<PlannedThing> plan, IReadOnlySet<Guid> subjects, DayRange days)
    {
        var mine = plan.Where(p => days.Contains(p.Date) && p.Subjects.Overlaps(subjects)).ToList();
        return new MaterialCovered(mine.Count, mine.Count(p => p.Done));
    }

    /// <summary>Per cent, rounded half up; null where nothing was planned.</summary>
    public int? PerCent => Planned == 0 ? null : (200 * Done + Planned) / (2 * Planned);

    /// <summary>Whether less than a share was covered, held exactly and not by the rounded figure; false where nothing was planned.</summary>
    /// <param name="perCent">1–100.</param>
    public bool IsUnder(int perCent) => Planned > 0 && 100L * Done < (long)perCent * Planned;

    /// <summary>The same in a sentence.</summary>
    public string Sentence => Planned == 0 ? "No plan of this term is kept here; say yourself how much was covered."
        : string.Create(CultureInfo.InvariantCulture, $"Of {Planned} planned {(Planned == 1 ? "lesson or activity" : "lessons and activities")} {Done} {(Done == 1 ? "was" : "were")} done: {PerCent} per cent.");
}

/// <summary>The beginnings of sentences for a report on a term. They say what the log says and leave the judging to the parent.</summary>
public static class TermWords
{
    /// <summary>How many things are named.</summary>
    public const int MostThings = 5;

    /// <summary>What the child worked on, from the log.</summary>
    /// <returns>Empty where nothing had minutes.</returns>
    public static string Progress(string learner, SubjectFacts facts)
    {
        if (facts.Things.Count == 0)
            return facts.Touched > 0 ? $"{learner} met this in passing on {Days(facts.Touched)}." : "";
        var things = facts.Things.Take(MostThings).Select(t => t.What);
        return $"{learner} worked on: {string.Join("; ", things)}{(facts.Things.Count > MostThings ? "; and more" : "")}.";
    }

    /// <summary>What an explanation is asked for; the reason is the parent’s to write.</summary>
    public static string NotDone(MaterialCovered covered) => (covered.Planned - covered.Done) switch
    {
        1 when covered.Planned == 1 => "The one planned lesson or activity was not done in this term.",
        var left => string.Create(CultureInfo.InvariantCulture, $"{left} of {covered.Planned} planned lessons and activities {(left == 1 ? "was" : "were")} not done in this term."),
    };

    private static string Days(int count) => count == 1 ? "one day" : string.Create(CultureInfo.InvariantCulture, $"{count} days");
}
