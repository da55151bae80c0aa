using SpreadCheetah;

namespace CoopLessons.Documents.Reports;

/// <summary>What the cells of a workbook can hold, and the formulas in which its sums and h:mm texts are written.</summary>
internal static class WorkbookCell
{
    // A cell holds at most 32,767 characters ("Excel specifications and limits", Microsoft support page; from memory).
    private const int Limit = 32_000;

    /// <summary>The text in parts that fit a cell each; at least one.</summary>
    public static IEnumerable<string> Parts(string text)
    {
        var start = 0;
        do
        {
            var length = Math.Min(Limit, text.Length - start);
            if (start + length < text.Length && char.IsHighSurrogate(text[start + length - 1]))
                length--;
            yield return text.Substring(start, length);
            start += length;
        }
        while (start < text.Length);
    }

    public static Formula Sum(int fromColumn, int fromRow, int toColumn, int toRow) =>
        new($"SUM({Reference(fromColumn, fromRow)}:{Reference(toColumn, toRow)})");

    /// <summary>h:mm of a cell of minutes, as text: a number format would turn hours above 24 into days in some programs.</summary>
    public static Formula Clock(int column, int row)
    {
        var cell = Reference(column, row);
        return new($"INT({cell}/60)&\":\"&TEXT(MOD({cell},60),\"00\")");
    }

    private static string Reference(int column, int row) => SpreadsheetUtility.GetColumnName(column) + ReportWords.Number(row);
}
