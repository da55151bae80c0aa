using CoopLessons.Core.Schedule;
using CoopLessons.Data.Planning;
using CoopLessons.Web.Pages.Today;
using CoopLessons.Web.Pages.Units;

namespace CoopLessons.Web.Pages.Planning;

/// <summary>The words in which what is planned with is spoken of.</summary>
public static class PlanWords
{
    public static string Of(AppointmentKind kind) => kind switch
    {
        AppointmentKind.CoOp => "co-op day",
        AppointmentKind.LessonOut => "lesson out",
        AppointmentKind.Nap => "nap",
        _ => "away",
    };

    public static string Of(RepeatHow how) => how switch
    {
        RepeatHow.Once => "once only",
        RepeatHow.Weekly => "every week",
        RepeatHow.EveryOtherWeek => "every other week",
        _ => "by a rule of your own",
    };

    public static string TimesAWeek(int times) => times switch { 1 => "once a week", 2 => "twice a week", 7 => "every day", _ => $"{times} times a week" };

    /// <summary>“Science on Wednesdays, before noon”.</summary>
    public static string Of(WeeklyWish wish, PlanChoices choices)
    {
        var what = wish.Kind is { } kind ? UnitWords.Of(kind) : choices.SubjectName(wish.SubjectId);
        var words = char.ToUpperInvariant(what.FirstOrDefault('?')) + what[Math.Min(1, what.Length)..];
        return words + (wish.Day is { } day ? $" on {day}s" : "") + (wish.Morning ? wish.Day is null ? " before noon" : ", before noon" : "");
    }

    /// <summary>Where the bookmark of a course lies.</summary>
    public static string Bookmark(Course course) =>
        course.LessonAhead(0) is { } next ? course.Lessons is { } last ? $"next is lesson {next} of {last}" : $"next is lesson {next}" : $"all {course.Lessons} lessons are done";

    /// <summary>“12:45–14:30”.</summary>
    public static string Time(Appointment appointment) => $"{DayWords.Clock(appointment.StartsAt)}–{(appointment.Time.To == 1440 ? "24:00" : DayWords.Clock(appointment.Time.To))}";

    /// <summary>Hours of a week, days with the same hours together: “Monday to Friday 8:30–12:00, 13:00–15:00”.</summary>
    public static IReadOnlyList<string> Of(WeekHours hours)
    {
        var lines = new List<(List<DayOfWeek> Days, string Text)>();
        foreach (var day in WeekHours.FromMonday.Where(d => hours.On(d).Count > 0))
        {
            var text = HoursText.Write(hours.On(day));
            if (lines.FirstOrDefault(l => l.Text == text).Days is { } same)
                same.Add(day);
            else
                lines.Add(([day], text));
        }

        return lines.Count == 0 ? ["none"] : [.. lines.Select(l => $"{Days(l.Days)} {l.Text}")];
    }

    /// <summary>Who is taken up by an appointment: children as everywhere, then grown-ups.</summary>
    public static string Who(Appointment appointment, PlanChoices choices)
    {
        var children = choices.Learners.Where(l => appointment.Learners.Contains(l.Id)).ToList();
        var adults = choices.Adults.Where(a => appointment.Adults.Contains(a.Id)).Select(a => a.Name).ToList();
        var names = DayWords.Who(children, choices.Taught);
        return adults.Count == 0 ? names : names.Length == 0 ? DayWords.Names(adults) : $"{names}, with {DayWords.Names(adults)}";
    }

    private static string Days(List<DayOfWeek> days)
    {
        var places = days.Select(d => WeekHours.FromMonday.ToList().IndexOf(d)).ToList();
        return days.Count > 2 && places[^1] - places[0] == days.Count - 1 ? $"{days[0]} to {days[^1]}" : DayWords.Names(days.Select(d => d.ToString()));
    }
}
