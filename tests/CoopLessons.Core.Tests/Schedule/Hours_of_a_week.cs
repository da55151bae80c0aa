using CoopLessons.Core.Calendar;
using CoopLessons.Core.Schedule;

namespace CoopLessons.Core.Tests.Schedule;

public class Hours_of_a_week
{
    /// <summary>Common practice, no source: two stretches on teaching days.</summary>
    [Fact]
    public void Are_proposed_on_teaching_days_alone()
    {
        var usual = WeekHours.Usual(Weekdays.Monday | Weekdays.Thursday);
        Assert.Equal([new Stretch(540, 720), new Stretch(780, 900)], usual.On(DayOfWeek.Thursday));
        Assert.Equal([DayOfWeek.Monday, DayOfWeek.Thursday], WeekHours.FromMonday.Where(d => usual.On(d).Count > 0));
    }

    [Fact]
    public void Come_back_on_each_date_of_the_same_weekday()
    {
        var hours = new WeekHours(new Dictionary<DayOfWeek, IReadOnlyList<Stretch>> { [DayOfWeek.Thursday] = [new(540, 600)] });
        var free = hours.Over(new DayRange(new DateOnly(2026, 3, 9), new DateOnly(2026, 3, 22)).Days());
        Assert.Equal([new DateOnly(2026, 3, 12), new DateOnly(2026, 3, 19)], free.Days.Where(d => d.Value.Count > 0).Select(d => d.Key));
        Assert.Equal(14, free.Days.Count);
    }

    [Fact]
    public void Are_equal_where_every_day_is()
    {
        var one = WeekHours.Usual(Weekdays.MondayToFriday);
        var other = new WeekHours(one.Days.Append(new(DayOfWeek.Sunday, [])).ToDictionary());
        Assert.Equal(one, other);
        Assert.Equal(one.GetHashCode(), other.GetHashCode());
        Assert.NotEqual(one, WeekHours.Usual(Weekdays.Monday));
        Assert.Equal(WeekHours.None, WeekHours.Usual(Weekdays.None));
    }
}
