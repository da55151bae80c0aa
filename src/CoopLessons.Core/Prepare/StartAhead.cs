using CoopLessons.Core.Units;

namespace CoopLessons.Core.Prepare;

/// <summary>The days of something begun ahead, counted back from the day that needs it.</summary>
/// <param name="From">The first day on which it can be begun and still be good on the day; null where it keeps as long as one likes.</param>
/// <param name="By">The last day on which it can be begun and be ready on the day.</param>
/// <param name="TendOn">When somebody sees to it if it is begun on the last day: after its beginning and before the day that needs it.</param>
public sealed record AheadDates(DateOnly? From, DateOnly By, IReadOnlyList<DateOnly> TendOn);

/// <summary>How something that was begun meets the day that needs it now.</summary>
public enum AheadOutcome { InTime, NotReadyYet, PastItsTime }

/// <summary>Something that was begun.</summary>
/// <param name="KeepsUntil">The last day on which it is good; null where it keeps.</param>
/// <param name="Slid">By how many days the day that needs it moved since it was begun; below zero where it came nearer.</param>
/// <param name="DaysOff">How many days it lacks, or is past its time; 0 where it is in time.</param>
/// <param name="TendOn">Every day on which somebody sees to it, from after its beginning to before the day that needs it.</param>
public sealed record AheadUnderway(DateOnly ReadyOn, DateOnly? KeepsUntil, int Slid, AheadOutcome Outcome, int DaysOff, IReadOnlyList<DateOnly> TendOn)
{
    /// <summary>Whether somebody should think about it: the day moved, or it will not be right on the day.</summary>
    public bool NeedsThought => Slid != 0 || Outcome != AheadOutcome.InTime;
}

/// <summary>
/// What is begun days before an activity. Everything is counted from the day of the activity, so that all of it slides when
/// that day does; what was begun already cannot slide, and is told apart.
/// </summary>
public static class StartAhead
{
    /// <param name="neededOn">The day of the activity.</param>
    public static AheadDates Of(AheadStart start, DateOnly neededOn)
    {
        var by = neededOn.AddDays(-start.TakesDays);
        DateOnly? from = start.KeepsDays is { } keeps ? by.AddDays(-keeps) : null;
        return new AheadDates(from, by, Tending(start, by, neededOn));
    }

    /// <param name="begunOn">The day on which it was begun.</param>
    /// <param name="meantFor">The day of the activity as it stood then.</param>
    /// <param name="neededOn">The day of the activity as it stands now.</param>
    public static AheadUnderway Underway(AheadStart start, DateOnly begunOn, DateOnly meantFor, DateOnly neededOn)
    {
        var ready = begunOn.AddDays(start.TakesDays);
        DateOnly? until = start.KeepsDays is { } keeps ? ready.AddDays(keeps) : null;
        var (outcome, off) = ready > neededOn ? (AheadOutcome.NotReadyYet, ready.DayNumber - neededOn.DayNumber)
            : until < neededOn ? (AheadOutcome.PastItsTime, neededOn.DayNumber - until.Value.DayNumber)
            : (AheadOutcome.InTime, 0);
        return new AheadUnderway(ready, until, neededOn.DayNumber - meantFor.DayNumber, outcome, off, Tending(start, begunOn, neededOn));
    }

    private static List<DateOnly> Tending(AheadStart start, DateOnly begunOn, DateOnly neededOn)
    {
        var days = new List<DateOnly>();
        if (start.TendEveryDays > 0)
        {
            for (var day = begunOn.AddDays(start.TendEveryDays); day < neededOn; day = day.AddDays(start.TendEveryDays))
                days.Add(day);
        }

        return days;
    }
}
