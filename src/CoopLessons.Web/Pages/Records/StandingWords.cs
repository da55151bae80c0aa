using CoopLessons.Core.Calendar;
using CoopLessons.Core.Families;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Web.Pages.Records;

/// <summary>How these pages say where a figure stands.</summary>
public static class StandingWords
{
    /// <summary>The icon beside a verdict's word; the word carries the meaning.</summary>
    public static string Icon(Verdict verdict) => verdict switch
    {
        Verdict.Met => "check",
        Verdict.OnPace => "arrow-right",
        Verdict.Behind or Verdict.NotMet => "triangle-alert",
        Verdict.NotAsked => "minus",
        _ => "circle-help",
    };

    public static string Name(RequirementStanding line) => Capital(line.Requirement.Name);

    public static string Name(SubjectCoverage subject) => Capital(subject.Subject.Name);

    /// <summary>Such as "380 of 400 hours"; empty where nothing is measured.</summary>
    public static string Figures(RequirementStanding line) => (line.Measured, line.Target) switch
    {
        ({ } measured, { } target) => $"{measured.Figure} of {target}",
        ({ } measured, null) => measured.ToString(),
        _ => "",
    };

    public static string Place(PathwaySpan span) => span.Code.Length == 0 ? $"your own pathway, {span.Pathway.Name}" : $"{span.Place} · {span.Pathway.Name}";

    public static string Days(DayRange days) => $"{days.First.Plain()} to {days.Last.Plain()}";

    /// <summary>Such as "Health: nothing since 12 October".</summary>
    public static string Quiet(SubjectCoverage subject, DateOnly today) => subject.LastMet is { } last
        ? $"{Name(subject)}: nothing since {(last.Year == today.Year ? last.ToString("d MMMM", System.Globalization.CultureInfo.InvariantCulture) : last.Plain())}"
        : $"{Name(subject)}: nothing yet";

    /// <summary>The family's subjects behind one of the law's, in the family's order.</summary>
    public static string Family(SubjectCoverage subject, IReadOnlyList<Subject> all) =>
        subject.Family.Count == 0 ? "none of your subjects" : string.Join(", ", all.Where(s => subject.Family.Contains(s.Id)).Select(s => s.Name));

    /// <summary>The same at the beginning of a line.</summary>
    public static string Capital(string name) => char.ToUpperInvariant(name[0]) + name[1..];
}
