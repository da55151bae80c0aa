using System.Globalization;
using System.Text;
using CoopLessons.Core.Requirements.Papers;
using CoopLessons.Core.Sealing;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Hours;
using CoopLessons.Data.Requirements;
using CoopLessons.Documents.Reports;
using Microsoft.Net.Http.Headers;

namespace CoopLessons.Web.Pages.Records;

/// <summary>A paper of a learner's year, mostly the hours report in one of its forms, with the name under which it is kept.</summary>
public sealed record HoursFile(string Ending, string ContentType, byte[] Bytes, string AsciiName, string FullName)
{
    public static readonly IReadOnlyList<string> Endings = ["pdf", "csv", "xlsx"];

    /// <param name="log">The learner's log of the period.</param>
    /// <param name="year">The school year whose days the period is, with its breaks; null for another period, of which the law asks nothing.</param>
    /// <param name="name">The period as the report calls it.</param>
    /// <param name="today">The day on which the report is made.</param>
    /// <param name="ending">One of <see cref="Endings"/>.</param>
    /// <param name="seal">What the paper says of the year's sealing; null in an open year.</param>
    /// <exception cref="ArgumentOutOfRangeException">Another ending.</exception>
    public static async Task<HoursFile> WriteAsync(AppDb db, LearnerYear log, SchoolYear? year, string name, DateOnly today, string ending, CancellationToken ct, SealMark? seal = null)
    {
        var report = log.Report(name, today);
        // The table of separated values holds the log alone.
        LawSection? law = year is null || ending == "csv" ? null : (await LearnerStanding.LoadAsync(db, log, year, today, ct)).Section;
        var (type, bytes) = ending switch
        {
            "pdf" => ("application/pdf", HoursPdf.Write(report, law, seal)),
            "csv" => ("text/csv; charset=utf-8", HoursCsv.Write(report, seal)),
            "xlsx" => ("application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", await HoursXlsx.WriteAsync(report, law, seal, ct)),
            _ => throw new ArgumentOutOfRangeException(nameof(ending)),
        };
        return Named("hours", report.Heading.Learner, report.Heading.Year, ending, type, bytes);
    }

    /// <summary>A paper of a learner's year under the name by which it is kept.</summary>
    /// <param name="paper">What it is, in small letters.</param>
    public static HoursFile Named(string paper, string learner, string year, string ending, string type, byte[] bytes)
    {
        var about = $"{paper}-{learner}-{year}";
        return new HoursFile(ending, type, bytes, $"{Joined(about, r => r.IsAscii)}.{ending}", $"{Joined(about, _ => true)}.{ending}");
    }

    /// <summary>As an attachment by RFC 6266: a plain name for everybody, and the full one where it has other letters.</summary>
    public ContentDispositionHeaderValue Disposition
    {
        get
        {
            var header = new ContentDispositionHeaderValue("attachment") { FileName = AsciiName };
            if (FullName != AsciiName)
                header.FileNameStar = FullName;
            return header;
        }
    }

    /// <summary>Small letters and digits joined by single hyphens: nothing that a shell, a path or a header could take amiss.</summary>
    private static string Joined(string text, Func<Rune, bool> known)
    {
        var name = new StringBuilder();
        foreach (var rune in text.EnumerateRunes())
        {
            if (IsOfAWord(rune) && known(rune))
                name.Append(Rune.ToLowerInvariant(rune).ToString());
            else if (name.Length > 0 && name[^1] != '-')
                name.Append('-');
        }

        return name.ToString().TrimEnd('-');
    }

    // Marks belong to the letters before them: many scripts write vowels so.
    private static bool IsOfAWord(Rune rune) =>
        Rune.IsLetterOrDigit(rune) || Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark or UnicodeCategory.SpacingCombiningMark;
}
