using System.Text;

namespace CoopLessons.Core.Log.Sheets;

/// <summary>A record of a file of separated values.</summary>
/// <param name="Line">The line on which it begins, from 1, as an editor counts.</param>
public sealed record SheetRecord(int Line, IReadOnlyList<string> Cells)
{
    /// <summary>The cell's text without space around it; empty where the record is shorter.</summary>
    public string Cell(int? column) => column is { } at && at < Cells.Count ? Unguarded(Cells[at].Trim()) : "";

    public bool IsEmpty => Cells.All(c => string.IsNullOrWhiteSpace(c));

    // The mark that keeps a spreadsheet from running a text as a formula is no part of the text.
    private static string Unguarded(string text) => text.Length > 1 && text[0] == '\'' && text[1] is '=' or '+' or '-' or '@' ? text[1..] : text;
}

/// <summary>A file of separated values taken apart, as RFC 4180 has it; the sign between cells is found.</summary>
/// <param name="Separator">Comma, semicolon or tab.</param>
/// <param name="Records">Without those in which nothing stands.</param>
/// <param name="OpenQuote">The line on which a quotation begins that never ends; null where all end.</param>
public sealed record SheetRecords(char Separator, IReadOnlyList<SheetRecord> Records, int? OpenQuote)
{
    public const int MostRecords = 20_000;
    public const int MostColumns = 60;

    private const int Looked = 30;

    /// <summary>The separator with which the first records agree best on more than one cell; of equals, the comma.</summary>
    public static SheetRecords Of(string text)
    {
        var separator = ((ReadOnlySpan<char>)[',', ';', '\t']).ToArray().MaxBy(s => Agreement(text, s));
        var (records, open) = Taken(text, separator, int.MaxValue);
        return new SheetRecords(separator, records, open);
    }

    /// <summary>Of the widest record.</summary>
    public int Columns => Records.Count == 0 ? 0 : Records.Max(r => r.Cells.Count);

    private static int Agreement(string text, char separator)
    {
        var (records, open) = Taken(text, separator, Looked);
        var usual = records.GroupBy(r => r.Cells.Count).Where(g => g.Key > 1).OrderByDescending(g => g.Count()).ThenByDescending(g => g.Key).FirstOrDefault();
        return usual is null ? 0 : usual.Count() * 100 + Math.Min(usual.Key, 99) - (open is null ? 0 : 50);
    }

    private static (List<SheetRecord> Records, int? OpenQuote) Taken(string text, char separator, int most)
    {
        var records = new List<SheetRecord>();
        var (cells, cell) = (new List<string>(), new StringBuilder());
        var (line, begins, quoted, opened) = (1, 1, false, 0);
        for (var i = 0; i <= text.Length && records.Count < most; i++)
        {
            var sign = i < text.Length ? text[i] : '\n';
            if (quoted && i < text.Length)
            {
                if (sign == '"' && i + 1 < text.Length && text[i + 1] == '"')
                    cell.Append(text[i++]);
                else if (sign == '"')
                    quoted = false;
                else
                    cell.Append(sign);
                line += IsEnd(text, i) ? 1 : 0;
            }
            else if (sign == '"' && string.IsNullOrWhiteSpace(cell.ToString()))
            {
                cell.Clear();
                (quoted, opened) = (true, line);
            }
            else if (sign == separator)
            {
                End();
            }
            else if (sign is '\n' or '\r')
            {
                End();
                var record = new SheetRecord(begins, [.. cells]);
                if (!record.IsEmpty)
                    records.Add(record);
                cells.Clear();
                if (sign == '\r' && i + 1 < text.Length && text[i + 1] == '\n')
                    i++;
                begins = ++line;
            }
            else
            {
                cell.Append(sign);
            }
        }

        return (records, quoted ? opened : null);

        void End()
        {
            cells.Add(cell.ToString());
            cell.Clear();
        }
    }

    // CR LF is one end of a line; it is counted at its last sign.
    private static bool IsEnd(string text, int at) => text[at] == '\n' || text[at] == '\r' && (at + 1 == text.Length || text[at + 1] != '\n');
}
