using System.Globalization;
using CoopLessons.Core.Schedule;
using CoopLessons.Data.Planning;

namespace CoopLessons.Data.Scenario;

/// <summary>Writes what a family of the scenario plans with. Ids come from no stream, so that the log's stay what they are.</summary>
internal sealed class PlanningOfFamily(AppDb db, Household house, CoopFamilyPlan told)
{
    private const int ClassesHeld = 3;
    private readonly Dictionary<string, Guid> _learners = house.Children.ToDictionary(c => c.Child.Name, c => c.Id);
    private readonly Dictionary<string, Guid> _adults = told.Adults.ToDictionary(a => a.Name, _ => Guid.CreateVersion7());

    /// <summary>Adds everything to the unit of work. Nothing is saved here.</summary>
    public void Add()
    {
        AddAdults();
        AddHours();
        foreach (var c in told.Courses)
            db.Courses.Add(new Course(Guid.CreateVersion7(), new CourseFacts(c.Title, house.Subjects[c.Subject], Learners(c.Learners), c.Minutes, c.PerWeek, c.Need, c.Lessons, c.NextLesson, c.Morning)));
        foreach (var l in told.Loops)
            AddLoop(l);
        foreach (var a in told.Appointments)
            db.Appointments.Add(new Appointment(Guid.CreateVersion7(), new AppointmentFacts(a.Title, a.Kind, Learners(a.Learners), Adults(a.Adults), a.First, Minute(a.At), a.Minutes, a.Repeats, [], a.Subject is { } code ? house.Subjects[code] : null)));
        AddCoOpDays();
        foreach (var (name, minutes) in told.Sittings)
            db.Sittings.Add(new LearnerSitting(_learners[name], minutes));
        foreach (var w in told.Wishes)
            db.Wishes.Add(new WeeklyWish(Guid.CreateVersion7(), w.Subject is { } code ? house.Subjects[code] : null, w.Kind, w.Day, w.Morning));
    }

    private void AddAdults()
    {
        foreach (var (order, adult) in told.Adults.Index())
        {
            var email = house.Family.Adults.Index().Single(a => a.Item.Email == adult.Email).Index;
            db.TeachingAdults.Add(new TeachingAdult(_adults[adult.Name], adult.Name, house.Adults[email].PersonId, adult.Phone, order));
            if (adult.Hours is { } hours)
                db.DayPatterns.Add(new DayPattern(_adults[adult.Name], Hours(hours)));
        }
    }

    private void AddHours()
    {
        if (told.Hours.Count > 0)
            db.DayPatterns.Add(new DayPattern(null, Hours(told.Hours)));
        foreach (var (name, hours) in told.LearnerHours)
            db.DayPatterns.Add(new DayPattern(_learners[name], Hours(hours)));
    }

    private void AddLoop(CoopLoop kept)
    {
        var steps = kept.Steps.Select(s => new LoopStep(Guid.CreateVersion7(), s.Title, house.Subjects[s.Subject])).ToList();
        var loop = new LessonLoop(Guid.CreateVersion7(), new LoopFacts(kept.Title, steps, kept.Minutes, kept.PerWeek, Learners(kept.Learners), kept.Need, kept.Morning));
        loop.GoTo(steps[kept.Next].Id);
        db.Loops.Add(loop);
    }

    /// <summary>The co-op day of each term, without the days that lie in a break of the family's.</summary>
    private void AddCoOpDays()
    {
        var meeting = house.Coop.Meeting;
        foreach (var term in meeting.Terms)
        {
            var days = term.Days.Days().Where(d => d.DayOfWeek == meeting.Day).ToList();
            var away = days.Where(d => house.Family.Years.Any(y => y.Calendar.BreakOn(d) is not null)).ToList();
            var rule = string.Create(CultureInfo.InvariantCulture, $"FREQ=WEEKLY;BYDAY={meeting.Day.ToString()[..2].ToUpperInvariant()};UNTIL={days[^1]:yyyyMMdd}");
            db.Appointments.Add(new Appointment(Guid.CreateVersion7(), new AppointmentFacts(
                $"Co-op at the mill, {term.Name}", AppointmentKind.CoOp, Learners(told.CoOp.Learners), Adults(told.CoOp.Adults),
                days[0], Minute(meeting.At), ClassesHeld * meeting.Minutes, rule, away, null)));
        }
    }

    private List<Guid> Learners(IEnumerable<string> names) => [.. names.Select(n => _learners[n])];

    private List<Guid> Adults(IEnumerable<string> names) => [.. names.Select(n => _adults[n])];

    private static int Minute(TimeOnly at) => at.Hour * 60 + at.Minute;

    private static WeekHours Hours(IReadOnlyDictionary<DayOfWeek, string> told) => new(told.ToDictionary(
        h => h.Key, h => HoursText.TryRead(h.Value, out var stretches, out var fault) ? stretches : throw new InvalidDataException($"planning.json, {h.Key}: {fault}")));
}
