using System.Globalization;
using System.Text;
using CoopLessons.Core.Prepare.Books;
using CsvHelper;

namespace CoopLessons.Documents.Reports;

/// <summary>
/// A reading list as comma-separated values (RFC 4180), UTF-8 with a byte order mark. A record a book, with the fields
/// <c>learner,year,title,author,isbn,how,begun,ended,unfinished,level,note</c>: days as <c>yyyy-MM-dd</c>, <c>ended</c>
/// empty while it goes on, <c>unfinished</c> yes or no. Text is guarded by <see cref="SpreadsheetText"/>.
/// </summary>
public static class ReadingListCsv
{
    public static byte[] Write(ReadingList list)
    {
        using var bytes = new MemoryStream();
        using (var text = new StreamWriter(bytes, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true), leaveOpen: true))
        using (var csv = new CsvWriter(text, HoursCsv.Rfc4180))
        {
            foreach (var name in new[] { "learner", "year", "title", "author", "isbn", "how", "begun", "ended", "unfinished", "level", "note" })
                csv.WriteField(name);
            csv.NextRecord();
            foreach (var line in list.Lines)
                Write(csv, list, line);
        }

        return bytes.ToArray();
    }

    private static void Write(CsvWriter csv, ReadingList list, ReadingListLine line)
    {
        foreach (var text in new[] { list.Learner, list.Year, line.Title, line.Author })
            csv.WriteField(SpreadsheetText.Guarded(text));
        csv.WriteField(line.Isbn);
        csv.WriteField(ReadingListWords.How(line));
        csv.WriteField(Iso(line.BegunOn));
        csv.WriteField(line.EndedOn is { } ended ? Iso(ended) : "");
        csv.WriteField(line.Unfinished ? "yes" : "no");
        csv.WriteField(SpreadsheetText.Guarded(line.Level));
        csv.WriteField(SpreadsheetText.Guarded(line.Note));
        csv.NextRecord();
    }

    private static string Iso(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
