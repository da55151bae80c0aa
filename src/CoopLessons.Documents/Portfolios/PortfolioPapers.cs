using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Prepare.Books;
using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Core.Requirements.Papers;
using CoopLessons.Core.Sealing;
using CoopLessons.Documents.Placing;
using CoopLessons.Documents.Reports;

namespace CoopLessons.Documents.Portfolios;

/// <summary>A work sample as it stands on paper.</summary>
/// <param name="Hash">Of the file that is shown, a key of the sources; null where nothing of it can be shown.</param>
/// <param name="Page">From 1.</param>
/// <param name="Kind">What it is, such as “photo” or “page 2 of 3”.</param>
/// <param name="Part">Which part of the year it comes from, such as “Beginning”; may be empty.</param>
/// <param name="Caption">In the child's words where there are any; may be empty.</param>
/// <param name="Why">Why nothing is shown; only read without <paramref name="Hash"/>.</param>
public sealed record SamplePaper(string? Hash, int Page, DateOnly Date, string Kind, string Part, string Caption, string Why = "");

/// <summary>One subject of a portfolio.</summary>
/// <param name="ReadAs">The family's subjects that are read as it, where the law names it otherwise; may be empty.</param>
/// <param name="Facts">Sentences that the log vouches for.</param>
/// <param name="Narrative">The parent's own sentences; may be empty.</param>
/// <param name="Missing">What is not there, in sentences.</param>
public sealed record SubjectPaper(
    string Name, string ReadAs, IReadOnlyList<string> Facts, string Narrative, IReadOnlyList<SamplePaper> Samples, IReadOnlyList<string> Missing)
{
    /// <summary>Where samples stand that an earlier subject shows, in sentences.</summary>
    public IReadOnlyList<string> Elsewhere { get; init; } = [];

    /// <summary>The same subjects with each sample shown once, under the first that has it; the others say where.</summary>
    public static IReadOnlyList<SubjectPaper> EachShownOnce(IEnumerable<SubjectPaper> subjects)
    {
        var under = new Dictionary<SamplePaper, string>();
        return [.. subjects.Select(subject =>
        {
            var again = subject.Samples.Where(s => s.Hash is not null && under.ContainsKey(s)).ToList();
            var shown = subject.Samples.Where(s => s.Hash is null || under.TryAdd(s, subject.Name)).ToList();
            return subject with
            {
                Samples = shown,
                Elsewhere = [.. again.GroupBy(s => under[s]).Select(g => $"Also of this subject, shown under {g.Key}: {string.Join(", ", g.Select(s => ReportWords.Date(s.Date)).Distinct())}.")],
            };
        })];
    }
}

/// <summary>Two samples of one skill.</summary>
/// <param name="Words">What the child or the parent says changed; may be empty.</param>
public sealed record PairPaper(string Skill, SamplePaper Early, SamplePaper Late, string Words);

/// <summary>A line of the log.</summary>
public sealed record LogPaper(DateOnly Date, string What, string Subjects, Minutes Minutes, string Place);

/// <summary>The dates of a month that count as school days.</summary>
public sealed record MonthOfDays(Month Month, IReadOnlyList<int> Days);

/// <summary>One learner's year as a reader asked for it. A part that was not asked for is null or empty.</summary>
/// <param name="Grade">As forms ask for it; empty where it is not said.</param>
/// <param name="Place">Place and pathway; empty where none was chosen.</param>
/// <param name="Reader">For whom it is made; may be empty.</param>
/// <param name="Opening">The parent's own words at the beginning; may be empty.</param>
/// <param name="Months">Whether the table of subjects by months is in it.</param>
/// <param name="Log">In order of days; null where it is not in it.</param>
/// <param name="Seal">What it says of the year's sealing; null in an open year.</param>
/// <param name="Full">Pictures stand two in a row and large, not three and small.</param>
public sealed record PortfolioPapers(
    HoursReport Report,
    string Grade,
    string Place,
    string Reader,
    string Opening,
    bool Months,
    IReadOnlyList<MonthOfDays>? Days,
    ReadingList? Reading,
    IReadOnlyList<SubjectPaper> Subjects,
    IReadOnlyList<PairPaper> Pairs,
    IReadOnlyList<LogPaper>? Log,
    LawSection? Law,
    bool Full,
    PaperSize Paper,
    SealMark? Seal = null)
{
    /// <summary>Of the files that are shown, each once.</summary>
    public IReadOnlyList<string> Hashes => [.. Subjects.SelectMany(s => s.Samples).Concat(Pairs.SelectMany(p => new[] { p.Early, p.Late })).Select(s => s.Hash).OfType<string>().Distinct(StringComparer.Ordinal)];
}

/// <summary>What a packet on one subject holds.</summary>
/// <param name="Asked">The days that were asked for.</param>
/// <param name="Log">Every entry of the subject in those days.</param>
/// <param name="Total">Null for a matter within other subjects, whose minutes nobody told apart.</param>
/// <param name="Books">Empty where the subject is not read as reading.</param>
public sealed record SubjectPacketPapers(
    string Family, string Learner, DateOnly MadeOn, DayRange Asked, SubjectPaper Subject, IReadOnlyList<LogPaper> Log, Minutes? Total, IReadOnlyList<ReadingListLine> Books, string Fingerprint, PaperSize Paper, SealMark? Seal = null);

/// <summary>Where a paper with pictures is written to, and from which files.</summary>
/// <param name="To">Written from front to end; need not be able to seek.</param>
/// <param name="Aside">An empty file for the time of writing: can be written, read and sought in.</param>
/// <param name="Sources">By the hash that samples name.</param>
/// <param name="Tell">Told how far the writing is.</param>
public sealed record PaperFiles(Stream To, Stream Aside, IReadOnlyDictionary<string, PageSource> Sources, Action<PaperProgress>? Tell = null);
