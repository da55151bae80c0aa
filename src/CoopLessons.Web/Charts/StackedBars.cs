using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;

namespace CoopLessons.Web.Charts;

/// <summary>One part of every bar: a name and its minutes in each month.</summary>
public sealed record BarSeries(string Name, IReadOnlyList<Minutes> Values)
{
    public Minutes Total => Values.Sum();
}

/// <summary>A rectangle of the drawing.</summary>
/// <param name="Fill">Class of its fill, <c>s1</c> to <c>s8</c>.</param>
/// <param name="Words">What it stands for, as one line.</param>
public sealed record BarPiece(string Fill, double X, double Y, double Width, double Height, string Words);

/// <summary>A line across the drawing with what it says at its left.</summary>
public sealed record ScaleLine(double Y, string Text);

/// <summary>A month's letter under its bar.</summary>
public sealed record BarLetter(double X, string Text);

/// <summary>
/// Hours by subject over the months as stacked bars, 480 by 300 units: numbers in, places of lines and rectangles out.
/// The largest series stands lowest. At most eight fills can be told apart: of more series, the seven largest are drawn
/// and the others together.
/// </summary>
public sealed record StackedBars(
    IReadOnlyList<BarSeries> Series,
    IReadOnlyList<BarPiece> Pieces,
    IReadOnlyList<ScaleLine> Scale,
    IReadOnlyList<BarLetter> Letters,
    string Description)
{
    public const int Width = 480;
    public const int Height = 300;
    public const int Left = 64;
    public const int Right = 476;
    public const int Top = 16;
    public const int Base = 266;
    public const int MostFills = 8;

    // Narrower than this, neighbouring letters would touch on a phone.
    private const double NarrowestLetter = 22;

    /// <param name="months">In order, at least one.</param>
    /// <param name="series">Each with one value a month.</param>
    public static StackedBars Of(IReadOnlyList<Month> months, IReadOnlyList<BarSeries> series)
    {
        var drawn = Largest(series);
        var sums = months.Select((_, i) => drawn.Select(s => s.Values[i]).Sum()).ToList();
        var highest = sums.Max();
        var hoursALine = ChartScale.Step((highest.Value + 59) / 60);
        var lines = Math.Max(1, (highest.Value + hoursALine * 60 - 1) / (hoursALine * 60));
        var unitsAMinute = (Base - Top) / (lines * hoursALine * 60.0);

        var step = (Right - Left) / (double)months.Count;
        var wide = Math.Min(26, step * .75);
        var pieces = new List<BarPiece>();
        for (var m = 0; m < months.Count; m++)
        {
            var below = Minutes.Zero;
            for (var s = 0; s < drawn.Count; s++)
            {
                var minutes = drawn[s].Values[m];
                if (minutes == Minutes.Zero)
                    continue;
                below += minutes;
                pieces.Add(new BarPiece(
                    $"s{s + 1}", Round(Left + m * step + (step - wide) / 2), Round(Base - below.Value * unitsAMinute),
                    Round(wide), Round(minutes.Value * unitsAMinute), $"{drawn[s].Name}, {months[m].Label}: {minutes.Clock}"));
            }
        }

        var every = (int)Math.Ceiling(NarrowestLetter / step);
        return new StackedBars(
            drawn,
            pieces,
            [.. Enumerable.Range(0, lines + 1).Select(i => new ScaleLine(Round(Base - i * hoursALine * 60 * unitsAMinute), $"{i * hoursALine} h"))],
            [.. months.Index().Where(m => m.Index % every == 0).Select(m => new BarLetter(Round(Left + (m.Index + .5) * step), m.Item.Label[..1]))],
            Describe(months, sums));
    }

    /// <summary>The series with minutes, largest first; beyond eight, the seven largest and the rest as one.</summary>
    private static List<BarSeries> Largest(IReadOnlyList<BarSeries> series)
    {
        var all = series.Where(s => s.Total > Minutes.Zero).OrderByDescending(s => s.Total).ToList();
        if (all.Count <= MostFills)
            return all;
        var rest = all[(MostFills - 1)..];
        var together = rest[0].Values.Select((_, i) => rest.Select(s => s.Values[i]).Sum()).ToList();
        return [.. all[..(MostFills - 1)], new BarSeries($"{rest.Count} others", together)];
    }

    private static string Describe(IReadOnlyList<Month> months, List<Minutes> sums)
    {
        var highest = sums.Max();
        var span = months.Count == 1 ? $"One bar for {months[0].Label}" : $"One bar a month from {months[0].Label} to {months[^1].Label}";
        var most = highest == Minutes.Zero ? "Nothing was logged." : $"The most is {highest.Clock} in {months[sums.IndexOf(highest)].Label}.";
        return $"{span}, each divided by subject. {most} The same numbers stand in the tables of this page.";
    }

    private static double Round(double value) => Math.Round(value, 2);
}
