using System.Globalization;
using System.Text;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Sealing;
using CsvHelper;
using CsvHelper.Configuration;

namespace CoopLessons.Documents.Reports;

/// <summary>
/// One learner's hours as comma-separated values (RFC 4180: CRLF between records, quotes doubled), UTF-8 with a byte
/// order mark so that spreadsheets read names right. One header; each record has the same nine fields:
/// <c>part,item,month,minutes,hours,decimal_hours,days,days_with_touches,text</c>.
/// <list type="bullet">
/// <item><c>about</c>: one fact of the report a record, in <c>text</c>; the minimum day also in <c>minutes</c>.</item>
/// <item><c>subject-month</c>: minutes of a subject (<c>item</c>) in a month (<c>yyyy-MM</c>), zero included.</item>
/// <item><c>subject</c>, <c>month</c>, <c>place</c>, <c>total</c>: the sums, with the days where they are counted.</item>
/// <item><c>school-days</c>: by the rule in <c>days</c>, read broadly in <c>days_with_touches</c>.</item>
/// <item><c>question</c>: what is still open in the log.</item>
/// </list>
/// Minutes and days are whole numbers; <c>hours</c> is h:mm; decimal hours have two places and are never to be added.
/// Text is guarded by <see cref="SpreadsheetText"/>.
/// </summary>
public static class HoursCsv
{
    // The writer's own rule looks for the whole CRLF alone: a line feed inside a field would then end the record, and what
    // follows it would begin a new one.
    internal static readonly CsvConfiguration Rfc4180 = new(CultureInfo.InvariantCulture)
    {
        NewLine = "\r\n",
        ShouldQuote = field => ConfigurationFunctions.ShouldQuote(field) || (field.Field?.Contains('\n', StringComparison.Ordinal) ?? false),
    };

    /// <param name="seal">What the file says of the year's sealing; null in an open year.</param>
    public static byte[] Write(HoursReport report, SealMark? seal = null)
    {
        using var bytes = new MemoryStream();
        using (var text = new StreamWriter(bytes, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true), leaveOpen: true))
        using (var csv = new CsvWriter(text, Rfc4180))
        {
            foreach (var name in new[] { "part", "item", "month", "minutes", "hours", "decimal_hours", "days", "days_with_touches", "text" })
                csv.WriteField(name);
            csv.NextRecord();
            foreach (var record in Records(report, seal))
                record.WriteTo(csv);
        }

        return bytes.ToArray();
    }

    private static IEnumerable<Record> Records(HoursReport report, SealMark? seal)
    {
        foreach (var (item, text, minutes) in ReportAbout.Of(report, seal))
            yield return new Record("about", item) { Text = text, Minutes = minutes };
        foreach (var subject in report.Subjects)
        {
            for (var i = 0; i < report.Months.Count; i++)
                yield return new Record("subject-month", subject.Subject) { Month = report.Months[i].Month.Iso, Minutes = subject.ByMonth[i] };
        }

        foreach (var subject in report.Subjects)
            yield return new Record("subject", subject.Subject) { Minutes = subject.Total, Days = subject.StrictDays, Broad = subject.BroadDays };
        foreach (var month in report.Months)
            yield return new Record("month") { Month = month.Month.Iso, Minutes = month.Total, Days = month.SchoolDays };
        foreach (var place in report.Places)
            yield return new Record("place", ReportWords.Place(place.Place)) { Minutes = place.Total };
        yield return new Record("total") { Minutes = report.Total };
        yield return new Record("school-days") { Days = report.SchoolDays, Broad = report.SchoolDaysBroad };
        foreach (var question in report.Questions)
            yield return new Record("question") { Text = question };
    }

    private sealed record Record(string Part, string Item = "")
    {
        public string Month { get; init; } = "";
        public Minutes? Minutes { get; init; }
        public int? Days { get; init; }
        public int? Broad { get; init; }
        public string Text { get; init; } = "";

        public void WriteTo(CsvWriter csv)
        {
            csv.WriteField(Part);
            csv.WriteField(SpreadsheetText.Guarded(Item));
            csv.WriteField(Month);
            csv.WriteField(Minutes?.Value);
            csv.WriteField(Minutes?.Clock);
            csv.WriteField(Minutes is { } minutes ? ReportWords.Decimal(minutes) : null);
            csv.WriteField(Days);
            csv.WriteField(Broad);
            csv.WriteField(SpreadsheetText.Guarded(Text));
            csv.NextRecord();
        }
    }
}
