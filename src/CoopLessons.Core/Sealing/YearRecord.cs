using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Units;

namespace CoopLessons.Core.Sealing;

/// <summary>The school year's name and days, both included.</summary>
public sealed record RecordYear(string Name, DateOnly First, DateOnly Last);

/// <summary>A subject's share of an entry: its weight, and the learner's minutes that fall to it.</summary>
public sealed record RecordShare(string Subject, int Weight, int Minutes);

/// <summary>One entry of the log as it counts for the learner.</summary>
/// <param name="Revision">The number of the writing that holds.</param>
/// <param name="Start"><c>09:00</c>, or null where none was written.</param>
/// <param name="Minutes">The learner's own.</param>
/// <param name="Split">In the family's order of subjects.</param>
/// <param name="Touches">Subjects met in passing, in the family's order.</param>
/// <param name="NotedAt">When it was written on a phone without a network, UTC, to the second, as the phone said; null for what came at once.</param>
/// <param name="WrittenAt">When it reached the server, UTC, to the second.</param>
public sealed record RecordEntry(
    Guid Id, int Revision, DateOnly Date, string? Start, string What, Place Place, int Minutes,
    IReadOnlyList<RecordShare> Split, IReadOnlyList<string> Touches, string? NotedAt, string WrittenAt);

/// <summary>A day marked by hand.</summary>
public sealed record RecordDayMark(DateOnly Date, bool Counts);

/// <summary>A book of the year's reading list.</summary>
/// <param name="Ended">Null where it went on past the year's last day.</param>
/// <param name="Unfinished">It was put away before its end, within the year.</param>
public sealed record RecordBook(string Title, string Author, string Isbn, BookUse How, DateOnly Begun, DateOnly? Ended, bool Unfinished);

/// <summary>A piece of the child's work.</summary>
/// <param name="Sha256">Of the file as it is kept and shown: 64 digits.</param>
public sealed record RecordPiece(string Sha256, DateOnly Date, string Caption);

/// <summary>A figure of the law as it stood at sealing, in words.</summary>
/// <param name="Depth">0 for a figure of the pathway, one more for each group around it.</param>
public sealed record RecordFigure(int Depth, string Name, string? Logged, string? Asked, string Standing, string Source);

/// <summary>A pathway of the year with what it asked and how the log stood on the day of sealing.</summary>
public sealed record RecordPathway(string Place, string Name, string Days, IReadOnlyList<RecordFigure> Figures);

public sealed record RecordSubject(string Subject, int Minutes);

/// <summary>What the entries come to, in whole minutes and days.</summary>
public sealed record RecordTotals(int Minutes, IReadOnlyList<RecordSubject> BySubject, int SchoolDays);

/// <summary>One difference in words: what it is about, and what both sides say.</summary>
public sealed record RecordChange(string About, string Was, string Now);

/// <summary>A late correction, as the record that came of it tells it.</summary>
/// <param name="Number">1 for the first of the learner's year.</param>
/// <param name="Before">All digits of the fingerprint that stood before it.</param>
/// <param name="By">Who made it, as the family calls them.</param>
/// <param name="At">UTC, to the second.</param>
public sealed record RecordAmendment(int Number, string Before, string Why, string By, string At, IReadOnlyList<RecordChange> Changes);

/// <summary>
/// Everything of one learner's school year that a sealing holds fast. Names, counting policy, minimum day and pathways are
/// those of the day of sealing; later records of the same year take them over.
/// </summary>
/// <param name="Format">1.</param>
/// <param name="MinimumDay">Minutes.</param>
/// <param name="Subjects">Those that were met in the year, in the family's order.</param>
/// <param name="Entries">By date, start (those without one first) and id.</param>
/// <param name="DayMarks">By date.</param>
/// <param name="Reading">By the day on which each was begun, and title.</param>
/// <param name="Pieces">By date and content.</param>
/// <param name="Amendment">Null in the record of the sealing itself.</param>
public sealed record YearRecord(
    int Format, string Family, string Learner, RecordYear Year, string CountingPolicy, int MinimumDay, IReadOnlyList<string> Subjects,
    IReadOnlyList<RecordEntry> Entries, IReadOnlyList<RecordDayMark> DayMarks, IReadOnlyList<RecordBook> Reading, IReadOnlyList<RecordPiece> Pieces,
    IReadOnlyList<RecordPathway> Pathways, RecordTotals Totals, RecordAmendment? Amendment)
{
    /// <summary>The number of this form of a record.</summary>
    public const int ThisFormat = 1;

    private static readonly JsonSerializerOptions Names = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower) },
        RespectRequiredConstructorParameters = true,
        RespectNullableAnnotations = true,
    };

    /// <summary>The record in its one form; members are named in small letters joined by underscores.</summary>
    /// <exception cref="ArgumentException">A text holds half a character.</exception>
    [JsonIgnore]
    public string Text => RecordText.Of(JsonSerializer.SerializeToNode(this, Names));

    [JsonIgnore]
    public Fingerprint Fingerprint => Fingerprint.Of(Text);

    /// <summary>Reads a record's text; null where it is none of this format.</summary>
    public static YearRecord? Read(string text)
    {
        try
        {
            return JsonSerializer.Deserialize<YearRecord>(text, Names) is { Format: ThisFormat } record ? record : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>An instant to the second, as records write it.</summary>
    /// <param name="utc">UTC.</param>
    public static string Instant(DateTime utc) => utc.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture);

    /// <summary>This record as a late correction leaves it.</summary>
    /// <param name="before">The record that stood before, the sealing's own or that of the last amendment.</param>
    /// <returns>Null where both say the same.</returns>
    public YearRecord? Amending(YearRecord before, string why, string by, DateTime utc)
    {
        var changes = RecordDifferences.Between(before, this);
        var own = changes.Where(c => !c.Follows).Select(c => new RecordChange(c.About, c.Was, c.Now)).ToList();
        return own.Count == 0 ? null : this with
        {
            Amendment = new RecordAmendment((before.Amendment?.Number ?? 0) + 1, before.Fingerprint.Hex, why, by, Instant(utc), own),
        };
    }
}
