using CoopLessons.Core.Calendar;

namespace CoopLessons.Core.Requirements.Duties;

/// <summary>The twelve months that duties are asked about, around a family's school year.</summary>
internal sealed class DutyYear
{
    public DutyYear(TeachingCalendar calendar)
    {
        Calendar = calendar;
        // A school year of the autumn takes the summer before it along, in which notices and plans fall due and forms arrive.
        var july = new DateOnly(First.Year, 7, 1);
        var first = First.Month >= 7 ? july : First;
        var last = first.AddYears(1).AddDays(-1);
        Reach = new DayRange(first, Last > last ? Last : last);
        // One that begins shortly before July is the year of that July; one that begins in winter is a calendar year,
        // whose own days hold every date once.
        DatesFrom = First.Month is >= 4 and <= 6 ? july : first;
    }

    public TeachingCalendar Calendar { get; }
    public DateOnly First => Calendar.Year.First;
    public DateOnly Last => Calendar.Year.Last;

    /// <summary>From 1 July, or from the school year's first day where that is earlier in the year, for twelve months at least.</summary>
    public DayRange Reach { get; }

    /// <summary>A date of every year is the first one on or after this day.</summary>
    public DateOnly DatesFrom { get; }

    /// <summary>
    /// Whether a beginning on the day is this year's. June counts for the coming year: a family that begins
    /// after its last school year has ended would find its first notice in neither.
    /// </summary>
    public bool Opens(DateOnly day) => day >= Reach.First.AddMonths(-1) && day <= Reach.Last;
}
