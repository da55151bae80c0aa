using CoopLessons.Core.Hours;
using CoopLessons.Documents.Pdf;

namespace CoopLessons.Documents.Reports;

/// <summary>The opening of the report on paper: who, when, how much and by which rule. In two columns where the sheet is wide.</summary>
internal static class ReportFacts
{
    private const double Label = 92;
    private const double WideValue = 200;

    public static IEnumerable<Slice> Of(HoursReport report, Paper paper, double size)
    {
        var heading = report.Heading;
        List<(string Name, string Value)> who =
        [
            ("Learner", ReportWords.Given(heading.Learner)),
            ("Family", ReportWords.Given(heading.Family)),
            ("School year", ReportWords.Given(heading.Year)),
            ("Period", report.Period.ToString()),
        ];
        List<(string Name, string Value)> much =
        [
            ("Total", $"{report.Total.Clock} in hours and minutes, {ReportWords.Decimal(report.Total)} in decimal hours"),
            ("School days", $"{ReportWords.Days(report.SchoolDays)}\n{ReportWords.StrictMeaning}"),
        ];
        if (report.SchoolDaysBroad != report.SchoolDays)
            much.Add(("Read broadly", $"{ReportWords.Days(report.SchoolDaysBroad)}\n{ReportWords.BroadMeaning}"));
        much.Add(("Minimum day", $"{report.MinimumDay.Clock} ({ReportWords.Number(report.MinimumDay.Value)} minutes)"));
        var policy = ("What we count", ReportWords.Given(heading.CountingPolicy));

        return paper.Wide ? Wide(who, much, policy, paper, size) : Narrow([.. who, .. much, policy], paper, size);
    }

    private static IReadOnlyList<Slice> Narrow(List<(string Name, string Value)> facts, Paper paper, double size)
    {
        var rows = facts.Select(f => new PaperRow([f.Name, f.Value])).ToList();
        return new PaperTable([new("", Label, Names: true), new("", paper.TextWidth - Label)], rows, paper.Margin, size).Slices(before: 8, whole: 0);
    }

    private static IEnumerable<Slice> Wide(
        List<(string Name, string Value)> left, List<(string Name, string Value)> right, (string Name, string Value) policy, Paper paper, double size)
    {
        var rows = new List<PaperRow>();
        for (var i = 0; i < Math.Max(left.Count, right.Count); i++)
        {
            var (a, b) = (left.ElementAtOrDefault(i), right.ElementAtOrDefault(i));
            rows.Add(new PaperRow([a.Name ?? "", a.Value ?? "", b.Name ?? "", b.Value ?? ""]));
        }

        List<PaperColumn> columns =
        [
            new("", Label, Names: true), new("", WideValue), new("", Label, Names: true), new("", paper.TextWidth - 2 * Label - WideValue),
        ];
        return new PaperTable(columns, rows, paper.Margin, size).Slices(before: 8, whole: 0)
            .Concat(Narrow([policy], paper, size).Select(s => s with { Before = 0 }));
    }
}
