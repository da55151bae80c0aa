using CoopLessons.Core.Calendar;

namespace CoopLessons.Data.Scenario;

/// <summary>
/// A family's log up to yesterday, made up week by week. Each week draws from a stream of its own, so that a later today
/// leaves the weeks before it as they were.
/// </summary>
internal sealed class HouseholdLog(Household house, DateOnly today)
{
    private const int PurposeOfWeeks = 1;
    private readonly Pen _pen = new(house, today);

    public IReadOnlyList<Draft> Write() => [.. house.Family.Years.SelectMany(Write)];

    /// <summary>The activities of the units that are laid on the days of a week; a week may lie in two school years.</summary>
    public static IReadOnlyList<PlacedActivity> PlacedIn(Household house, Week week)
    {
        var years = house.Family.Years.Select(y => (Year: y, y.Calendar)).ToList();
        var days = week.Days.Days().Where(d => years.Any(y => y.Calendar.IsTeachingDay(d))).ToList();
        return [.. house.Runs.SelectMany(r => r.Placed(house, days, d => years.Any(y => y.Year.IsSick(d))))];
    }

    private List<Draft> Write(CoopYear year)
    {
        var calendar = year.Calendar;
        var pace = new Pace(year, calendar);
        var drafts = new List<Draft>();
        for (var week = Week.Of(year.First); week.Monday <= year.Last && week.Monday < today; week = week.Next)
        {
            var chance = house.ChanceFor(PurposeOfWeeks, Math.Max(week.Monday.DayNumber, year.First.DayNumber));
            var days = week.Days.Days().Where(calendar.Year.Contains).ToList();
            var teaching = days.Where(d => calendar.IsTeachingDay(d) && !year.IsSick(d)).ToList();
            var turns = Turns(teaching, chance);
            var placed = PlacedIn(house, week);
            var lines = new List<Line>();
            foreach (var date in days)
            {
                var page = new DayPage(house, date, pace, chance);
                Fill(page, pace, year, calendar, placed, turns);
                lines.AddRange(page.Lines.OrderBy(l => l.From));
            }

            drafts.AddRange(_pen.Write([.. lines.Where(l => l.Date < today)], chance));
        }

        return drafts;
    }

    private void Fill(DayPage page, Pace pace, CoopYear year, TeachingCalendar calendar, IReadOnlyList<PlacedActivity> placed, Dictionary<DateOnly, HashSet<string>> turns)
    {
        var extras = house.Family.Extras.Where(e => e.Date == page.Date).ToList();
        foreach (var extra in extras)
            page.Write(extra);
        if (extras.Count > 0)
            return;
        var lessons = new DayOfLessons(house, page);
        if (year.IsSick(page.Date))
        {
            lessons.Rest();
        }
        else if (calendar.IsTeachingDay(page.Date))
        {
            pace.BeginDay();
            lessons.Teach(placed, turns[page.Date], house.Runs.Any(r => r.RunsOn(page.Date)));
        }
        else
        {
            lessons.BeFree(page.Date.DayOfWeek is DayOfWeek.Saturday or DayOfWeek.Sunday ? 13 : 5);
        }
    }

    /// <summary>Whose turn it is on which day: each course on its number of days, fewer in a short week.</summary>
    private Dictionary<DateOnly, HashSet<string>> Turns(List<DateOnly> teaching, Chance chance)
    {
        var turns = teaching.ToDictionary(d => d, _ => new HashSet<string>());
        foreach (var course in house.Coop.Courses.Where(c => c.How != CourseHow.Filler && c.IsHeldBy(house.Family.Name)))
        {
            var exact = course.PerWeek * teaching.Count / 5.0;
            var held = (int)exact + (chance.In((exact - (int)exact) * 100) ? 1 : 0);
            foreach (var date in chance.Shuffled(teaching).Take(held))
                turns[date].Add(course.Code);
        }

        return turns;
    }
}
