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
    private readonly FamilyRoom _room;
    private readonly Dictionary<Guid, int> _sittings;
    private readonly List<WeeklyWish> _wishes;
    private readonly WeekWants _wants;

    private WeekReading(Week week, DateOnly today, int now, WeekAsk ask, Read read)
    {
        (_week, _today, _now, _ask) = (week, today, now, ask);
        (_days, _room, _sittings, _wishes, _wants) = (read.Days, read.Room, read.Sittings, read.Wishes, read.Wants);
    }

    /// <param name="now">Minutes after midnight, counted on today alone.</param>
    /// <param name="ask">What the parent says of the week beforehand.</param>
    /// <returns>Null where the week has no day left on which something could be taught.</returns>
    public static async Task<WeekAtHand?> LoadAsync(AppDb db, Week week, DateOnly today, int now, WeekAsk ask, CancellationToken ct)
    {
        var room = await FamilyRoom.LoadAsync(db, week.Days, ct);
        // While everybody is ill, nothing new begins today; what comes later may be well again.
        var first = (await IllDays.LoadAsync(db, today, today, ct)).Open is { Learners.Count: 0 } ? today.AddDays(1) : today;
        var days = room.DaysOf(week).Where(d => d >= first && !ask.Lost.Contains(d)).ToList();
        if (days.Count == 0)
            return null;
        var read = new Read(
            days,
            room,
            await db.Sittings.AsNoTracking().ToDictionaryAsync(s => s.LearnerId, s => s.Minutes, ct),
            await db.Wishes.AsNoTracking().OrderBy(w => w.Id).ToListAsync(ct),
            await WeekWants.LoadAsync(db, week, days, today, room.Learners, ask, ct));
        return new WeekReading(week, today, now, ask, read).Stated();
    }

    /// <summary>A layout reckons with so many; the first in the family's order teach.</summary>
    private List<TeachingAdult> Adults => [.. _room.Adults.Take(WeekProblem.MostAdults)];

    private WeekAtHand Stated()
    {
        var wanted = _wants.All.Select(w => _ask.Shorter.TryGetValue(w.Key, out var minutes) ? w with { Minutes = minutes, OwnMinutes = minutes } : w).ToList();
        var omitted = wanted.Where(w => _ask.Omits(w.Key)).ToList();
        var kept = wanted.Except(omitted).Where(w => w.Learners.Count > 0).ToList();
        var adults = Adults.Select(a => new WeekAdult(a.Id, a.Name, FromNow(_room.OfAdult(a.Id, _days)))).ToList();
        if (adults.Count == 0)
            adults.Add(new WeekAdult(WeekAtHand.Somebody, "you", FromNow(_room.OfFamily(_days))));
        var problem = new WeekProblem(
            _days,
            [.. _room.Learners.Select(l => new WeekLearner(l.Id, l.Name, _sittings.GetValueOrDefault(l.Id, Sittings.Proposed(l.AgeOn(_days[0]))), FromNow(_room.OfLearner(l.Id, _days))))],
            adults,
            [.. kept.Select(w => Session(w, kept))]);
        return new WeekAtHand(_week, _today, _now, _ask, problem, kept, omitted, _room.Learners, Adults, _room.DayAfter(_week.Days.Last), _room.AppointmentsOn(_days));
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

    private Guid? Known(Guid? adult) => Adults.Any(a => a.Id == adult) ? adult : null;

    private int FirstHour(DateOnly day) => _room.OfFamily(_days).On(day) is { Count: > 0 } hours ? hours[0].From : 9 * 60;

    private SessionWish? Wish(Wanted wanted)
    {
        // What is said of a kind of work is nearer to the thing than what is said of its subject.
        var wish = _wishes.FirstOrDefault(w => w.Kind is { } kind && kind == wanted.Kind)
            ?? _wishes.FirstOrDefault(w => w.SubjectId is { } subject && wanted.Subjects.Contains(subject));
        var day = wish?.Day is { } wished && _days.Any(d => d.DayOfWeek == wished) ? wished : (DayOfWeek?)null;
        var morning = wish?.Morning == true || _wants.IsForTheMorning(wanted.Source);
        return day is null && !morning ? null : new SessionWish(day, morning);
    }

    /// <summary>What of today is gone is nobody's any more.</summary>
    private FreeTime FromNow(FreeTime free) => new(free.Days.ToDictionary(d => d.Key, d => d.Key == _today ? Stretches.Less(d.Value, [new Stretch(0, _now)]) : d.Value));

    /// <summary>Small parts come out while every child under three sleeps or is out of the house.</summary>
    private BoundHours? BesideSmallOnes(Wanted wanted)
    {
        if (wanted.Activity is not { } activity || !SmallPartsInTheRoom.AreIn(activity.Details.Hazards))
            return null;
        var small = _room.Learners.Where(l => SmallPartsInTheRoom.Matter([l.BirthDate], _days[0])).ToList();
        if (small.Count == 0)
            return null;
        var hours = _days.ToDictionary(d => d, d => small.Select(l => _room.AppointmentsOf(l.Id, d)).Aggregate(Stretches.Both));
        return new BoundHours(new FreeTime(hours), $"while {Names(small)} {(small.Count == 1 ? "sleeps" : "sleep")} or {(small.Count == 1 ? "is" : "are")} out of the room, since it has small parts");
    }

    private static string Names(List<Learner> learners) =>
        learners.Count == 1 ? learners[0].Name : $"{string.Join(", ", learners.SkipLast(1).Select(l => l.Name))} and {learners[^1].Name}";

    private sealed record Read(List<DateOnly> Days, FamilyRoom Room, Dictionary<Guid, int> Sittings, List<WeeklyWish> Wishes, WeekWants Wants);
}
