using System.Globalization;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Requirements.Forecasts;
using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Web.Charts;

/// <summary>A week's end on the path: what was there, or what is foretold.</summary>
public sealed record PathPoint(DateOnly Date, Quantity? Logged, Quantity? Low, Quantity? Middle, Quantity? High);

/// <summary>
/// The way to a year's figure, 480 by 300 units: the running total so far, the band between one in ten and nine in ten
/// ahead with its middle, and the figure as a line across. Numbers in, places out; the same numbers stand in a table.
/// </summary>
public sealed record PathChart(
    IReadOnlyList<PathPoint> Points,
    string Line,
    string Band,
    string Middle,
    double Goal,
    string GoalText,
    IReadOnlyList<ScaleLine> Scale,
    IReadOnlyList<BarLetter> Letters,
    string Description)
{
    /// <summary>Null where nothing is foretold.</summary>
    /// <param name="amounts">What each date adds, in the measure's unit.</param>
    public static PathChart? Of(Forecast forecast, Measure measure, IReadOnlyDictionary<DateOnly, int> amounts, DayRange days, DateOnly today)
    {
        if (forecast.Outlook is not { } outlook)
            return null;
        var now = today < days.First ? days.First : today;
        var past = Past(amounts, days, now, measure);
        var ahead = outlook.Path.Select(w => new PathPoint(w.Until, null, new(w.Total.P10, measure), new(w.Total.P50, measure), new(w.Total.P90, measure))).ToList();
        var start = new PathPoint(now, past[^1].Logged, past[^1].Logged, past[^1].Logged, past[^1].Logged);
        var last = ahead[^1].Date;
        var highest = Math.Max(forecast.Target, ahead[^1].High!.Value.Value);
        var unit = measure == Measure.Minutes ? 60 : 1;
        var step = ChartScale.Step((highest + unit - 1) / unit);
        var lines = ((highest + unit - 1) / unit + step - 1) / step;
        var perValue = (StackedBars.Base - StackedBars.Top) / (double)(lines * step * unit);
        var span = Math.Max(1, last.DayNumber - days.First.DayNumber);

        double X(DateOnly date) => Round(StackedBars.Left + (StackedBars.Right - StackedBars.Left) * (date.DayNumber - days.First.DayNumber) / (double)span);
        double Y(int value) => Round(StackedBars.Base - value * perValue);
        string Corners(IEnumerable<(DateOnly Date, int Value)> points) =>
            string.Join(" L", points.Select(p => string.Create(CultureInfo.InvariantCulture, $"{X(p.Date)} {Y(p.Value)}")));

        PathPoint[] band = [start, .. ahead];
        return new PathChart(
            [.. past, .. ahead],
            "M" + Corners(past.Select(p => (p.Date, p.Logged!.Value.Value))),
            "M" + Corners(band.Select(p => (p.Date, p.High!.Value.Value)).Concat(band.Reverse().Select(p => (p.Date, p.Low!.Value.Value)))) + " Z",
            "M" + Corners(band.Select(p => (p.Date, p.Middle!.Value.Value))),
            Y(forecast.Target),
            new Quantity(forecast.Target, measure).ToString(),
            [.. Enumerable.Range(0, lines + 1).Select(i => new ScaleLine(Y(i * step * unit), (i * step).ToString("N0", CultureInfo.InvariantCulture)))],
            [.. Month.Through(new DayRange(days.First, last)).Where(m => days.First <= m.Days.First.AddDays(14) && m.Days.First.AddDays(14) <= last).Select(m => new BarLetter(X(m.Days.First.AddDays(14)), m.Label[..1]))],
            Describe(forecast, outlook, measure, past[^1]));
    }

    private static List<PathPoint> Past(IReadOnlyDictionary<DateOnly, int> amounts, DayRange days, DateOnly now, Measure measure)
    {
        var points = new List<PathPoint> { new(days.First, new Quantity(0, measure), null, null, null) };
        for (var week = Week.Of(days.First); week.Days.First <= now; week = week.Next)
        {
            var until = week.Days.Last < now ? week.Days.Last : now;
            var total = amounts.Where(a => a.Key >= days.First && a.Key <= until).Sum(a => a.Value);
            points.Add(new PathPoint(until, new Quantity(total, measure), null, null, null));
        }

        return points;
    }

    private static string Describe(Forecast forecast, Outlook outlook, Measure measure, PathPoint now)
    {
        Quantity Of(int value) => new(value, measure);
        return $"So far {now.Logged}. By {outlook.Path[^1].Until.Plain()} the total lies between {Of(outlook.YearEnd.P10).Figure} and {Of(outlook.YearEnd.P90)} in eight of ten cases, in the middle at {Of(outlook.YearEnd.P50).Figure}; {Of(forecast.Target).Figure} are asked. The same numbers stand in the table below.";
    }

    private static double Round(double value) => Math.Round(value, 2);
}
