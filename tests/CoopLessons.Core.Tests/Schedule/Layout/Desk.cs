using CoopLessons.Core.Schedule;
using CoopLessons.Core.Units;

namespace CoopLessons.Core.Tests.Schedule.Layout;

/// <summary>Weeks of the Alders made by hand, with names in place of ids.</summary>
internal static class Desk
{
    public static readonly DateOnly Monday = AnyWeek.Monday;
    public static readonly DateOnly Wednesday = Monday.AddDays(2);
    public static readonly DateOnly Thursday = Monday.AddDays(3);

    public static Guid Id(string name) => new(name.Aggregate(17, (hash, c) => unchecked(hash * 31 + c)), 0, 0, [0, 0, 0, 0, 0, 0, 0, 5]);

    public static FreeTime Free(params (DateOnly Day, int From, int To)[] stretches) =>
        new(stretches.GroupBy(s => s.Day).ToDictionary(g => g.Key, g => (IReadOnlyList<Stretch>)[.. g.Select(s => new Stretch(s.From, s.To))]));

    public static WeekLearner Learner(string name, FreeTime free, int sitting = 60) => new(Id(name), name, sitting, free);

    public static WeekAdult Adult(string name, FreeTime free) => new(Id(name), name, free);

    public static WeekSession Session(string title, int minutes, AdultNeed need, params string[] learners) =>
        new(Id(title), title, null, [.. learners.Select(Id)], minutes, need);

    public static Placing At(string title, DateOnly day, int start, int? look = null, string? adult = null, string? looker = null) =>
        new(Id(title), day, start, look, adult is null ? null : Id(adult), looker is null ? null : Id(looker));

    public static WeekProblem Week(DateOnly[] days, WeekLearner[] learners, WeekAdult[] adults, params WeekSession[] sessions) => new(days, learners, adults, sessions);
}
