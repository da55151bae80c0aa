using System.Globalization;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Sealing;

namespace CoopLessons.Documents.Reports;

/// <summary>One fact about a report.</summary>
/// <param name="Minutes">Where the fact is a length of time.</param>
internal sealed record ReportFact(string Item, string Text, Minutes? Minutes = null);

/// <summary>What a report says about itself, in the order of the spreadsheet forms.</summary>
internal static class ReportAbout
{
    public static IEnumerable<ReportFact> Of(HoursReport report, SealMark? seal)
    {
        var heading = report.Heading;
        yield return new("family", heading.Family);
        yield return new("learner", heading.Learner);
        yield return new("year", heading.Year);
        yield return new("period first", Iso(report.Period.First));
        yield return new("period last", Iso(report.Period.Last));
        yield return new("made on", Iso(heading.MadeOn));
        yield return new("counting policy", heading.CountingPolicy);
        yield return new("minimum day", "", report.MinimumDay);
        yield return new("fingerprint", seal?.Fingerprint.Groups ?? report.Fingerprint);
        if (seal is not null)
        {
            yield return new("sealed on", Iso(seal.SealedOn));
            yield return new("amendments", SealWords.Amendments(seal));
            yield return new("meaning of the fingerprint", SealWords.Meaning);
        }

        yield return new("entries", ReportWords.Number(report.Entries));
        yield return new("caution", ReportWords.Caution);
    }

    private static string Iso(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
