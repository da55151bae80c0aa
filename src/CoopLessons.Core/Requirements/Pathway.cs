using System.Text.Json.Serialization;
using CoopLessons.Core.Calendar;

namespace CoopLessons.Core.Requirements;

/// <summary>What the law of one place asks of instruction at home; the shape that <c>jurisdiction.schema.json</c> describes.</summary>
/// <param name="Code">ISO 3166-2, such as US-MO.</param>
public sealed record Jurisdiction(string Code, string Name, IReadOnlyList<Pathway> Pathways)
{
    public Pathway? Pathway(string id) => Pathways.FirstOrDefault(p => p.Id == id);
}

/// <summary>A legal option under which a family teaches, or one that the family wrote itself.</summary>
/// <param name="Year">The twelve months that the law counts; null for the family's own school year.</param>
/// <param name="CountsFrom">Set where nothing counts before a paper is in: says which.</param>
public sealed record Pathway(
    string Id,
    string Name,
    string Summary,
    Source Source,
    DutyAges Ages,
    IReadOnlyList<StatuteSubject> Subjects,
    IReadOnlyList<Requirement> Requirements,
    IReadOnlyList<Duty> Duties,
    IReadOnlyList<RecordToKeep> Records,
    IReadOnlyList<LegalNote> Notes,
    LegalYear? Year = null,
    string? CountsFrom = null)
{
    /// <summary>Every requirement, those inside any-of and all-of too, outer before inner.</summary>
    [JsonIgnore]
    public IEnumerable<Requirement> AllRequirements => Requirements.SelectMany(r => r.WithParts);
}

/// <summary>The day on which the law's twelve months begin.</summary>
public sealed record LegalYear(MonthDay Begins, Source Source, string? Note = null);

/// <summary>When the duty holds for a child.</summary>
/// <param name="From">It begins at this age: on the birthday, or with <paramref name="By"/> for a whole school year.</param>
/// <param name="By">A child of that age by this date is bound for the whole school year in which it lies.</param>
/// <param name="To">It ends at this birthday.</param>
/// <param name="Ends">Whether it ends on the birthday or with the year in which that falls.</param>
public sealed record DutyAges(Source Source, int? From = null, MonthDay? By = null, int? To = null, DutyEnd Ends = DutyEnd.Birthday, string? Note = null);

public enum DutyEnd
{
    Birthday,
    Year,
}

/// <summary>A subject in the statute's words.</summary>
/// <param name="Required">False for one that only stands in a pool or is recommended.</param>
/// <param name="Like">Codes of usual subjects proposed for it.</param>
/// <param name="Topic">A matter that is taught within other subjects or once over several grades: no subject’s minutes measure it.</param>
public sealed record StatuteSubject(string Id, string Name, bool Required, IReadOnlyList<string> Like, Source Source, Grades? Grades = null, string? Note = null, bool Topic = false);

/// <summary>A record that a family keeps.</summary>
/// <param name="KeepYears">Years after the school year's last day; null where the law gives no time or <paramref name="KeepAlways"/> holds.</param>
public sealed record RecordToKeep(string Id, string What, FigureStatus Status, Source Source, int? KeepYears = null, bool KeepAlways = false, string? ShownTo = null, string? Note = null)
{
    /// <summary>The last day on which it is kept; null without a time.</summary>
    public DateOnly? Until(DateOnly yearEnds) => KeepYears is { } years ? yearEnds.AddYears(years) : null;
}

/// <summary>What a family should know beside the figures.</summary>
public sealed record LegalNote(string Text, Source Source);
