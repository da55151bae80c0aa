using System.Globalization;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Prepare.Books;
using CoopLessons.Core.Requirements.Papers;
using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Core.Sealing;

/// <summary>When the writing that holds was made.</summary>
/// <param name="NotedAt">UTC; null for what came at once.</param>
/// <param name="WrittenAt">UTC.</param>
public sealed record EntryInstants(DateTime? NotedAt, DateTime WrittenAt);

/// <summary>Names and choices that a record holds as they stood on the day of sealing.</summary>
/// <param name="MinimumDay">Minutes.</param>
public sealed record SealedHeading(string Family, string Learner, string CountingPolicy, int MinimumDay, IReadOnlyList<RecordPathway> Pathways)
{
    /// <summary>As a record has it.</summary>
    public static SealedHeading Of(YearRecord record) => new(record.Family, record.Learner, record.CountingPolicy, record.MinimumDay, record.Pathways);
}

/// <summary>What the database holds of one learner's year, as a record is made from it.</summary>
/// <param name="Ledger">Counted over the year's days.</param>
/// <param name="Instants">One for each entry of the ledger.</param>
/// <param name="Marks">Days marked by hand; true for a school day.</param>
public sealed record YearFacts(
    string YearName,
    HoursLedger Ledger,
    IReadOnlyDictionary<Guid, EntryInstants> Instants,
    IReadOnlyDictionary<DateOnly, bool> Marks,
    IReadOnlyList<ReadingListLine> Reading,
    IReadOnlyList<RecordPiece> Pieces)
{
    /// <summary>The record that these facts make under a heading.</summary>
    /// <exception cref="KeyNotFoundException">An entry without its instants.</exception>
    public YearRecord Record(SealedHeading heading)
    {
        var period = Ledger.Period;
        var order = Ledger.Subjects.Select((s, i) => (s.Id, i)).ToDictionary(s => s.Id, s => s.i);
        var names = Ledger.Subjects.ToDictionary(s => s.Id, s => s.Name);
        var credits = Ledger.Credits.ToDictionary(c => (c.EntryId, c.SubjectId), c => c.Minutes.Value);
        var met = Ledger.Subjects.Where(s => Ledger.BroadDays(s.Id) > 0 || Ledger.In(s.Id) > Minutes.Zero).ToList();
        var days = SchoolDays.Of(Ledger, new Minutes(heading.MinimumDay), Marks);
        return new YearRecord(
            YearRecord.ThisFormat, heading.Family, heading.Learner, new RecordYear(YearName, period.First, period.Last), heading.CountingPolicy, heading.MinimumDay,
            [.. met.Select(s => s.Name)],
            [.. Ledger.Entries.Select(Entry).OrderBy(e => e.Date).ThenBy(e => e.Start ?? "", StringComparer.Ordinal).ThenBy(e => e.Id.ToString("D"), StringComparer.Ordinal)],
            [.. Marks.Where(m => period.Contains(m.Key)).OrderBy(m => m.Key).Select(m => new RecordDayMark(m.Key, m.Value))],
            [.. Reading.Select(Book).OrderBy(b => b.Begun).ThenBy(b => b.Title, StringComparer.Ordinal).ThenBy(b => b.How).ThenBy(b => b.Ended)],
            [.. Pieces.Where(p => period.Contains(p.Date)).OrderBy(p => p.Date).ThenBy(p => p.Sha256, StringComparer.Ordinal).ThenBy(p => p.Caption, StringComparer.Ordinal)],
            heading.Pathways,
            new RecordTotals(Ledger.Total.Value, [.. met.Select(s => new RecordSubject(s.Name, Ledger.In(s.Id).Value))], days.Strict),
            null);

        RecordEntry Entry(LoggedEntry entry) => new(
            entry.Id, entry.Revision, entry.Date, entry.Start?.ToString("HH:mm", CultureInfo.InvariantCulture), entry.What, entry.Place,
            entry.Learners.First(l => l.LearnerId == Ledger.LearnerId).Minutes.Value,
            [.. entry.Split.OrderBy(s => order[s.SubjectId]).Select(s => new RecordShare(names[s.SubjectId], s.Weight, credits[(entry.Id, s.SubjectId)]))],
            [.. entry.Touches.OrderBy(t => order[t]).Select(t => names[t])],
            Instants[entry.Id].NotedAt is { } noted ? YearRecord.Instant(noted) : null, YearRecord.Instant(Instants[entry.Id].WrittenAt));
    }

    // What happens to a book after the year's last day belongs to the next year.
    private RecordBook Book(ReadingListLine line)
    {
        var ended = line.EndedOn <= Ledger.Period.Last ? line.EndedOn : null;
        return new RecordBook(line.Title, line.Author, line.Isbn, line.How, line.BegunOn, ended, ended is not null && line.Unfinished);
    }

    /// <summary>The pathways of a report's section on the law, as a record keeps them.</summary>
    /// <param name="law">Null where no pathway was chosen.</param>
    public static IReadOnlyList<RecordPathway> Pathways(LawSection? law) => law is null ? [] :
    [
        .. law.Pathways.Select(p => new RecordPathway(p.Place, p.Name, p.Days, [.. p.Figures.Select(f => new RecordFigure(
            f.Depth, f.Name, f.Logged?.ToString(), f.Full is { } full ? $"{full} {f.FullWords}".TrimEnd() : f.FullWords.Length > 0 ? f.FullWords : null,
            f.Standing.Words(), f.Source.Cite))])),
    ];
}
