using CoopLessons.Data.Prepare;

namespace CoopLessons.Web.Charts;

/// <summary>A line of days: when something can begin, when somebody sees to it, when it is ready, and when it is needed.</summary>
/// <param name="First">The first day shown.</param>
/// <param name="Days">How many days are shown, at least two.</param>
public sealed record AheadStrip(DateOnly First, int Days, IReadOnlyList<(DateOnly Day, string Mark)> Marks, DateOnly GoodFrom, DateOnly GoodTo, DateOnly Today)
{
    private const int Edge = 6;
    public const int Width = 320;

    public static AheadStrip Of(AheadLine line, DateOnly today)
    {
        var begun = line.Mark?.BegunOn;
        List<DateOnly> all = [begun ?? line.Dates.From ?? line.Dates.By, line.NeededOn];
        if (line.Underway is { } u)
            all.AddRange([u.ReadyOn, u.KeepsUntil ?? line.NeededOn]);
        var (first, last) = (all.Min(), all.Max());
        if (today < first && first.DayNumber - today.DayNumber <= 7)
            first = today;
        var tend = line.Underway?.TendOn ?? line.Dates.TendOn;
        var marks = tend.Select(d => (d, "tend")).ToList();
        if (line.Underway is { } way)
            return new AheadStrip(first, Span(first, last), [.. marks, (begun!.Value, "begun"), (line.NeededOn, "needed")], way.ReadyOn, way.KeepsUntil ?? (way.ReadyOn > line.NeededOn ? way.ReadyOn : line.NeededOn), today);
        return new AheadStrip(first, Span(first, last), [.. marks, (line.NeededOn, "needed")], line.Dates.From ?? line.Dates.By, line.Dates.By, today);
    }

    public bool ShowsToday => Today >= First && Today < First.AddDays(Days);

    public int X(DateOnly day) => Edge + (day.DayNumber - First.DayNumber) * (Width - 2 * Edge) / (Days - 1);

    private static int Span(DateOnly first, DateOnly last) => Math.Max(2, last.DayNumber - first.DayNumber + 1);
}
