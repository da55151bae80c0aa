using CoopLessons.Core.Calendar;

namespace CoopLessons.Core.Schedule;

/// <summary>Hours that come back each week: by weekday, stretches ascending and apart from each other.</summary>
public sealed record WeekHours(IReadOnlyDictionary<DayOfWeek, IReadOnlyList<Stretch>> Days)
{
    /// <summary>Stretches that one day may have.</summary>
    public const int MostStretches = 6;

    public static WeekHours None { get; } = new(new Dictionary<DayOfWeek, IReadOnlyList<Stretch>>());

    /// <summary>Proposed where a family has said nothing: 9:00–12:00 and 13:00–15:00 on its teaching days (common practice, no source).</summary>
    public static WeekHours Usual(Weekdays days) =>
        new(Enum.GetValues<DayOfWeek>().Where(d => days.Holds(d)).ToDictionary(d => d, IReadOnlyList<Stretch> (_) => [new(9 * 60, 12 * 60), new(13 * 60, 15 * 60)]));

    public IReadOnlyList<Stretch> On(DayOfWeek day) => Days.GetValueOrDefault(day) ?? [];

    /// <summary>The same hours on the days of a calendar.</summary>
    public FreeTime Over(IEnumerable<DateOnly> days) => new(days.Distinct().ToDictionary(d => d, d => On(d.DayOfWeek)));

    /// <summary>All weekdays from Monday to Sunday, as a week is read.</summary>
    public static IReadOnlyList<DayOfWeek> FromMonday { get; } =
        [DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Wednesday, DayOfWeek.Thursday, DayOfWeek.Friday, DayOfWeek.Saturday, DayOfWeek.Sunday];

    public bool Equals(WeekHours? other) => other is not null && FromMonday.All(d => On(d).SequenceEqual(other.On(d)));

    public override int GetHashCode()
    {
        var hash = default(HashCode);
        foreach (var stretch in FromMonday.SelectMany(On))
            hash.Add(stretch);
        return hash.ToHashCode();
    }
}
