using CoopLessons.Core.Calendar;
using CoopLessons.Core.Units;
using CoopLessons.Data.Units;

namespace CoopLessons.Data.Scenario;

/// <summary>An activity of a taken unit on the day for which it was planned.</summary>
/// <param name="StartsAt">Minutes after midnight.</param>
/// <param name="FellThrough">It was not done that day.</param>
internal sealed record PlacedActivity(Guid SessionId, Unit Unit, Activity Activity, DateOnly Date, int StartsAt, int Order, IReadOnlyList<Pupil> Pupils, bool FellThrough);

/// <summary>A unit that the family took, laid over the days of its weeks.</summary>
internal sealed class UnitRun(Unit unit)
{
    private const int MostADay = 2;
    private const int Early = (8 * 60) + 30;
    private const int Late = 20 * 60;
    private static readonly int[] Plain = [(10 * 60) + 40, (13 * 60) + 40, (15 * 60) + 30];

    public Unit Unit { get; } = unit;
    public DateOnly Monday { get; } = unit.StartsOn ?? throw new ArgumentException("A unit on the shelf does not run.", nameof(unit));

    public int WeekOn(DateOnly date) => date < Monday ? 0 : ((date.DayNumber - Monday.DayNumber) / 7) + 1;

    public bool RunsOn(DateOnly date) => WeekOn(date) is var week && week >= 1 && week <= Unit.Weeks;

    /// <summary>
    /// The week's activities in their order, spread over the teaching days, two a day at most; the co-op day gets what the
    /// other days cannot hold, and what a short week cannot hold is not planned. What must wait is begun first in the
    /// morning, and what needs the dark comes last.
    /// </summary>
    /// <param name="days">The week's teaching days as they were foreseen; none places nothing.</param>
    public IReadOnlyList<PlacedActivity> Placed(Household house, IReadOnlyList<DateOnly> days, Func<DateOnly, bool> isSick)
    {
        if (days.Count == 0 || !RunsOn(days[0]))
            return [];
        var chance = house.ChanceFor(2, days[0].DayNumber);
        var activities = Unit.InPlan().Where(a => a.Week == WeekOn(days[0])).ToList();
        var free = days.Where(d => !house.Coop.Meeting.IsHeldOn(d)).ToList();
        if (free.Count == 0 || activities.Count > free.Count * MostADay)
            free = [.. days];
        activities = [.. activities.Take(free.Count * MostADay)];
        var placed = new List<PlacedActivity>();
        foreach (var day in activities.Select((a, i) => (Activity: a, Date: free[i * free.Count / activities.Count])).GroupBy(a => a.Date))
        {
            var inOrder = day.Select(a => a.Activity).OrderBy(a => IsDark(house, a) ? 2 : a.WaitingMinutes > 0 ? 0 : 1).ThenBy(a => a.Order).ToList();
            var isCoopDay = house.Coop.Meeting.IsHeldOn(day.Key);
            var (plain, dark) = (isCoopDay ? 1 : 0, 0);
            for (var i = 0; i < inOrder.Count; i++)
            {
                var startsAt = IsDark(house, inOrder[i]) ? Late + (60 * dark++)
                    : i == 0 && inOrder[i].WaitingMinutes > 0 && !isCoopDay ? Early
                    : Plain[Math.Min(plain++, Plain.Length - 1)];
                placed.Add(new PlacedActivity(
                    chance.Id(house.Utc(Monday, 0)), Unit, inOrder[i], day.Key, startsAt, i + 1,
                    [.. house.Children.Where(c => c.AgeOn(day.Key) >= 4)], chance.In(14) || isSick(day.Key)));
            }
        }

        return placed;
    }

    private static bool IsDark(Household house, Activity activity) => house.Coop.UnitNotes.Evening.Contains(activity.Code);
}
