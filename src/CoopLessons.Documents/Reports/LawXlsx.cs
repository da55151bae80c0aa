using System.Globalization;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Papers;
using CoopLessons.Core.Requirements.Standing;
using SpreadCheetah;
using SpreadCheetah.Styling;
using SpreadCheetah.Worksheets;

namespace CoopLessons.Documents.Reports;

/// <summary>
/// The sheet "Law": the figures, below them the days over which they are counted, then how subjects are read, and what
/// the sheet is not. Minutes, days and months are whole numbers in the unit of their row; h:mm are formulas beside minutes.
/// </summary>
internal sealed class LawXlsx(Spreadsheet book, StyleId bold, StyleId wrap, CancellationToken cancellation)
{
    private static readonly int[] Widths = [32, 44, 26, 14, 14, 26, 12, 12, 12, 14, 28, 28, 40, 34, 20, 14, 14];
    private static readonly string[] SourceHeadings = ["Source", "Basis", "Checked", "To confirm"];

    public async Task WriteAsync(LawSection law)
    {
        var options = new WorksheetOptions { FrozenRows = 1 };
        for (var column = 0; column < Widths.Length; column++)
            options.Column(column + 1).Width = Widths[column];
        await book.StartWorksheetAsync("Law", options, cancellation);
        await WriteFigures(law);
        await AddBlank();
        await WriteDays(law);
        await AddBlank();
        await WriteSubjects(law);
        await AddBlank();
        await AddHeadings(["About", "This sheet"]);
        await Add([LawWords.Title, LawWords.Opening(law)]);
        foreach (var words in law.Unread)
            await Add(["No longer known", words]);
        await Add([LawWords.CautionTitle, LawWords.Caution]);
    }

    private async Task WriteFigures(LawSection law)
    {
        await AddHeadings(
        [
            "Pathway", "What is counted", "Standing", "Unit", "Logged", "Logged h:mm", "Figure", "Figure h:mm", "Cut down", "Cut down h:mm",
            "Figure in words", "Status", "Remark", .. SourceHeadings,
        ]);
        foreach (var pathway in law.Pathways)
        {
            foreach (var f in pathway.Figures)
            {
                IEnumerable<string> words = [f.FullWords, f.CutDown is null ? "" : LawWords.CutDown];
                await Add(
                [
                    pathway.Title, ReportWords.Given(f.Name), f.Standing.Words(), Unit(f), f.Logged, Clock(f.Logged, 5), f.Full, Clock(f.Full, 7), f.CutDown, Clock(f.CutDown, 9),
                    string.Join("; ", words.Where(w => w.Length > 0)), f.Status, f.Remark, .. SourceFields(f.Source),
                ]);
            }

            if (pathway.Figures.Count == 0)
                await Add([pathway.Title, LawWords.NoFigures]);
        }
    }

    private async Task WriteDays(LawSection law)
    {
        await AddHeadings(["Pathway", "Counted over", "Source of", "First day", "Last day", .. SourceHeadings]);
        foreach (var pathway in law.Pathways)
        {
            foreach (var (of, source) in pathway.Sources)
                await Add([pathway.Title, pathway.Days, of, Iso(pathway.Counted?.First), Iso(pathway.Counted?.Last), .. SourceFields(source)]);
        }
    }

    private async Task WriteSubjects(LawSection law)
    {
        await AddHeadings(["Pathway", LawWords.Subjects, "Our subjects", .. SourceHeadings]);
        foreach (var pathway in law.Pathways)
        {
            foreach (var subject in pathway.Subjects)
                await Add([pathway.Title, LawWords.Subject(subject), LawWords.Family(subject), .. SourceFields(subject.Source)]);
            if (pathway.Subjects.Count == 0)
                await Add([pathway.Title, LawWords.NoSubjects]);
        }
    }

    private async Task AddBlank() => await book.AddRowAsync(Array.Empty<Cell>(), cancellation);

    private async Task AddHeadings(string[] headings) => await book.AddHeaderRowAsync(headings, bold, cancellation);

    /// <summary>One row; text longer than a cell can be goes on in the rows below, so that nothing is lost.</summary>
    private async Task Add(IReadOnlyList<Field> fields)
    {
        var parts = fields.Select(f => WorkbookCell.Parts(SpreadsheetText.Clean(f.Text)).ToList()).ToList();
        for (var part = 0; part < parts.Max(p => p.Count); part++)
        {
            var (row, k) = (book.NextRowNumber, part);
            var cells = fields.Select((f, i) => k == 0 && f.Made is { } make ? make(row, wrap) : new Cell(parts[i].ElementAtOrDefault(k) ?? "", wrap)).ToList();
            await book.AddRowAsync(cells, cancellation);
        }
    }

    private static Field[] SourceFields(Source source) =>
        [ReportWords.Given(source.Cite), source.BasisWords, Iso(source.Checked), source.NeedsConfirming ? LawWords.Confirm : ""];

    private static string Unit(FigureLine figure) => (figure.Logged ?? figure.Full)?.Measure switch
    {
        Measure.Minutes => "minutes",
        Measure.Days => "days",
        Measure.Months => "months",
        _ => "",
    };

    /// <summary>h:mm of the minutes in another column of the same row; empty beside days and months.</summary>
    private static Field Clock(Quantity? quantity, int column) => quantity is { Measure: Measure.Minutes } minutes
        ? new Field("", (row, style) => new Cell(WorkbookCell.Clock(column, row), new Minutes(minutes.Value).Clock, style))
        : "";

    private static string Iso(DateOnly? date) => date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "";

    /// <summary>Text, or a cell that is made when its row is known.</summary>
    private sealed record Field(string Text, Func<int, StyleId, Cell>? Made = null)
    {
        public static implicit operator Field(string text) => new(text);

        public static implicit operator Field(Quantity? quantity) => quantity is { } q ? new Field("", (_, style) => new Cell(q.Value, style)) : new Field("");
    }
}
