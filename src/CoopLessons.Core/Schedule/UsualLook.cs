namespace CoopLessons.Core.Schedule;

/// <summary>How a wait is looked after where nothing more is known. Common practice, no source.</summary>
public static class UsualLook
{
    /// <summary>A wait of half a day and more ends on another day, or when nobody teaches any more: it binds no hour of this one.</summary>
    private const int LongestWithinADay = 240;
    private const int Look = Demand.UsualLook;

    /// <summary>Null where nothing waits, or where it waits beyond the day's lessons.</summary>
    public static WaitAndLook? After(int waitingMinutes) => waitingMinutes is <= 0 or > LongestWithinADay
        ? null
        : new WaitAndLook(waitingMinutes, Look, waitingMinutes < 60 ? 15 : 30);
}
