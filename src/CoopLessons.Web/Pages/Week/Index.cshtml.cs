using CoopLessons.Core.Calendar;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Pages.Planning;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using IsoWeek = CoopLessons.Core.Calendar.Week;

namespace CoopLessons.Web.Pages.Week;

/// <summary>A day in the week's row.</summary>
/// <param name="Pause">The break in which it lies.</param>
public sealed record WeekDay(DateOnly Date, bool Teaching, Break? Pause, IReadOnlyList<PlannedWork> Work, IReadOnlyList<Appointment> Appointments)
{
    /// <summary>Work and appointments in the order of the day; an appointment stands before what begins with it.</summary>
    public IEnumerable<(PlannedWork? Work, Appointment? Appointment)> InOrder => Work.Select((w, i) => (At: w.Session.StartsAt ?? int.MaxValue, Kind: 1, i, Work: (PlannedWork?)w, Appointment: (Appointment?)null))
        .Concat(Appointments.Select((a, i) => (At: a.StartsAt, Kind: 0, i, Work: (PlannedWork?)null, Appointment: (Appointment?)a)))
        .OrderBy(x => x.At).ThenBy(x => x.Kind).ThenBy(x => x.i).Select(x => (x.Work, x.Appointment));
}

/// <summary>The days of a week beside each other, and what has no day yet.</summary>
public sealed class IndexModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    private PlanChoices _choices = PlanChoices.None;
    private IReadOnlyList<Learner> _learners = [];

    public IsoWeek Shown { get; private set; }

    /// <summary>Teaching days, days of a break that would be, and others on which something is planned.</summary>
    public IReadOnlyList<WeekDay> Days { get; private set; } = [];

    /// <summary>The rest of the week.</summary>
    public IReadOnlyList<WeekDay> Folded { get; private set; } = [];

    public IReadOnlyList<Unplaced> Unplaced { get; private set; } = [];

    /// <summary>Of the year that holds today; null between years.</summary>
    public YearSlack? Slack { get; private set; }

    /// <summary>A large step of planning that was taken a moment ago, with its way back.</summary>
    public PlanStep? Step { get; private set; }

    /// <summary>Spells of illness, by which a day says that its plan rests.</summary>
    public IllDays Ill { get; private set; } = new([], default);

    /// <summary>Whether any day lies outside every school year.</summary>
    public bool BetweenYears { get; private set; }

    public string Who(Appointment appointment) => PlanWords.Who(appointment, _choices);

    public string Who(PlannedWork work) =>
        DayWords.Who([.. _learners.Where(l => work.Session.Learners.Contains(l.Id))], [.. _learners.Where(l => !l.SetAside)]);

    /// <param name="week">As ISO 8601 writes it; without it, the week of today.</param>
    /// <param name="step">The step that was taken a moment ago.</param>
    public async Task<IActionResult> OnGetAsync(string? week, Guid? step)
    {
        var shown = IsoWeek.Of(Today);
        if (week is not null && !DayWords.TryWeek(week, out shown))
            return NotFound();
        Shown = shown;
        if (step is { } id)
        {
            Step = await Db.PlanSteps.AsNoTracking().SingleOrDefaultAsync(s => s.Id == id && !s.Undone, Ct);
            if (Step is null && !await Db.PlanSteps.AnyAsync(s => s.Id == id, Ct))
                return NotFound();
        }

        _choices = await PlanChoices.LoadAsync(Db, Ct);
        _learners = _choices.Learners;
        var appointments = (await FixedPoint.InAsync(Db, Shown.Days, Ct)).ToLookup(f => f.Date, f => f.Appointment);
        var calendar = await TeachingDays.LoadAsync(Db, Ct);
        var work = await Db.WorkAsync(Db.PlannedSessions.Where(s => s.Date >= Shown.Days.First && s.Date <= Shown.Days.Last), Ct, Today);
        var all = Shown.Days.Days().Select(d => new WeekDay(d, calendar.Holds(d), calendar.BreakOn(d), [.. work.Where(w => w.Session.Date == d)], [.. appointments[d]])).ToList();
        Days = [.. all.Where(d => d.Teaching || d.Work.Count > 0 || d.Appointments.Any(a => a.Kind != AppointmentKind.Nap) || d.Pause is not null && calendar.YearOf(d.Date)!.Weekdays.Holds(d.Date.DayOfWeek))];
        Folded = [.. all.Except(Days)];
        Ill = await IllDays.LoadAsync(Db, Shown.Monday, Today, Ct);
        BetweenYears = all.Any(d => calendar.YearOf(d.Date) is null);
        Unplaced = await Week.Unplaced.LoadAsync(Db, Shown.Monday, Ct);
        Slack = await YearSlack.LoadAsync(Db, Today, Ct);
        return Page();
    }
}
