using CoopLessons.Core.Calendar;
using CoopLessons.Core.Schedule;
using CoopLessons.Core.Units;
using CoopLessons.Data.Families;
using CoopLessons.Data.Schedule;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Planning;

/// <summary>Reads what a week holds and asks for, and states it as a problem. The only way to one.</summary>
public sealed class WeekReading
{
    private readonly Week _week;
    private readonly DateOnly _today;
    private readonly int _now;
    private readonly WeekAsk _ask;
    private readonly List<DateOnly> _days;
    private readonly List<Learner> _learners;
    private readonly List<TeachingAdult> _adults;
    private readonly TeachingHours _hours;
    private readonly List<Appointment> _appointments;
    private readonly Dictionary<Guid, int> _sittings;
    private readonly List<WeeklyWish> _wishes;
    private readonly WeekWants _wants;
    private readonly DateOnly _nextWeek;

    private WeekReading(Week week, DateOnly today, int now, WeekAsk ask, Read read)
    {
        (_week, _today, _now, _ask) = (week, today, now, ask);
        (_days, _learners, _adults, _hours) = (read.Days, read.Learners, read.Adults, read.Hours);
        (_appointments, _sittings, _wishes, _wants, _nextWeek) = (read.Appointments, read.Sittings, read.Wishes, read.Wants, read.NextWeek);
    }

    /// <param name="now">Minutes after midnight, counted on today alone.</param>
    /// <param name="ask">What the parent says of the week beforehand.</param>
    /// <returns>Null where the week has no day left on which something could be taught.</returns>
    public static async Task<WeekAtHand?> LoadAsync(AppDb db, Week week, DateOnly today, int now, WeekAsk ask, CancellationToken ct)
    {
        var calendar = await TeachingDays.LoadAsync(db, ct);
        var days = week.Days.Days().Where(d => d >= today && calendar.Holds(d) && !ask.Lost.Contains(d)).ToList();
        if (days.Count == 0)
            return null;
        var last = days[^1];
        var learners = await db.Learners.AsNoTracking().Where(l => !l.SetAside).OrderBy(l => l.Order).ThenBy(l => l.Id).ToListAsync(ct);
        var read = new Read(
            days,
            learners,
            await db.TeachingAdults.AsNoTracking().Where(a => !a.SetAside).OrderBy(a => a.Order).ThenBy(a => a.Id).Take(WeekProblem.MostAdults).ToListAsync(ct),
            await TeachingHours.LoadAsync(db, days[0], ct),
            await db.Appointments.AsNoTracking().Where(a => a.First <= last).OrderBy(a => a.Id).ToListAsync(ct),
            await db.Sittings.AsNoTracking().ToDictionaryAsync(s => s.LearnerId, s => s.Minutes, ct),
            await db.Wishes.AsNoTracking().OrderBy(w => w.Id).ToListAsync(ct),
            await WeekWants.LoadAsync(db, week, days, today, learners, ask, ct),
            calendar.After(week.Days.Last, 1)[0]);
        return new WeekReading(week, today, now, ask, read).Stated();
    }

    private WeekAtHand Stated()
    {
        var wanted = _wants.All.Select(w => _ask.Shorter.TryGetValue(w.Key, out var minutes) ? w with { Minutes = minutes, OwnMinutes = minutes } : w).ToList();
        var omitted = wanted.Where(w => _ask.Omits(w.Key)).ToList();
        var kept = wanted.Except(omitted).Where(w => w.Learners.Count > 0).ToList();
        var adults = _adults.Count > 0
            ? _adults.Select(a => new WeekAdult(a.Id, a.Name, Free(_hours.Of(a.Id), x => x.Adults.Contains(a.Id)))).ToList()
            : [new WeekAdult(WeekAtHand.Somebody, "you", Free(_hours.Family, _ => false))];
        var problem = new WeekProblem(
            _days,
            [.. _learners.Select(l => new WeekLearner(l.Id, l.Name, _sittings.GetValueOrDefault(l.Id, Sittings.Proposed(l.AgeOn(_days[0]))), Free(_hours.Of(l.Id), x => x.Learners.Contains(l.Id))))],
            adults,
            [.. kept.Select(w => Session(w, kept))]);
        return new WeekAtHand(_week, _today, _now, _ask, problem, kept, omitted, _learners, _adults, _nextWeek, FixedPoints());
    }

    private WeekSession Session(Wanted wanted, List<Wanted> all)
    {
        var stands = wanted.Session;
        var isThere = stands is not null && _days.Contains(stands.Date) && stands.State == SessionState.Planned;
        // Where it was said to stand on another day, the hour set by hand is no longer meant.
        var isPinned = isThere && stands!.Pinned && wanted.MustBeOn is null;
        var after = _wants.Before(wanted, all);
        return new WeekSession(
            wanted.SessionId, wanted.Title, wanted.Subjects.Count > 0 ? wanted.Subjects[0].ToString("N") : null, wanted.Learners, wanted.Minutes,
            _ask.Helped.Contains(wanted.Key) ? AdultNeed.Alone : wanted.Need)
        {
            // Courses go on all year and keep their pace; a loop waits without harm.
            Weight = wanted.Source.CourseId is not null ? Weight.AboveAll : wanted.Source.LoopId is not null ? Weight.IfThereIsRoom : Weight.Usual,
            Wait = UsualLook.After(wanted.WaitingMinutes),
            After = [.. after.Within],
            Wish = Wish(wanted),
            Was = isThere ? new OldPlace(stands!.Date, stands.StartsAt ?? FirstHour(stands.Date), stands.LooksAt, Known(stands.AdultId)) : null,
            Fixed = isPinned && stands!.StartsAt is not null,
            Bound = BesideSmallOnes(wanted),
            OnlyOn = wanted.MustBeOn is { } only ? [only] : isPinned && stands!.StartsAt is null ? [stands.Date] : after.NotBefore is { } first ? [.. _days.Where(d => d >= first)] : null,
            Alike = stands is null && wanted.Source.ActivityId is null ? wanted.Source.Id.ToString("N") : null,
        };
    }

    private Guid? Known(Guid? adult) => _adults.Any(a => a.Id == adult) ? adult : null;

    private int FirstHour(DateOnly day) => _hours.Family.On(day.DayOfWeek) is { Count: > 0 } hours ? hours[0].From : 9 * 60;

    private SessionWish? Wish(Wanted wanted)
    {
        // What is said of a kind of work is nearer to the thing than what is said of its subject.
        var wish = _wishes.FirstOrDefault(w => w.Kind is { } kind && kind == wanted.Kind)
            ?? _wishes.FirstOrDefault(w => w.SubjectId is { } subject && wanted.Subjects.Contains(subject));
        var day = wish?.Day is { } wished && _days.Any(d => d.DayOfWeek == wished) ? wished : (DayOfWeek?)null;
        var morning = wish?.Morning == true || _wants.IsForTheMorning(wanted.Source);
        return day is null && !morning ? null : new SessionWish(day, morning);
    }

    private FreeTime Free(WeekHours hours, Func<Appointment, bool> concerns)
    {
        var busy = Busy(_appointments.Where(concerns));
        return Stretches.Over(_days, d => hours.On(d.DayOfWeek), d => d == _today && _now > 0 ? busy[d].Append(new Stretch(0, _now)) : busy[d]);
    }

    private List<FixedPoint> FixedPoints() =>
    [
        .. _appointments.SelectMany(a => a.DaysIn(new DayRange(_days[0], _days[^1])).Where(_days.Contains).Select(d => new FixedPoint(d, a)))
            .OrderBy(f => f.Date).ThenBy(f => f.Appointment.StartsAt).ThenBy(f => f.Appointment.Id),
    ];

    private ILookup<DateOnly, Stretch> Busy(IEnumerable<Appointment> appointments) =>
        appointments.SelectMany(a => a.DaysIn(new DayRange(_days[0], _days[^1])).Select(d => (Day: d, a.Time))).ToLookup(x => x.Day, x => x.Time);

    /// <summary>Small parts come out while every child under three sleeps or is out of the house.</summary>
    private BoundHours? BesideSmallOnes(Wanted wanted)
    {
        if (wanted.Activity is not { } activity || !SmallPartsInTheRoom.AreIn(activity.Details.Hazards))
            return null;
        var small = _learners.Where(l => SmallPartsInTheRoom.Matter([l.BirthDate], _days[0])).ToList();
        if (small.Count == 0)
            return null;
        var hours = _days.ToDictionary(d => d, d => small.Select(l => GoneOn(l, d)).Aggregate(Stretches.Both));
        return new BoundHours(new FreeTime(hours), $"while {Names(small)} {(small.Count == 1 ? "sleeps" : "sleep")} or {(small.Count == 1 ? "is" : "are")} out of the room, since it has small parts");
    }

    private IReadOnlyList<Stretch> GoneOn(Learner learner, DateOnly day) =>
        Stretches.Joined(Busy(_appointments.Where(a => a.Learners.Contains(learner.Id)))[day]);

    private static string Names(List<Learner> learners) =>
        learners.Count == 1 ? learners[0].Name : $"{string.Join(", ", learners.SkipLast(1).Select(l => l.Name))} and {learners[^1].Name}";

    private sealed record Read(
        List<DateOnly> Days, List<Learner> Learners, List<TeachingAdult> Adults, TeachingHours Hours, List<Appointment> Appointments,
        Dictionary<Guid, int> Sittings, List<WeeklyWish> Wishes, WeekWants Wants, DateOnly NextWeek);
}
