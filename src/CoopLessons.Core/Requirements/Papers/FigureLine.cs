using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Core.Requirements.Papers;

/// <summary>One figure, one alternative or one part of the year on paper.</summary>
/// <param name="Depth">0 for a figure of the pathway, one more for each group around it.</param>
/// <param name="Name">What is counted; an alternative says "Either" or "Or" before it.</param>
/// <param name="Status">Why it counts where the law does not simply ask for it; else empty.</param>
/// <param name="Remark">What a reader needs beside the figures, in sentences; may be empty.</param>
/// <param name="Logged">Null where nothing is measured.</param>
/// <param name="Full">The full figure; null where there is none.</param>
/// <param name="FullWords">What belongs to the full figure, such as the least length of a day, or why there is none; may be empty.</param>
/// <param name="CutDown">The figure cut down to the days asked, where only a part of the year is: arithmetic, not law.</param>
public sealed record FigureLine(
    int Depth,
    string Name,
    string Status,
    string Remark,
    Quantity? Logged,
    Quantity? Full,
    string FullWords,
    Quantity? CutDown,
    Verdict Standing,
    Source Source)
{
    /// <summary>The line of a figure, and below it those of its alternatives or parts.</summary>
    /// <param name="window">The pathway's days, from which those of a figure may differ.</param>
    internal static IEnumerable<FigureLine> Of(StandingQuestion asked, PathwaySpan span, LegalWindow window, RequirementStanding standing, int depth = 0, string joint = "")
    {
        var requirement = standing.Requirement;
        yield return new FigureLine(
            depth,
            joint + (standing.Part?.ToString() ?? requirement.Name),
            standing.Part is null ? StatusOf(requirement, span) : "",
            standing.Part is null ? string.Join(" ", Remarks(asked, window, standing)) : "",
            standing.Measured,
            standing.Target,
            WordsOf(standing, span),
            standing.ProRated,
            standing.Verdict,
            requirement.Source);
        for (var i = 0; i < standing.Parts.Count; i++)
        {
            foreach (var line in Of(asked, span, standing.Window, standing.Parts[i], depth + 1, Joint(requirement, i, standing.Parts.Count)))
                yield return line;
        }
    }

    private static string Joint(Requirement group, int index, int count) => (group, index) switch
    {
        (AnyOf, 0) when count > 1 => "Either: ",
        (AnyOf, > 0) => "Or: ",
        (AllOf, > 0) => "And: ",
        _ => "",
    };

    private static string StatusOf(Requirement requirement, PathwaySpan span)
    {
        var chosen = span.Choices.Goals.Contains(requirement.Id);
        var words = new List<string>();
        if (chosen && requirement.Status != FigureStatus.Required)
            words.Add("your goal");
        if (requirement.Status != FigureStatus.Required)
        {
            words.Add(requirement.Status switch
            {
                FigureStatus.Derived => "derived from a general phrase",
                FigureStatus.Disputed => "disputed, some say it is asked and others deny it",
                _ => "for comparison, it binds others",
            });
        }

        if (chosen && requirement.When is { } when)
            words.Add($"on your word that this holds: {when}");
        return string.Join("; ", words);
    }

    private static IEnumerable<string> Remarks(StandingQuestion asked, LegalWindow window, RequirementStanding standing)
    {
        var requirement = standing.Requirement;
        var gradeMissing = requirement.Grades is not null && asked.Learner.Grade is null;
        if (standing.Verdict == Verdict.NotAsked || gradeMissing || requirement is JudgedRequirement)
        {
            yield return standing.Why;
            yield break;
        }

        if (standing.Window.Asked is { } days && standing.Window.Asked != window.Asked)
            yield return $"Asked of {days}: {StandingWords.Together([.. standing.Window.Why.Except(window.Why)])}.";
        if (requirement is AnyOf && standing.Parts.Count > 1)
            yield return "One of these is enough.";
        if (requirement is AllOf && standing.Parts.Count > 1)
            yield return "All of these together.";
        if (requirement is HoursRequirement { Subjects: not null } && standing is { Measured: null, Parts.Count: 0 })
            yield return "None of the family's subjects is read as one of those that count here.";
    }

    private static string WordsOf(RequirementStanding standing, PathwaySpan span)
    {
        var requirement = standing.Requirement;
        if (standing.Target is null)
            return standing.Measured is not null && requirement is (DaysRequirement or HoursRequirement) ? "set locally, not entered" : "";
        var words = requirement switch
        {
            DaysRequirement { MinutesADay: { } minutes } => $"of at least {new Quantity(minutes, Measure.Minutes)}",
            AverageRequirement average => $"an average of {new Quantity(average.MinutesADay, Measure.Minutes)} over {new Quantity(average.OverDays, Measure.Days)}",
            _ => "",
        };
        if (!span.Choices.Figures.ContainsKey(requirement.Id))
            return words;
        return words.Length == 0 ? "as the family entered it" : words + ", as the family entered it";
    }
}
