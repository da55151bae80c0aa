using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements.Papers;
using CoopLessons.Core.Sealing;
using SpreadCheetah;
using SpreadCheetah.Metadata;
using SpreadCheetah.Styling;
using SpreadCheetah.Worksheets;

namespace CoopLessons.Documents.Reports;

/// <summary>
/// One learner's hours as a workbook. The sheet "Hours" holds whole minutes; its sums and its h:mm texts are formulas, so
/// that whoever opens it can see the sum made again. Text cells are typed as text and are never formulas. The same report
/// and law give the same bytes.
/// </summary>
public static class HoursXlsx
{
    public static Task<byte[]> WriteAsync(HoursReport report, CancellationToken cancellation) => WriteAsync(report, null, null, cancellation);

    /// <param name="law">On a second sheet; null where no pathway was chosen.</param>
    public static Task<byte[]> WriteAsync(HoursReport report, LawSection? law, CancellationToken cancellation) => WriteAsync(report, law, null, cancellation);

    /// <param name="law">On a second sheet; null where no pathway was chosen.</param>
    /// <param name="seal">What the file says of the year's sealing; null in an open year.</param>
    public static async Task<byte[]> WriteAsync(HoursReport report, LawSection? law, SealMark? seal, CancellationToken cancellation)
    {
        using var bytes = new MemoryStream();
        var options = new SpreadCheetahOptions
        {
            PreserveStringWhitespace = true,
            DocumentProperties = new DocumentProperties
            {
                Title = PlainText.OneLine($"{ReportWords.Title}: {report.Heading.Learner}, {report.Heading.Year}"),
                Author = PlainText.OneLine(report.Heading.Family),
            },
        };
        await using (var book = await Spreadsheet.CreateNewAsync(bytes, options, cancellation))
        {
            var bold = book.AddStyle(new Style { Font = new Font { Bold = true } });
            var wrap = book.AddStyle(new Style { Alignment = new Alignment { WrapText = true, Vertical = VerticalAlignment.Top } });
            await WriteHours(book, report, bold, cancellation);
            if (law is not null)
                await new LawXlsx(book, bold, wrap, cancellation).WriteAsync(law);
            await WriteDaysAndPlaces(book, report, bold, cancellation);
            await WriteAbout(book, report, seal, bold, wrap, cancellation);
            await book.FinishAsync(cancellation);
        }

        bytes.Position = 0;
        return FinishedWorkbook.Of(bytes, report.Heading.MadeOn);
    }

    private static async Task WriteHours(Spreadsheet book, HoursReport report, StyleId bold, CancellationToken cancellation)
    {
        var months = report.Months.Count;
        var options = new WorksheetOptions { FrozenRows = 1, FrozenColumns = 1 };
        options.Column(1).Width = 32;
        options.Column(months + 2).Width = 14;
        options.Column(months + 3).Width = 12;
        await book.StartWorksheetAsync("Hours", options, cancellation);
        await book.AddHeaderRowAsync(
            ["Subject (minutes)", .. report.Months.Select(m => m.Month.Label), "Total minutes", "Total h:mm"], bold, cancellation);

        var row = 2;
        foreach (var subject in report.Subjects)
        {
            List<Cell> cells = [new(SpreadsheetText.Clean(subject.Subject)), .. subject.ByMonth.Select(m => new Cell(m.Value))];
            cells.Add(new Cell(WorkbookCell.Sum(2, row, months + 1, row), subject.Total.Value));
            cells.Add(new Cell(WorkbookCell.Clock(months + 2, row), subject.Total.Clock));
            await book.AddRowAsync(cells, cancellation);
            row++;
        }

        List<Cell> sums = [new("All subjects", bold)];
        for (var column = 2; column <= months + 2; column++)
        {
            var minutes = column == months + 2 ? report.Total.Value : report.Months[column - 2].Total.Value;
            sums.Add(report.Subjects.Count == 0 ? new Cell(minutes, bold) : new Cell(WorkbookCell.Sum(column, 2, column, row - 1), minutes, bold));
        }

        sums.Add(new Cell(WorkbookCell.Clock(months + 2, row), report.Total.Clock, bold));
        await book.AddRowAsync(sums, cancellation);
    }

    private static async Task WriteDaysAndPlaces(Spreadsheet book, HoursReport report, StyleId bold, CancellationToken cancellation)
    {
        var options = new WorksheetOptions { FrozenRows = 1 };
        options.Column(1).Width = 32;
        options.Column(2).Width = 20;
        options.Column(3).Width = 36;
        await book.StartWorksheetAsync("Days and places", options, cancellation);
        await book.AddHeaderRowAsync(["Subject", ReportWords.StrictDays, ReportWords.BroadDays], bold, cancellation);
        foreach (var subject in report.Subjects)
            await book.AddRowAsync([new Cell(SpreadsheetText.Clean(subject.Subject)), new Cell(subject.StrictDays), new Cell(subject.BroadDays)], cancellation);

        await book.AddRowAsync(Array.Empty<Cell>(), cancellation);
        await book.AddHeaderRowAsync(["Month", "School days"], bold, cancellation);
        var first = book.NextRowNumber;
        foreach (var month in report.Months)
            await book.AddRowAsync([new Cell(month.Month.Label), new Cell(month.SchoolDays)], cancellation);
        await book.AddRowAsync([new Cell("All months", bold), new Cell(WorkbookCell.Sum(2, first, 2, book.NextRowNumber - 1), report.SchoolDays, bold)], cancellation);
        await book.AddRowAsync([new Cell("Read broadly"), new Cell(report.SchoolDaysBroad)], cancellation);

        await book.AddRowAsync(Array.Empty<Cell>(), cancellation);
        await book.AddHeaderRowAsync(["Place", "Minutes", "h:mm"], bold, cancellation);
        first = book.NextRowNumber;
        foreach (var place in report.Places)
        {
            var row = book.NextRowNumber;
            await book.AddRowAsync([new Cell(ReportWords.Place(place.Place)), new Cell(place.Total.Value), new Cell(WorkbookCell.Clock(2, row), place.Total.Clock)], cancellation);
        }

        var last = book.NextRowNumber;
        Cell total = report.Places.Count == 0 ? new(report.Total.Value, bold) : new(WorkbookCell.Sum(2, first, 2, last - 1), report.Total.Value, bold);
        await book.AddRowAsync([new Cell("All places", bold), total, new Cell(WorkbookCell.Clock(2, last), report.Total.Clock, bold)], cancellation);
    }

    private static async Task WriteAbout(Spreadsheet book, HoursReport report, SealMark? seal, StyleId bold, StyleId wrap, CancellationToken cancellation)
    {
        var options = new WorksheetOptions { FrozenRows = 1 };
        options.Column(1).Width = 22;
        options.Column(2).Width = 90;
        await book.StartWorksheetAsync("About", options, cancellation);
        await book.AddHeaderRowAsync(["About", "This report"], bold, cancellation);
        foreach (var fact in ReportAbout.Of(report, seal))
        {
            var text = fact.Minutes is { } minutes ? $"{minutes.Clock} ({ReportWords.Number(minutes.Value)} minutes)" : fact.Text;
            await AddFact(char.ToUpperInvariant(fact.Item[0]) + fact.Item[1..], text);
        }

        await AddFact("School days", ReportWords.StrictMeaning);
        await AddFact("Read broadly", ReportWords.BroadMeaning);
        foreach (var question in report.Questions)
            await AddFact("Question still open", question);

        async Task AddFact(string item, string text)
        {
            // Longer than a cell can be: goes on in the rows below, so that nothing is lost.
            foreach (var part in WorkbookCell.Parts(SpreadsheetText.Clean(text)))
                await book.AddRowAsync([new Cell(item, wrap), new Cell(part, wrap)], cancellation);
        }
    }
}
