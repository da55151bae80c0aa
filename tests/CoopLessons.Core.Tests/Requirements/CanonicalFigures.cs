using System.Globalization;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements;

namespace CoopLessons.Core.Tests.Requirements;

/// <summary>A pathway's figures in the lines in which <see cref="PublishedFigure"/> states them.</summary>
internal static class CanonicalFigures
{
    public static string[] Of(Pathway pathway) =>
        [.. pathway.Requirements.SelectMany(r => Lines(r, "", new Inherited(null, null, null))).Order(StringComparer.Ordinal)];

    public static string Ages(DutyAges ages) => ages is { From: null, To: null } ? "" : $"{ages.From}-{ages.To}";

    // A part of an alternative is asked of the grades and ages of the whole where it names none itself.
    private sealed record Inherited(Grades? Grades, int? From, int? Under);

    private static IEnumerable<string> Lines(Requirement of, string before, Inherited outer)
    {
        var own = new Inherited(of.Grades ?? outer.Grades, of.FromAge ?? outer.From, of.UnderAge ?? outer.Under);
        return of switch
        {
            AnyOf any => any.Of.SelectMany(p => Lines(p, "any: ", own)),
            AllOf all => all.Of.SelectMany(p => Lines(p, "any-all: ", own)),
            JudgedRequirement => [],
            _ => [before + Figure(of) + Bounds(own) + (of.When is null ? "" : " when") + " " + of.Status.ToString().ToLowerInvariant()],
        };
    }

    private static string Figure(Requirement of) => of switch
    {
        DaysRequirement d => $"days {Number(d.Days)}{(d.MinutesADay is { } minutes ? $" at {minutes}" : "")}{Each(d.Per)}",
        HoursRequirement h => $"hours {Number(h.Hours)}{(h.Subjects is null ? "" : " core")}{(h.Place == Place.Home ? " home" : "")}{Each(h.Per)}",
        AverageRequirement a => $"average {a.MinutesADay} over {a.OverDays}",
        MonthsRequirement m => $"months {m.Months}",
        TermsRequirement t => $"terms {t.Terms}{(t.Hours is { } hours ? $" hours {Number(hours)}" : "")}",
        _ => throw new ArgumentException($"{of.GetType().Name} has no canonical line.", nameof(of)),
    };

    private static string Bounds(Inherited own) =>
        (own.Grades is { } grades ? $" grades {grades}" : "") + (own.From is { } from ? $" from {from}" : "") + (own.Under is { } under ? $" under {under}" : "");

    private static string Each(Per per) => per == Per.Year ? "" : " per " + per.ToString().ToLowerInvariant();

    private static string Number(decimal? figure) => figure?.ToString("0.##", CultureInfo.InvariantCulture) ?? "local";
}
