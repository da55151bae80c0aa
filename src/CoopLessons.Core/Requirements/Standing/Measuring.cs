using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Requirements.Standing;

/// <summary>What each date adds to a requirement's total.</summary>
internal static class Measuring
{
    /// <summary>Minutes by date that count for an hours requirement.</summary>
    public static IReadOnlyDictionary<DateOnly, int> Minutes(StandingQuestion asked, PathwayChoices choices, IReadOnlyList<string>? subjects, Place? place)
    {
        var pool = subjects?.SelectMany(choices.SubjectsFor).ToHashSet();
        return asked.Ledger.ByDate(c => (pool is null || pool.Contains(c.SubjectId)) && (place is null || c.Place == place))
            .ToDictionary(d => d.Key, d => d.Value.Value);
    }

    /// <summary>1 for each school day.</summary>
    /// <param name="minutes">Minutes that a day must reach; null for the family's own minimum.</param>
    public static IReadOnlyDictionary<DateOnly, int> Days(StandingQuestion asked, int? minutes)
    {
        var minimum = minutes is { } law ? new Minutes(law) : asked.FamilyMinimum;
        return SchoolDays.Of(asked.Ledger, minimum, asked.Marks).Counted.ToDictionary(d => d, _ => 1);
    }

    public static int In(this IReadOnlyDictionary<DateOnly, int> amounts, DayRange? days) =>
        days is { } range ? amounts.Where(a => range.Contains(a.Key)).Sum(a => a.Value) : 0;
}
