using CoopLessons.Core.Calendar;

namespace CoopLessons.Core.Requirements.Standing;

/// <summary>"What if": the same log read under another rule or another calendar. Nothing is kept of it.</summary>
/// <param name="Away">Days on which the family would not teach.</param>
/// <param name="Other">The pathway under which the learner would stand.</param>
/// <param name="Since">The day from which; null for the whole time under the pathways at hand.</param>
public sealed record Supposition(DayRange? Away, OtherPathway? Other, DateOnly? Since)
{
    public TeachingCalendar Calendar(TeachingCalendar school) =>
        Away is { } days ? school with { Breaks = [.. school.Breaks, new Break("away", days)] } : school;

    /// <summary>The spans as they would be. The first day of home instruction stays what it is.</summary>
    public IReadOnlyList<PathwaySpan> Spans(IReadOnlyList<PathwaySpan> spans, DayRange school)
    {
        if (Other is not { } other)
            return spans;
        var since = Since ?? (spans.Count > 0 ? spans[0].From : school.First);
        var first = Since is null && spans.Count > 0 ? spans[0].Because : other.Because;
        var kept = spans.Where(s => s.From < since).Select(s => s.Until is null || s.Until >= since ? s with { Until = since.AddDays(-1) } : s);
        return [.. kept, new PathwaySpan(other.Code, other.Place, other.Pathway, since, null, first, null, other.Choices)];
    }

    /// <summary>Where the learner would stand under each pathway that meets the year.</summary>
    /// <param name="asked">Its ledger reaches over <see cref="LegalWindow.Reach"/> of the supposed spans.</param>
    public IReadOnlyList<PathwayStanding> Of(StandingQuestion asked, IReadOnlyList<PathwaySpan> spans)
    {
        var supposed = asked with { School = Calendar(asked.School) };
        return [.. Spans(spans, asked.School.Year).Where(s => s.In(asked.School.Year) is not null).Select(s => PathwayStanding.Of(supposed, s))];
    }
}

/// <summary>A pathway that a family thinks about.</summary>
public sealed record OtherPathway(string Code, string Place, Pathway Pathway, SpanReason Because, PathwayChoices Choices);
