using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Units;
using CoopLessons.Web.Pages.Planning;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Today;

/// <summary>A place on the strip: a line, a moment at which somebody must look, or an appointment.</summary>
public sealed record StripItem(StripLine? Line, Look? Look, StripAppointment? Appointment = null);

/// <summary>Something that stands at its time.</summary>
/// <param name="Who">Whom it takes up.</param>
/// <param name="CanLog">Whether the day has come, it is something learned, and nothing of its name is logged on that day yet.</param>
public sealed record StripAppointment(Appointment Appointment, DateOnly Date, string Who, bool CanLog);

/// <summary>Whose strip is read, and what happened to it a moment ago.</summary>
/// <param name="Reader">The person who reads.</param>
/// <param name="Just">The session that was changed just now; it is shown even where it left the day.</param>
/// <param name="Kept">The day is kept on a phone, and will have come when it is read there.</param>
public sealed record Reading(Family Family, DateOnly Today, Guid? Reader, bool NamesFirst, Guid? Just = null, string? Fault = null, bool Kept = false);

/// <summary>A day as a strip of time.</summary>
public sealed class DayStrip
{
    private DayStrip(DateOnly date, IReadOnlyList<StripLine> lines, IReadOnlyList<Look> looks, IReadOnlyList<StripAppointment> appointments, IReadOnlyList<LogRevision> also, IReadOnlyList<Learner> learners)
    {
        (Date, Lines, Also, Learners) = (date, lines, also, learners);
        Appointments = appointments;
        // At the same minute the look comes first: the dough does not wait. An appointment parts what comes before from what comes after.
        Items =
        [
            .. lines.Select(l => (At: l.Session.StartsAt ?? int.MaxValue, Kind: 1, Item: new StripItem(l, null)))
                .Concat(looks.Select(l => (l.At, Kind: 0, Item: new StripItem(null, l))))
                .Concat(appointments.Select(a => (At: a.Appointment.StartsAt, Kind: 0, Item: new StripItem(null, null, a))))
                .OrderBy(i => i.At).ThenBy(i => i.Kind).Select(i => i.Item),
        ];
    }

    public DateOnly Date { get; }

    /// <summary>By start, then by place in the day; those without a time come last.</summary>
    public IReadOnlyList<StripLine> Lines { get; }
    public IReadOnlyList<StripItem> Items { get; }

    /// <summary>By start. A day with nothing else on it is still a day with nothing planned.</summary>
    public IReadOnlyList<StripAppointment> Appointments { get; }

    /// <summary>What was logged on that day besides the plan.</summary>
    public IReadOnlyList<LogRevision> Also { get; }

    /// <summary>The children who are taught now.</summary>
    public IReadOnlyList<Learner> Learners { get; }

    /// <summary>Somebody is ill on that day; null where nobody is.</summary>
    public IllSpell? Ill { get; private init; }

    /// <summary>Whether something of the day could still be moved elsewhere.</summary>
    public bool HasUndone => Lines.Any(l => l.IsOpen || l.IsNotDone);

    public static async Task<DayStrip> LoadAsync(AppDb db, DateOnly date, Reading reading, CancellationToken ct)
    {
        var learners = await db.Learners.AsNoTracking().Include(l => l.Levels).OrderBy(l => l.Order).ThenBy(l => l.Id).ToListAsync(ct);
        var taught = learners.Where(l => !l.SetAside).ToList();
        var next = (await TeachingDays.LoadAsync(db, ct)).After(date >= reading.Today ? date : reading.Today.AddDays(-1), 1)[0];
        var work = await db.WorkAsync(db.PlannedSessions.Where(s => s.Date == date && s.State != SessionState.LetGo || s.Id == reading.Just), ct, reading.Today);
        var entries = await db.StandingIn(new(date, date)).OrderBy(r => r.StartsAt == null).ThenBy(r => r.StartsAt).ThenBy(r => r.WrittenAt).ThenBy(r => r.EntryId).ToListAsync(ct);
        var doneIds = work.Select(w => w.Session.EntryId).OfType<Guid>().ToList();
        var deeds = await db.Standing().Where(r => doneIds.Contains(r.EntryId)).ToDictionaryAsync(r => r.EntryId, ct);

        var ill = await IllDays.LoadAsync(db, date, reading.Today, ct);
        var lines = work.Select(w =>
        {
            var deed = w.Session.EntryId is { } id ? deeds.GetValueOrDefault(id) : null;
            return new StripLine(
                date, w, [.. learners.Where(l => w.Session.Learners.Contains(l.Id))], taught,
                deed is null ? null : StripLine.DeedOf(deed, reading.Reader, learners),
                StripLine.WaitOf(w, deed, reading.Family))
            {
                Next = next,
                Rests = ill.Stops(w),
                IsSpared = ill.Spares(w),
                Spell = ill.On(date)?.Id,
                HasCome = date <= reading.Today || reading.Kept,
                IsPast = date < reading.Today,
                NamesFirst = reading.NamesFirst,
                Just = w.Session.Id == reading.Just,
                Fault = w.Session.Id == reading.Just ? reading.Fault : null,
            };
        }).ToList();
        lines = [.. lines.Select(l => l with { Meanwhile = Filling(l, lines) })];
        var looks = lines.Where(l => l.LooksAt is not null).Select(l => l.Look with { Swapped = false })
            .Concat(await ElsewhereAsync(db, date, reading, ct)).ToList();
        var appointments = await AppointmentsAsync(db, date, reading, learners, entries, ct);
        return new DayStrip(date, lines, looks, appointments, [.. entries.Where(e => !deeds.ContainsKey(e.EntryId))], taught) { Ill = ill.On(date) };
    }

    private static async Task<IReadOnlyList<StripAppointment>> AppointmentsAsync(
        AppDb db, DateOnly date, Reading reading, IReadOnlyList<Learner> learners, IReadOnlyList<LogRevision> entries, CancellationToken ct)
    {
        var found = await FixedPoint.InAsync(db, new(date, date), ct);
        if (found.Count == 0)
            return [];
        var choices = new PlanChoices(learners, [], await db.TeachingAdults.AsNoTracking().OrderBy(a => a.Order).ThenBy(a => a.Id).ToListAsync(ct));
        return
        [
            .. found.Select(f => new StripAppointment(
                f.Appointment, date, PlanWords.Who(f.Appointment, choices),
                f.Appointment.IsLearning && (date <= reading.Today || reading.Kept) && !entries.Any(e => e.What == f.Appointment.Title))),
        ];
    }

    /// <summary>What fills the wait of a line: whatever else has an hour in it.</summary>
    private static List<string> Filling(StripLine waiting, List<StripLine> lines) => waiting.Waiting is not { } wait ? [] :
    [
        .. lines.Where(l => l.Session.Id != waiting.Session.Id && !l.IsGone && l.Hours?.Meets(wait) == true)
            .OrderBy(l => l.Session.StartsAt).Select(l => $"{l.Doing.Title} ({l.Who})"),
    ];

    // Dough begun on an earlier day, or planned for another day and begun today, may want somebody today. What was planned
    // for a day gone by and never done is not waiting.
    private static async Task<IEnumerable<Look>> ElsewhereAsync(AppDb db, DateOnly date, Reading reading, CancellationToken ct)
    {
        // A deed may take up to a whole day.
        var from = date.AddDays(-2 - Activity.MostWaiting / 1440);
        var begun = db.LogRevisions.Where(r => r.Number == r.Entry.Newest && !r.Removed && r.Date >= from && r.Date <= date);
        var waiting = db.PlannedSessions.Where(s => s.Date != date
            && (s.State == SessionState.Done && begun.Any(r => r.EntryId == s.EntryId)
                || s.State == SessionState.Planned && s.Date >= from && s.Date < date && s.Date >= reading.Today)
            && db.Activities.Any(a => a.Id == s.ActivityId && a.WaitingMinutes > 0));
        var work = await db.WorkAsync(waiting, ct);
        var ids = work.Select(w => w.Session.EntryId).OfType<Guid>().ToList();
        var deeds = await db.Standing().Where(r => ids.Contains(r.EntryId)).ToDictionaryAsync(r => r.EntryId, ct);
        return
            from w in work
            let deed = w.Session.EntryId is { } id ? deeds.GetValueOrDefault(id) : null
            let wait = StripLine.WaitOf(w, deed, reading.Family)
            where wait?.EndsOn == date
            select wait.LookOf(w);
    }
}
