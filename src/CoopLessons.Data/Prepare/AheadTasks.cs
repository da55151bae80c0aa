using CoopLessons.Core.Prepare;

namespace CoopLessons.Data.Prepare;

/// <summary>What is begun or seen to in a week so that later days have it.</summary>
public static class AheadTasks
{
    /// <summary>What is to be begun by the end of the week, what somebody sees to in it, and what was begun and will not be right on its day.</summary>
    public static async Task<IReadOnlyList<ReadyTask>> OfAsync(AppDb db, ReadyWeek week, DateOnly today, CancellationToken ct)
    {
        var list = await AheadList.LoadAsync(db, today, ct);
        return [.. list.Lines.Where(l => !l.NotNeeded && l.NeededOn >= week.Week.Monday).SelectMany(l => Of(l, week)).OrderBy(t => t.By)];
    }

    private static IEnumerable<ReadyTask> Of(AheadLine line, ReadyWeek week)
    {
        var days = week.Week.Days;
        ReadyTask Task(DateOnly by, string what, bool done) => new(ReadyKind.StartAhead, by, $"{what}: {line.Start.What}", line.Activity.Title, $"/week/ahead#{Anchor(line)}", done);
        if (line.Underway is not { } underway)
        {
            if (line.Dates.By <= days.Last)
                yield return Task(line.Dates.By, AheadWords.Begin(line.Start.Kind), false);
            yield break;
        }

        if (days.Contains(line.Mark!.BegunOn!.Value))
            yield return Task(line.Mark.BegunOn.Value, AheadWords.Begin(line.Start.Kind), true);
        foreach (var day in underway.TendOn.Where(days.Contains))
            yield return Task(day, AheadWords.Tend(line.Start.Kind), line.Mark.TendedOn >= day);
        if (underway.Outcome != AheadOutcome.InTime)
            yield return Task(line.NeededOn < days.Last ? line.NeededOn : days.Last, "Think again about", false);
    }

    /// <summary>Names its place on the page.</summary>
    public static string Anchor(AheadLine line) => $"a-{line.Activity.Id}-{line.Activity.Details.Ahead.Index().First(x => x.Item == line.Start).Index}";
}
