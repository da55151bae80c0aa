using CoopLessons.Core.Calendar;
using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Core.Requirements.Papers;

/// <summary>What a statement about a pathway rests on.</summary>
/// <param name="Of">What is stated, in a word or two.</param>
public sealed record NamedSource(string Of, Source Source);

/// <summary>One pathway of a learner's school year on paper.</summary>
/// <param name="Place">Missouri; for a pathway of the family's own, "Your own".</param>
/// <param name="Counted">The days whose log counts; null for none.</param>
/// <param name="Days">The same in sentences, with the reason where they are only a part of the year.</param>
/// <param name="Sources">Of the pathway, of its year where it fixes one, and of its ages where they cut the days.</param>
/// <param name="Figures">What binds and what the family took as a goal, each followed by its alternatives or parts; empty where no figure counts.</param>
public sealed record PathwaySheet(
    string Place,
    string Name,
    DayRange? Counted,
    string Days,
    IReadOnlyList<NamedSource> Sources,
    IReadOnlyList<FigureLine> Figures,
    IReadOnlyList<SubjectLine> Subjects)
{
    /// <summary>Such as <c>Missouri: Home school</c>.</summary>
    public string Title => $"{Place}: {Name}";

    internal static PathwaySheet Of(StandingQuestion asked, PathwayStanding standing)
    {
        var (span, window) = (standing.Span, standing.Window);
        return new PathwaySheet(
            span.Code.Length == 0 ? "Your own" : span.Place,
            span.Pathway.Name,
            window.Counted,
            DaysOf(span, window),
            [.. SourcesOf(asked, span, window)],
            [.. standing.Lines.SelectMany(l => FigureLine.Of(asked, span, window, l))],
            SubjectLine.Of(asked, span));
    }

    private static string DaysOf(PathwaySpan span, LegalWindow window)
    {
        var because = window.Why.Count > 0 ? $": {StandingWords.Together(window.Why)}." : ".";
        var sentences = new List<string>
        {
            window.Counted is not { } counted ? $"No day of {window.Year}{because}"
                : counted == window.Year ? $"{counted}, the whole year."
                : $"{counted}, a part of {window.Year}{because}",
        };
        if (window.Asked is { } days && window.Counted != days)
            sentences.Add($"Asked of {days}. {span.Pathway.CountsFrom}".TrimEnd());
        if (span.Pathway.Year is null)
            sentences.Add("The year is the family's own school year.");
        return string.Join(" ", sentences);
    }

    private static IEnumerable<NamedSource> SourcesOf(StandingQuestion asked, PathwaySpan span, LegalWindow window)
    {
        yield return new NamedSource("Pathway", span.Pathway.Source);
        if (span.Pathway.Year is { } year)
            yield return new NamedSource("Its year", year.Source);
        var ageless = span with { Pathway = span.Pathway with { Ages = new DutyAges(span.Pathway.Ages.Source) } };
        if (LegalWindow.Of(asked.Learner, ageless, asked.School, asked.AsOf).Asked != window.Asked)
            yield return new NamedSource("Its ages", span.Pathway.Ages.Source);
    }
}
