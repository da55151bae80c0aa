using CoopLessons.Data.Planning.Futures;
using CoopLessons.Web.Pages.Units;

namespace CoopLessons.Web.Pages.Week.Ways;

/// <summary>The three ways on, as they are called and told.</summary>
public static class WayWords
{
    public static (string Heading, string Tells) Of(Future future, Upset upset) => future.Kind switch
    {
        FutureKind.Shift when upset.IsLongerUnit => ("Everything a week later", "From next week on the unit and those behind it come a week later; nothing of them is lost."),
        FutureKind.Thin when upset.IsLongerUnit => ("Let them overlap", "The unit ends a week later; those behind it begin on their day, beside it."),
        FutureKind.LetGo when upset.IsLongerUnit => ("End on its day", "What the weeks up to this one still hold is left out; the rest stays where it is."),
        FutureKind.Shift when upset.Lost.Count == 0 => ("Put it off", "What was hit goes to the next teaching day and finds an hour there."),
        FutureKind.Shift => (
            upset.Lost.Count == 1 ? "Everything a day later" : $"Everything {upset.Lost.Count} days later",
            "The activities of the units keep their order and come later; nothing of them is lost."),
        FutureKind.Thin => ("Thin it out", "The end stays. What fits goes into the days of the week that are left; the rest is let go."),
        _ => ("Let it go", "What was hit is let go. Nothing else moves."),
    };

    /// <summary>What it costs, a line each.</summary>
    public static IEnumerable<string> Costs(WayView way, DateOnly today)
    {
        var future = way.Future;
        yield return future.LetGo.Count == 0 ? "No activity is let go." : $"{UnitWords.Count(future.LetGo.Count, "activity is", "activities are")} let go: {string.Join(", ", future.LetGo)}.";
        if (future.Resuming.Count > 0)
            yield return $"Go on later where they stopped: {string.Join(", ", future.Resuming)}.";
        yield return future.Moved == 0 ? "Nothing moves to another day." : $"{UnitWords.Count(future.Moved, "session moves", "sessions move")} to another day.";
        if (future.NoHour.Count > 0)
            yield return $"On their day without an hour: {string.Join(", ", future.NoHour)}.";
        foreach (var end in future.Ends)
        {
            yield return end.Before == end.After
                ? $"{end.Title} still ends on {UnitWords.Date(end.After, today)}."
                : $"{end.Title} ends on {UnitWords.Date(end.After, today)} instead of {UnitWords.Date(end.Before, today)}.";
        }
    }
}
