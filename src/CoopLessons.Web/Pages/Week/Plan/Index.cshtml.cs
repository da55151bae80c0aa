using CoopLessons.Core.Calendar;
using CoopLessons.Data;
using CoopLessons.Data.Planning;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Planning;

/// <summary>Everything besides the units with which the family plans its weeks.</summary>
public sealed class IndexModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    private const int DaysAhead = 400;

    public PlanChoices Choices { get; private set; } = PlanChoices.None;
    public IReadOnlyList<Course> Courses { get; private set; } = [];
    public IReadOnlyList<LessonLoop> Loops { get; private set; } = [];
    public IReadOnlyList<Appointment> Appointments { get; private set; } = [];
    public IReadOnlyList<WeeklyWish> Wishes { get; private set; } = [];
    public TeachingHours Hours { get; private set; } = null!;
    public IReadOnlyDictionary<Guid, int> Sittings { get; private set; } = new Dictionary<Guid, int>();

    /// <summary>The next day of an appointment, today included; null where none is to come within a year.</summary>
    public DateOnly? Next(Appointment appointment) =>
        appointment.DaysIn(new DayRange(Today, Today.AddDays(DaysAhead))).Select(d => (DateOnly?)d).FirstOrDefault();

    public string Who(IEnumerable<Guid> learners) =>
        Pages.Today.DayWords.Who([.. Choices.Learners.Where(l => learners.Contains(l.Id))], Choices.Taught);

    public async Task OnGetAsync()
    {
        Choices = await PlanChoices.LoadAsync(Db, Ct);
        Courses = await Db.Courses.AsNoTracking().OrderBy(c => c.SetAside).ThenBy(c => c.Title).ThenBy(c => c.Id).ToListAsync(Ct);
        Loops = await Db.Loops.AsNoTracking().OrderBy(l => l.SetAside).ThenBy(l => l.Title).ThenBy(l => l.Id).ToListAsync(Ct);
        Appointments = await Db.Appointments.AsNoTracking().OrderBy(a => a.Title).ThenBy(a => a.First).ThenBy(a => a.Id).ToListAsync(Ct);
        Wishes = await Db.Wishes.AsNoTracking().OrderBy(w => w.Id).ToListAsync(Ct);
        Hours = await TeachingHours.LoadAsync(Db, Today, Ct);
        Sittings = await Db.Sittings.AsNoTracking().ToDictionaryAsync(s => s.LearnerId, s => s.Minutes, Ct);
    }
}
