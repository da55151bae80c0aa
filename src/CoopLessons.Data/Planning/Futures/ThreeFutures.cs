using CoopLessons.Core.Calendar;
using CoopLessons.Core.Schedule;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Planning.Futures;

/// <summary>
/// The three ways on after an upset, side by side, each with what it costs. Nothing is changed by looking. A layout is
/// asked only for weeks in which something must find a new hour.
/// </summary>
public sealed class ThreeFutures
{
    /// <summary>Further ahead than anybody plans.</summary>
    private const int DaysAhead = 300;

    private readonly AppDb _db;
    private readonly Upset _upset;
    private readonly DateOnly _today;
    private readonly int _now;
    private readonly TeachingDays _calendar;
    private readonly List<PlannedWork> _open;
    private readonly Dictionary<Guid, PlannedWork> _work;
    private readonly List<Unit> _units;
    private readonly Effort _effort;
    private readonly FutureCost _cost;

    private ThreeFutures(AppDb db, Upset upset, DateOnly today, int now, TeachingDays calendar, List<PlannedWork> open, List<Unit> units, Effort effort)
    {
        (_db, _upset, _today, _now, _calendar, _open, _units, _effort) = (db, upset, today, now, calendar, open, units, effort);
        _work = open.ToDictionary(w => w.Session.Id);
        _cost = new FutureCost(open, units);
    }

    /// <param name="progress">Told before each of the three.</param>
    public static async Task<IReadOnlyList<Future>> OfAsync(
        AppDb db, Upset upset, DateOnly today, int now, Effort effort, Action<LayoutProgress>? progress, CancellationToken ct)
    {
        var from = upset.From;
        var hit = upset.Hit.Select(s => s.Id).ToList();
        var open = await db.WorkAsync(
            db.PlannedSessions.AsNoTracking().Where(s => hit.Contains(s.Id) || s.Date >= from && s.State == SessionState.Planned), ct);
        var units = await db.Units.AsNoTracking().Where(u => u.StartsOn != null).ToListAsync(ct);
        var futures = new ThreeFutures(db, upset, today, now, await TeachingDays.LoadAsync(db, ct), [.. open], units, effort);
        progress?.Invoke(new LayoutProgress("Everything a little later", 0.1));
        var shift = await futures.ShiftAsync(ct);
        progress?.Invoke(new LayoutProgress("What fits into the days that are left", 0.5));
        var thin = await futures.ThinAsync(ct);
        progress?.Invoke(new LayoutProgress("Letting go", 0.9));
        return [shift, thin, futures.LetGo()];
    }

    private IEnumerable<PlannedWork> HitWork => _upset.Hit.Select(s => _work[s.Id]);

    private Future LetGo() =>
        Of(FutureKind.LetGo, [.. HitWork.Select(w => new PlanChange(w.Session.Id, w.Session.Stands, null))], [], null);

    /// <summary>Lessons and loops of the lost hours go on later by themselves; the activities look for room in the same week.</summary>
    private async Task<Future> ThinAsync(CancellationToken ct)
    {
        var changes = HitWork.Where(FutureCost.Resumes).Select(w => new PlanChange(w.Session.Id, w.Session.Stands, null)).ToList();
        var gone = changes.Select(c => c.SessionId).ToHashSet();
        var proofs = new List<Proof>();
        var seen = new HashSet<Guid>(gone);
        foreach (var week in HitWork.Select(w => Week.Of(w.Session.Date)).Distinct())
        {
            var ask = WeekAsk.Plain with { PlannedOnly = true, LetGo = gone, Lost = _upset.Lost.ToHashSet() };
            if (await LaidAsync(week, ask, ct) is not { } laid)
                continue;
            proofs.Add(laid.Plan.Proof);
            // What found no place is let go where it was hit, and stays as it is where it was not.
            var misfits = laid.Plan.Misfits.Select(m => m.SessionId).ToHashSet();
            changes.AddRange(laid.Proposal.Changes.Where(c => !misfits.Contains(c.SessionId)));
            changes.AddRange(HitWork.Where(w => misfits.Contains(w.Session.Id)).Select(w => new PlanChange(w.Session.Id, w.Session.Stands, null)));
            seen.UnionWith(laid.AtHand.Wanted.Select(w => w.SessionId));
        }

        // Where no day is left in the week there is no room to look for.
        changes.AddRange(HitWork.Where(w => !seen.Contains(w.Session.Id)).Select(w => new PlanChange(w.Session.Id, w.Session.Stands, null)));
        return Of(FutureKind.Thin, changes, [], Worst(proofs));
    }

    /// <summary>Each activity from the lost days on goes as many teaching days later as were lost, and finds an hour there.</summary>
    private async Task<Future> ShiftAsync(CancellationToken ct)
    {
        var hit = _upset.Hit.Select(s => s.Id).ToHashSet();
        var resuming = HitWork.Where(FutureCost.Resumes).Select(w => new PlanChange(w.Session.Id, w.Session.Stands, null)).ToList();
        var moves = _open.Where(w => !FutureCost.Resumes(w) && (hit.Contains(w.Session.Id) || _upset.Lost.Count > 0 && !w.Session.Pinned && _calendar.Holds(w.Session.Date)))
            .ToDictionary(w => w.Session.Id, w => Later(w.Session.Date));
        var gone = resuming.Select(c => c.SessionId).ToHashSet();
        var (changes, proof) = await Relaid.OfAsync(_db, moves, gone, _upset.Lost.ToHashSet(), _upset.Title, _today, _now, _effort, ct);
        return Of(FutureKind.Shift, [.. resuming, .. changes], Following(), proof);
    }

    /// <summary>
    /// The day that has the same number among the days that are left as the date had among all of them; after an
    /// appointment, which takes no day, the next one.
    /// </summary>
    private DateOnly Later(DateOnly date)
    {
        if (_upset.Lost.Count == 0)
            return _calendar.After(date > _today ? date : _today.AddDays(-1), 1)[0];
        var from = _upset.From > _today ? _upset.From : _today;
        var left = _calendar.After(from.AddDays(-1), DaysAhead).Except(_upset.Lost).ToList();
        var before = left.Concat(_upset.Lost).Distinct().Count(d => d < date);
        return left[Math.Min(before, left.Count - 1)];
    }

    /// <summary>Units that are still to begin go later by the whole weeks that were lost.</summary>
    private List<UnitMove> Following()
    {
        var aWeek = _calendar.YearOf(_upset.From) is { } year ? Enum.GetValues<DayOfWeek>().Count(d => year.Weekdays.Holds(d)) : 5;
        var weeks = aWeek == 0 ? 0 : _upset.Lost.Count / aWeek;
        return weeks == 0 ? [] : [.. _units.Where(u => u.StartsOn > _upset.From).Select(u => new UnitMove(u.Id, u.StartsOn!.Value, u.StartsOn.Value.AddDays(7 * weeks)))];
    }

    private async Task<WeekLaid?> LaidAsync(Week week, WeekAsk ask, CancellationToken ct) =>
        await WeekReading.LoadAsync(_db, week, _today, _now, ask, ct) is { } atHand ? WeekLaid.Of(atHand, _upset.Title, _effort, null, ct) : null;

    private static Proof? Worst(List<Proof> proofs) => proofs.Count == 0 ? null : proofs.Max();

    private Future Of(FutureKind kind, List<PlanChange> changes, List<UnitMove> units, Proof? proof) =>
        // The weeks that are not planned yet come later as well.
        _cost.Of(kind, _upset.Title, changes, units, [], proof, (unit, last) =>
            kind == FutureKind.Shift && _upset.Lost.Count > 0 && _calendar.After(FutureCost.LastDay(unit), _upset.Lost.Count)[^1] is var later && later > last ? later : last);
}
