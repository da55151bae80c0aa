using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;

namespace CoopLessons.Documents.Pdf;

/// <summary>A column of a table on paper.</summary>
/// <param name="Heading">Empty in a table without column headings.</param>
/// <param name="Width">Points, with the white between columns.</param>
/// <param name="Figures">Figures stand to the right, words to the left.</param>
/// <param name="Names">Its cells name the cells to their right; without column headings they are set in bold.</param>
internal sealed record PaperColumn(string Heading, double Width, bool Figures = false, bool Names = false);

/// <summary>A row of a table on paper, a cell a column.</summary>
/// <param name="Strong">A row of sums, set in bold under a stronger rule.</param>
/// <param name="Indent">White before its first cell, in points: the row belongs to one above.</param>
internal sealed record PaperRow(IReadOnlyList<string> Cells, bool Strong = false, double Indent = 0);

/// <summary>
/// A table that runs over as many sheets as it needs and stays one table in the document's structure. Its column
/// headings are shown again on each further sheet, as decoration, since the structure already has them.
/// </summary>
/// <param name="pad">White above and below a row's lines, in points.</param>
internal sealed class PaperTable(IReadOnlyList<PaperColumn> columns, IReadOnlyList<PaperRow> rows, double left, double size, double pad = PaperTable.UsualPad)
{
    public const double Gap = 8;
    public const double UsualPad = 2.8;

    // A row up to this many lines is never cut; a longer one may run over to the next sheet.
    private const int LongestWholeRow = 12;

    private readonly double _line = size * 1.36;
    private readonly XFont _regular = NotoSans.Regular(size);
    private readonly XFont _bold = NotoSans.Bold(size);

    private double Width => columns.Sum(c => c.Width);

    /// <param name="before">White above the table, in points.</param>
    /// <param name="whole">A table up to this height is not cut over two sheets.</param>
    public IReadOnlyList<Slice> Slices(double before, double whole)
    {
        var slices = Cut(before);
        if (slices.Sum(s => s.Height) > whole)
            return slices;
        return [.. slices.Select((s, i) => s with { KeepWithNext = i < slices.Count - 1 })];
    }

    private List<Slice> Cut(double before)
    {
        var slices = new List<Slice>();
        Slice? running = null;
        if (columns.Any(c => c.Heading.Length > 0))
        {
            var cells = columns.Select(c => Lines(c.Heading, c, _bold)).ToList();
            var height = cells.Max(c => c.Count) * _line + 2 * pad;
            // A row that goes on from the sheet before has no white of its own above it.
            running = new Slice(height + pad, (sheet, top) =>
            {
                sheet.Decoration(() => DrawCells(sheet, cells, top, height, _bold, tagged: false));
                sheet.Rule(left, Width, top + height, strong: true);
            });
            slices.Add(new Slice(height, (sheet, top) => DrawHeadings(sheet, cells, top, height)) { Before = before, KeepWithNext = true });
        }

        for (var i = 0; i < rows.Count; i++)
        {
            var first = slices.Count == 0;
            var more = RowSlices(rows[i], first, i == rows.Count - 1);
            // Sums never stand alone at the top of a sheet.
            var bound = i + 1 < rows.Count && rows[i + 1].Strong;
            for (var k = 0; k < more.Count; k++)
                slices.Add(more[k] with { Running = running, Before = first && k == 0 ? before : 0, KeepWithNext = bound && k == more.Count - 1 });
        }

        return slices;
    }

    private void DrawHeadings(Sheet sheet, IReadOnlyList<IReadOnlyList<string>> cells, double top, double height)
    {
        sheet.Open(PdfBlockLevelElementTag.Table);
        sheet.Open(PdfBlockLevelElementTag.TableRow);
        DrawCells(sheet, cells, top, height, _bold, tagged: true);
        sheet.Close();
        sheet.Rule(left, Width, top + height, strong: true);
        if (rows.Count == 0)
            sheet.Close();
    }

    private void DrawCells(Sheet sheet, IReadOnlyList<IReadOnlyList<string>> cells, double top, double height, XFont font, bool tagged)
    {
        var x = left;
        for (var c = 0; c < columns.Count; c++)
        {
            if (tagged)
                sheet.OpenHeadingCell("Column");
            // Headings stand on the rule below them, however many lines they take.
            var y = top + height - pad - cells[c].Count * _line;
            foreach (var line in cells[c])
                DrawLine(sheet, line, columns[c], x, y += _line, font);
            if (tagged)
                sheet.Close();
            x += columns[c].Width;
        }
    }

    private List<Slice> RowSlices(PaperRow row, bool opensTable, bool closesTable)
    {
        var font = row.Strong ? _bold : _regular;
        var cells = columns.Select((c, i) => Lines(row.Cells[i], i == 0 ? c with { Width = c.Width - row.Indent } : c, FontOf(i, font))).ToList();
        var tallest = cells.Max(c => c.Count);
        if (tallest <= LongestWholeRow)
        {
            var height = tallest * _line + 2 * pad;
            return [new Slice(height, (sheet, top) => DrawPart(sheet, row, cells, new int[cells.Count], 0, tallest, top, top + height, opensTable, closesTable))];
        }

        // In a row that may be cut, a cell begins on the line on which the cell before it ends: the reading order
        // of the structure is then also the order on paper.
        var starts = new int[cells.Count];
        for (var c = 1; c < cells.Count; c++)
            starts[c] = starts[c - 1] + cells[c - 1].Count - 1;
        var count = starts[^1] + cells[^1].Count;
        var slices = new List<Slice>();
        for (var k = 0; k < count; k++)
        {
            var line = k;
            var last = k == count - 1;
            var height = _line + (k == 0 ? pad : 0) + (last ? pad : 0);
            slices.Add(new Slice(height, (sheet, top) =>
                DrawPart(sheet, row, cells, starts, line, line + 1, line == 0 ? top : top - pad, last ? top + height : null, opensTable, closesTable)));
        }

        return slices;
    }

    /// <summary>Draws the lines of a row from one up to another, opening and closing what begins and ends among them.</summary>
    private void DrawPart(
        Sheet sheet, PaperRow row, List<IReadOnlyList<string>> cells, int[] starts, int from, int to, double top, double? rule, bool opensTable, bool closesTable)
    {
        if (from == 0 && opensTable)
            sheet.Open(PdfBlockLevelElementTag.Table);
        if (from == 0)
            sheet.Open(PdfBlockLevelElementTag.TableRow);
        if (from == 0 && row.Strong)
            sheet.Rule(left, Width, top, strong: true);
        var x = left;
        for (var c = 0; c < columns.Count; c++)
        {
            var end = starts[c] + cells[c].Count;
            if (starts[c] >= from && starts[c] < to)
            {
                if (columns[c].Names)
                    sheet.OpenHeadingCell("Row");
                else
                    sheet.Open(PdfBlockLevelElementTag.TableDataCell);
            }

            for (var k = Math.Max(from, starts[c]); k < Math.Min(to, end); k++)
                DrawLine(sheet, cells[c][k - starts[c]], columns[c], c == 0 ? x + row.Indent : x, top + pad + (k - from + 1) * _line, FontOf(c, row.Strong ? _bold : _regular));
            if (end > from && end <= to)
                sheet.Close();
            x += columns[c].Width;
        }

        if (rule is not { } bottom)
            return;
        sheet.Close();
        sheet.Rule(left, Width, bottom);
        if (closesTable)
            sheet.Close();
    }

    private XFont FontOf(int column, XFont font) => columns[column].Names && columns[column].Heading.Length == 0 ? _bold : font;

    private void DrawLine(Sheet sheet, string line, PaperColumn column, double x, double bottom, XFont font)
    {
        var at = column.Figures ? x + column.Width - NotoSans.Width(line.TrimEnd(' '), font) : x;
        sheet.Text(line, font, at, bottom - _line * 0.26, quiet: line is "0:00" or "0.00" or "0");
    }

    private static IReadOnlyList<string> Lines(string text, PaperColumn column, XFont font) =>
        WrappedText.Lines(PrintableText.Of(text, font), font, column.Width - Gap);
}
