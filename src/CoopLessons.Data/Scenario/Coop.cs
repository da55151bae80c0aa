using System.Text.Json;
using System.Text.Json.Serialization;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Families;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Units;
using CoopLessons.Data.Tenancy;

namespace CoopLessons.Data.Scenario;

/// <summary>The invented co-op as <c>seed-scenario/coop.json</c> tells it; the README beside that file says what each member means.</summary>
/// <param name="SlowWords">Days for which a word of that name stays the same.</param>
public sealed record Coop(
    int Seed,
    string Name,
    string TimeZone,
    CoopMeeting Meeting,
    IReadOnlyList<CoopFamily> Families,
    CoopUnitNotes UnitNotes,
    IReadOnlyList<string> SickTexts,
    IReadOnlyList<string> WeekendTexts,
    CoopWhys Whys,
    IReadOnlyDictionary<string, int> SlowWords,
    IReadOnlyDictionary<string, IReadOnlyList<string>> Words,
    IReadOnlyList<CoopCourse> Courses,
    IReadOnlyList<CoopOuting> Outings)
{
    internal static readonly JsonSerializerOptions Json = new(UnitBundle.Json)
    {
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
    };

    /// <summary>The file that comes with the program.</summary>
    public static Coop Read() =>
        JsonSerializer.Deserialize<Coop>(ScenarioFiles.Bytes("scenario/coop.json"), Json) ?? throw new InvalidDataException("coop.json holds nothing.");
}

/// <summary>The co-op day: classes one after another, by age, in the weeks of the terms.</summary>
public sealed record CoopMeeting(DayOfWeek Day, TimeOnly At, int Minutes, IReadOnlyList<CoopClass> Classes, IReadOnlyList<CoopSpan> Terms)
{
    public bool IsHeldOn(DateOnly date) => date.DayOfWeek == Day && Terms.Any(t => t.Days.Contains(date));
}

/// <summary>A class for an age group; both ages included.</summary>
public sealed record CoopClass(string Code, int From, int To, IReadOnlyDictionary<string, int> Split, IReadOnlyList<string> Touches, IReadOnlyList<string> Texts);

/// <summary>Named days, both ends included.</summary>
public sealed record CoopSpan(string Name, DateOnly First, DateOnly Last)
{
    [JsonIgnore]
    public DayRange Days => new(First, Last);
}

public sealed record CoopFamily(
    string Name,
    string State,
    int MinimumDay,
    string CountingPolicy,
    IReadOnlyList<string> SubjectOrder,
    IReadOnlyList<CoopAdult> Adults,
    IReadOnlyList<CoopChild> Children,
    IReadOnlyList<CoopYear> Years,
    IReadOnlyList<CoopUnit> Units,
    IReadOnlyList<CoopPathway> Pathways,
    IReadOnlyList<CoopMark> Marks,
    IReadOnlyList<CoopExtra> Extras);

/// <summary>From when the family's children of school age stand under which pathway of the catalog.</summary>
/// <param name="Goals">Ids of the figures that the family takes as goals.</param>
public sealed record CoopPathway(string Code, string Id, DateOnly Since, SpanReason Because, IReadOnlyList<string> Goals);

public sealed record CoopAdult(string Name, string Email, Role Role);

/// <param name="YearHours">Hours near which a full year ends; 0 for a child too young for school.</param>
/// <param name="Levels">Grade by code of subject.</param>
/// <param name="Grades">The child's grade by name of the school year, where it is not the usual one.</param>
/// <param name="Pathways">The child's own, where they are not the family's.</param>
public sealed record CoopChild(
    string Name, DateOnly Born, int YearHours, string Instrument, IReadOnlyList<Allergen> Allergies, string AllergyNote, IReadOnlyDictionary<string, int> Levels,
    IReadOnlyDictionary<string, int>? Grades = null, IReadOnlyList<CoopPathway>? Pathways = null);

/// <param name="Holidays">Names of the federal holidays that the family keeps, beside its breaks.</param>
/// <param name="Sick">Days on which the family was ill; nobody foresaw them, so they are no breaks.</param>
public sealed record CoopYear(
    string Name, DateOnly First, DateOnly Last, Weekdays Weekdays, IReadOnlyList<string> Holidays, IReadOnlyList<CoopSpan> Breaks, IReadOnlyList<CoopSpan> Sick)
{
    [JsonIgnore]
    public TeachingCalendar Calendar
    {
        get
        {
            var year = new DayRange(First, Last);
            var breaks = Breaks.Select(b => new Break(b.Name, b.Days)).ToList();
            var kept = FederalHolidays.ObservedIn(year)
                .Where(h => Holidays.Contains(h.Name) && Weekdays.Holds(h.Observed.DayOfWeek) && !breaks.Any(b => b.Days.Contains(h.Observed)))
                .Select(h => new Break(h.Name, new DayRange(h.Observed, h.Observed)));
            return new TeachingCalendar(year, Weekdays, [.. breaks.Concat(kept).OrderBy(b => b.Days.First)]);
        }
    }

    public bool IsSick(DateOnly date) => Sick.Any(s => s.Days.Contains(date));
}

/// <summary>A unit on a family's shelf and, where it is taken, when: on a Monday, or so that today's week is its week <paramref name="WeekNow"/>.</summary>
/// <param name="Takes">Codes of the subjects that the family takes of it.</param>
public sealed record CoopUnit(string File, IReadOnlyList<string> Takes, DateOnly? StartsOn = null, int? WeekNow = null)
{
    /// <summary>The Monday of its first week, or null where it stays on the shelf.</summary>
    public DateOnly? MondayFor(DateOnly today) => WeekNow is { } week ? Week.Of(today).Monday.AddDays(-7 * (week - 1)) : StartsOn;
}

public sealed record CoopMark(string Child, DateOnly Date, bool Counts);

/// <summary>An entry told in full.</summary>
public sealed record CoopExtra(
    DateOnly Date, string What, int Minutes, IReadOnlyList<string> Children, IReadOnlyDictionary<string, int> Split, Place Place,
    TimeOnly? StartsAt = null, string? Note = null, IReadOnlyList<string>? Touches = null);

/// <param name="Phrases">How an activity is written down: <c>{title}</c>, <c>{unit}</c>.</param>
/// <param name="Evening">Codes of activities done after dark.</param>
/// <param name="AtTheMill">Codes of activities done where the co-op meets.</param>
/// <param name="Notes">By kind of activity, and under <c>any</c>.</param>
public sealed record CoopUnitNotes(
    IReadOnlyList<string> Phrases, IReadOnlyList<string> Evening, IReadOnlyList<string> AtTheMill, IReadOnlyDictionary<string, IReadOnlyList<string>> Notes);

/// <summary>Reasons for which entries were changed or removed.</summary>
public sealed record CoopWhys(IReadOnlyList<string> Minutes, IReadOnlyList<string> What, IReadOnlyList<string> Place, IReadOnlyList<string> Removed);

/// <summary>An outing of a weekend or of a day in a break.</summary>
/// <param name="Months">1–12; all where none are given.</param>
public sealed record CoopOuting(
    string What, int Minutes, IReadOnlyDictionary<string, int> Split, IReadOnlyList<string> Touches, Place Place, TimeOnly At, IReadOnlyList<int>? Months = null);
