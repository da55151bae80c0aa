using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Web.Commands;

/// <summary>One figure of a catalog file as <c>check-catalog</c> prints it.</summary>
internal sealed record CatalogFigure(string Code, string Pathway, string What, string Value, FigureStatus Status, Source Source)
{
    /// <summary>Parted by tabs, so that a spreadsheet takes it.</summary>
    public string Line => string.Join('\t', new[] { Code, Pathway, What, Value, Words(Status), BasisWords, $"{Source.Checked:yyyy-MM-dd}", Source.Cite }.Select(CommandTable.OneLine));

    private string BasisWords => Source is { Confirm: true, Basis: not Basis.Memory } ? $"{Source.BasisWords}, please confirm" : Source.BasisWords;

    /// <summary>Every number that the pathways give: ages, the year's beginning, time, also inside alternatives, due dates and times of keeping. What the family judges has none.</summary>
    public static IEnumerable<CatalogFigure> Of(Jurisdiction jurisdiction) => jurisdiction.Pathways.SelectMany(p => Of(jurisdiction.Code, p));

    public static string Words(FigureStatus status) => status switch
    {
        FigureStatus.Required => "required",
        FigureStatus.Derived => "derived from a general phrase",
        FigureStatus.Disputed => "disputed",
        _ => "binds others",
    };

    /// <summary>The basis in the words that every page uses.</summary>
    public static string Example(Basis basis) => new Source("", basis, default).BasisWords;

    private static IEnumerable<CatalogFigure> Of(string code, Pathway of) =>
    [
        .. of.Ages is { From: null, To: null } ? Array.Empty<CatalogFigure>() : [new(code, of.Id, "ages of the duty", Ages(of.Ages), FigureStatus.Required, of.Ages.Source)],
        .. of.Year is { } year ? new[] { new CatalogFigure(code, of.Id, "the law's year", $"from {year.Begins.Words}", FigureStatus.Required, year.Source) } : [],
        .. of.Requirements.SelectMany(r => Of(code, of.Id, r, null, null, null, "")),
        .. of.Duties.Select(d => new CatalogFigure(code, of.Id, d.What, $"due {d.Words}{Bounds(d.Grades, d.FromAge, d.UnderAge)}{(d.When is { } when ? $"; condition: {when}" : "")}", d.Status, d.Source)),
        .. of.Records.Where(r => r.KeepAlways || r.KeepYears is not null)
            .Select(r => new CatalogFigure(code, of.Id, r.What, r.KeepYears is { } years ? $"kept for {years} years" : "kept for good", r.Status, r.Source)),
    ];

    private static string Ages(DutyAges ages) =>
        (ages.From is { } from ? $"from {from}" + (ages.By is { } by ? $" by {by.Words}" : "") : "") + (ages.To is { } to ? $"{(ages.From is null ? "" : " ")}to {to}" + (ages.Ends == DutyEnd.Year ? " and the end of that year" : "") : "");

    // A part of an alternative is asked of the grades and ages of the whole where it names none itself.
    private static IEnumerable<CatalogFigure> Of(string code, string pathway, Requirement of, Grades? grades, int? from, int? under, string part)
    {
        (grades, from, under) = (of.Grades ?? grades, of.FromAge ?? from, of.UnderAge ?? under);
        return of switch
        {
            AnyOf any => any.Of.SelectMany(p => Of(code, pathway, p, grades, from, under, ", one of several")),
            AllOf all => all.Of.SelectMany(p => Of(code, pathway, p, grades, from, under, ", together with others one of several")),
            JudgedRequirement => [],
            _ => [new CatalogFigure(code, pathway, of.Name, Number(of) + Bounds(grades, from, under) + (of.When is { } when ? $"; condition: {when}" : "") + part, of.Status, of.Source)],
        };
    }

    private static string Bounds(Grades? grades, int? from, int? under) =>
        (grades is null ? "" : $", grades {grades}") + (from is null ? "" : $", from {from}") + (under is null ? "" : $", under {under}");

    private static string Number(Requirement of) => of switch
    {
        DaysRequirement d => (d.Days is { } days ? $"{new Quantity(days, Measure.Days)}" : "days, set locally") + (d.MinutesADay is { } minutes ? $" of at least {new Quantity(minutes, Measure.Minutes)}" : "") + Each(d.Per),
        HoursRequirement h => (h.Hours is { } hours ? $"{Quantity.OfHours(hours)}" : "hours, set locally") + (h.Subjects is null ? "" : " of core") + (h.Place is null ? "" : " at home") + Each(h.Per),
        AverageRequirement a => $"{new Quantity(a.MinutesADay, Measure.Minutes)} a day on average over {new Quantity(a.OverDays, Measure.Days)}",
        MonthsRequirement m => $"{new Quantity(m.Months, Measure.Months)}",
        TermsRequirement { Hours: { } hours } t => $"{Quantity.OfHours(hours)} in each of {t.Terms} terms",
        TermsRequirement t => $"the hours of each of {t.Terms} terms",
        _ => throw new ArgumentException($"{of.GetType().Name} has no number.", nameof(of)),
    };

    private static string Each(Per per) => per == Per.Year ? "" : $" a {per.ToString().ToLowerInvariant()}";
}
