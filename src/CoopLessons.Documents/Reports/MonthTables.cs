using CoopLessons.Core.Hours;
using CoopLessons.Documents.Pdf;

namespace CoopLessons.Documents.Reports;

/// <summary>
/// The table of subjects by months. A period with more months than one sheet is wide is laid out as several tables one
/// after another, each with every subject; the sums over the whole period stand in the last.
/// </summary>
internal static class MonthTables
{
    private const double LeastSubject = 120;
    private const double MostSubject = 230;
    private const double MostMonth = 54;
    private const int MostMonths = 13;

    public static bool FitsPortrait(HoursReport report, double size) => Columns.Of(report, Paper.LetterPortrait, size).PerTable >= report.Months.Count;

    public static IEnumerable<Slice> Of(HoursReport report, Paper paper, double size)
    {
        var columns = Columns.Of(report, paper, size);
        var each = report.Months.Count <= columns.PerTable ? report.Months.Count : Math.Min(columns.PerTable, 12);
        for (var first = 0; first < report.Months.Count; first += each)
        {
            var count = Math.Min(each, report.Months.Count - first);
            var last = first + count == report.Months.Count;
            var span = each == report.Months.Count ? "" : $", {report.Months[first].Month.Label} to {report.Months[first + count - 1].Month.Label}";
            yield return Prose.Heading("Hours and minutes by subject and month" + span);
            foreach (var slice in Table(report, paper, size, columns, first, count, last).Slices(before: 4, paper.WorthKeepingWhole))
                yield return slice;
        }
    }

    private static PaperTable Table(HoursReport report, Paper paper, double size, Columns columns, int first, int count, bool withTotal)
    {
        var total = withTotal ? columns.Total : 0;
        var subject = Math.Clamp(columns.WidestSubject, LeastSubject, Math.Min(MostSubject, paper.TextWidth - total - count * columns.Month));
        var month = Math.Clamp((paper.TextWidth - subject - total) / count, columns.Month, Math.Max(MostMonth, columns.Month));
        var months = report.Months.Skip(first).Take(count).ToList();

        List<PaperColumn> headings = [new("Subject", subject, Names: true)];
        headings.AddRange(months.Select(m => new PaperColumn(m.Month.Label.Replace(' ', '\n'), month, Figures: true)));
        var rows = report.Subjects.Select(s => Row(ReportWords.Given(s.Subject), s.ByMonth.Skip(first).Take(count).Select(m => m.Clock), s.Total.Clock, withTotal, false)).ToList();
        rows.Add(Row("All subjects", months.Select(m => m.Total.Clock), report.Total.Clock, withTotal, true));
        rows.Add(Row("School days", months.Select(m => ReportWords.Number(m.SchoolDays)), ReportWords.Number(report.SchoolDays), withTotal, true));
        if (withTotal)
            headings.Add(new("Total", total, Figures: true));
        return new PaperTable(headings, rows, paper.Margin, size);
    }

    private static PaperRow Row(string name, IEnumerable<string> months, string total, bool withTotal, bool strong) =>
        new(withTotal ? [name, .. months, total] : [name, .. months], strong);

    /// <summary>Widths in points that hold every figure of the report on one line, with the white before it.</summary>
    private sealed record Columns(double WidestSubject, double Month, double Total, int PerTable)
    {
        public static Columns Of(HoursReport report, Paper paper, double size)
        {
            var regular = NotoSans.Regular(size);
            var bold = NotoSans.Bold(size);
            var month = PaperTable.Gap + 1 + report.Months
                .SelectMany(m => new[] { m.Month.Label.Split(' ')[0], m.Month.Label.Split(' ')[^1], m.Total.Clock, ReportWords.Number(m.SchoolDays) })
                .Max(text => NotoSans.Width(text, bold));
            var total = PaperTable.Gap + 4 + new[] { "Total", report.Total.Clock, ReportWords.Number(report.SchoolDays) }.Max(text => NotoSans.Width(text, bold));
            var subject = report.Subjects.Select(s => s.Subject).Append("All subjects")
                .Max(name => NotoSans.Width(PrintableText.Of(PlainText.OneLine(name), regular), regular));
            var fitting = (int)((paper.TextWidth - LeastSubject - Math.Max(total, month)) / month);
            return new Columns(subject + PaperTable.Gap + 1, month, Math.Max(total, month), Math.Clamp(fitting, 1, MostMonths));
        }
    }
}
