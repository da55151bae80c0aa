using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Log;
using CoopLessons.Core.Prepare;
using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Pages.Today;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Log;

/// <summary>Reads the days that may be given back, with everything that is known of them.</summary>
internal sealed class CatchUpDays
{
    /// <summary>More would be a list to read rather than a day to recognise.</summary>
    private const int MostUsual = 4;

    /// <summary>Of something begun ahead nobody knows how long it took. Common practice, no source.</summary>
    private const int MinutesOfBeginning = 10;

    private readonly AppDb _db;
    private readonly Family _family;
    private readonly DateOnly _today;
    private readonly UnloggedDays _unlogged;
    private readonly DayRange _range;
    private readonly IReadOnlyList<Learner> _learners;
    private readonly IReadOnlyList<FamilySubject> _subjects;
    private readonly EntryWords _words;

    private CatchUpDays(AppDb db, Family family, DateOnly today, UnloggedDays unlogged, EntryWords words)
    {
        (_db, _family, _today, _unlogged, _words) = (db, family, today, unlogged, words);
        _range = new DayRange(today.AddDays(-UnloggedDays.DaysBack), today.AddDays(-1));
        _learners = [.. words.Learners.Where(l => !l.SetAside)];
        _subjects = [.. words.Subjects.Where(s => !s.Retired)];
    }

    /// <summary>The last day first.</summary>
    public static async Task<IReadOnlyList<CatchUpDay>> LoadAsync(AppDb db, Family family, DateOnly today, EntryWords words, CancellationToken ct)
    {
        var unlogged = await UnloggedDays.LoadAsync(db, today, ct);
        return unlogged.Days.Count == 0 ? [] : await new CatchUpDays(db, family, today, unlogged, words).ReadAsync(ct);
    }

    private async Task<IReadOnlyList<CatchUpDay>> ReadAsync(CancellationToken ct)
    {
        var days = _unlogged.Days.ToHashSet();
        var logged = (await _db.LoggedAsync(_range, null, ct)).Where(e => days.Contains(e.Date)).ToLookup(e => e.Date, e => FoldedWords.Key(e.What));
        var past = await _db.PastThingsAsync(_today.AddDays(-1), ct);
        var lines = _unlogged.Open.Select(w => Line(CatchUpKind.Planned, w.Session.Date, w.Session.Id, LoggableThings.AsDone(w, _learners, _subjects), "planned"))
            .Concat((await FixedPoint.InAsync(_db, _range, ct)).Where(f => f.Appointment.IsLearning && days.Contains(f.Date)).Select(f => Line(
                CatchUpKind.Appointment, f.Date, f.Appointment.Id, Of(f, past), f.Appointment.Kind == AppointmentKind.CoOp ? "co-op" : "lesson out")))
            .Concat(await SittingsAsync(days, ct))
            .Concat(await BegunAsync(days, past, ct)).ToList();
        var ill = await IllDays.LoadAsync(_db, _range.First, _today, ct);
        var photos = (await _db.Pieces.AsNoTracking().Where(p => p.EntryId == null && p.Kind == PieceKind.Photo && p.Date >= _range.First && p.Date <= _range.Last).ToListAsync(ct)).ToLookup(p => p.Date);
        var reminders = (await WaitsAsync(ct)).ToLookup(w => w.On, w => w.Words);
        return
        [
            .. _unlogged.Days.Select(day =>
            {
                var known = lines.Where(l => l.Key.Date == day && !(l.Key.Kind != CatchUpKind.Planned && logged[day].Contains(FoldedWords.Key(l.Facts.What)))).ToList();
                var taken = known.Select(l => FoldedWords.Key(l.Facts.What)).Concat(logged[day]).ToHashSet();
                // A day that was written down in part, or on which somebody is ill, is not filled up with habits.
                var usual = _unlogged.Logged.Contains(day) || ill.On(day) is not null ? [] : Usual(day, past, taken);
                return new CatchUpDay(
                    day, [.. known, .. usual], [.. photos[day].OrderBy(p => p.TakenAt ?? int.MaxValue).ThenBy(p => p.Id)], [.. reminders[day]]);
            }).Where(d => d.Lines.Count + d.Photos.Count > 0),
        ];
    }

    private static CatchUpLine Line(CatchUpKind kind, DateOnly date, Guid source, EntryFacts facts, string why) =>
        new(new CatchUpKey(kind, date, source), facts with { Date = date }, why);

    private IEnumerable<CatchUpLine> Usual(DateOnly day, IReadOnlyList<PastThing> past, HashSet<string> taken) => past
        .Where(p => p.IsUsualOn(day) && !taken.Contains(FoldedWords.Key(p.What)))
        .OrderByDescending(p => p.OnSameWeekdays(day)).ThenByDescending(p => p.LastOn).ThenBy(p => FoldedWords.Key(p.What), StringComparer.Ordinal).Take(MostUsual)
        .Select(p => Line(CatchUpKind.Usual, day, p.Newest.Id, LoggableThings.Again(p, day, _learners, _subjects), $"usual on {day.Weekday()}s"));

    /// <summary>It counts as the last one of its name did, else as its subject.</summary>
    private EntryFacts Of(FixedPoint at, IReadOnlyList<PastThing> past)
    {
        var (kept, last) = (at.Appointment, past.FirstOrDefault(p => FoldedWords.Key(p.What) == FoldedWords.Key(at.Appointment.Title))?.Newest);
        var there = _learners.Where(l => kept.Learners.Count == 0 || kept.Learners.Contains(l.Id)).ToList();
        return new EntryFacts(
            at.Date, kept.StartsAt, kept.Title, kept.Kind == AppointmentKind.CoOp ? Place.Coop : Place.Elsewhere, "",
            [.. (there.Count > 0 ? there : _learners).Select(l => new LearnerTime(l.Id, new Minutes(kept.Minutes)))],
            last?.Split ?? [.. _subjects.OrderByDescending(s => s.Id == kept.SubjectId).Take(1).Select(s => new SubjectWeight(s.Id, 1))], last?.Touches ?? []);
    }

    private async Task<List<CatchUpLine>> SittingsAsync(HashSet<DateOnly> days, CancellationToken ct)
    {
        var found = await _db.ReadingSittings.AsNoTracking().Where(s => s.Date >= _range.First && s.Date <= _range.Last).OrderBy(s => s.FromChapter).ThenBy(s => s.Id).ToListAsync(ct);
        var lines = new List<CatchUpLine>();
        foreach (var sitting in found.Where(s => days.Contains(s.Date)))
        {
            if (await SittingFacts.LoadAsync(_db, sitting.Id, _today, ct) is { } facts && facts.Facts(_words, sitting.Date) is { Times.Count: > 0, Split.Count: > 0 } entry)
                lines.Add(Line(CatchUpKind.Sitting, sitting.Date, sitting.Id, entry, "read on that day"));
        }

        return lines;
    }

    private async Task<List<CatchUpLine>> BegunAsync(HashSet<DateOnly> days, IReadOnlyList<PastThing> past, CancellationToken ct)
    {
        var marks = await _db.AheadMarks.AsNoTracking()
            .Where(m => m.BegunOn >= _range.First && m.BegunOn <= _range.Last || m.TendedOn >= _range.First && m.TendedOn <= _range.Last).OrderBy(m => m.Id).ToListAsync(ct);
        var ids = marks.Select(m => m.ActivityId).Distinct().ToList();
        var activities = ids.Count == 0 ? [] : await _db.Activities.AsNoTracking().Where(a => ids.Contains(a.Id)).ToDictionaryAsync(a => a.Id, ct);
        var lines = new List<CatchUpLine>();
        foreach (var mark in marks)
        {
            if (activities[mark.ActivityId].Details.Ahead.FirstOrDefault(a => string.Equals(a.What, mark.What, StringComparison.OrdinalIgnoreCase)) is not { } start)
                continue;
            var split = activities[mark.ActivityId].Details.Weights.Where(w => _subjects.Any(s => s.Id == w.SubjectId)).ToList();
            foreach (var (on, verb) in new[] { (mark.BegunOn, AheadWords.Begin(start.Kind)), (mark.TendedOn, AheadWords.Tend(start.Kind)) })
            {
                if (on is not { } date || !days.Contains(date) || lines.Exists(l => l.Key.Source == mark.Id && l.Key.Date == date))
                    continue;
                var what = $"{verb}: {mark.What}";
                var minutes = past.FirstOrDefault(p => FoldedWords.Key(p.What) == FoldedWords.Key(what))?.Minutes ?? MinutesOfBeginning;
                lines.Add(Line(CatchUpKind.Begun, date, mark.Id, new EntryFacts(
                    date, null, what, Place.Home, "", [.. _learners.Select(l => new LearnerTime(l.Id, new Minutes(minutes)))],
                    split.Count > 0 ? split : [.. _subjects.Take(1).Select(s => new SubjectWeight(s.Id, 1))], []), "begun ahead"));
            }
        }

        return [.. lines.Where(l => l.Facts.Split.Count > 0 && l.Facts.Times.Count > 0)];
    }

    /// <summary>What was waited for and ended on one of the days: it reminds of what came next.</summary>
    private async Task<IEnumerable<(DateOnly On, string Words)>> WaitsAsync(CancellationToken ct)
    {
        var from = _range.First.AddDays(-2);
        var work = await _db.WorkAsync(_db.PlannedSessions.AsNoTracking().Where(s => s.State == SessionState.Done && s.Date >= from && s.Date <= _range.Last
            && _db.Activities.Any(a => a.Id == s.ActivityId && a.WaitingMinutes > 0)), ct);
        var ids = work.Select(w => w.Session.EntryId).OfType<Guid>().ToList();
        var deeds = ids.Count == 0 ? [] : await _db.Standing().Where(r => ids.Contains(r.EntryId)).ToDictionaryAsync(r => r.EntryId, ct);
        return
            from w in work
            let wait = StripLine.WaitOf(w, w.Session.EntryId is { } id ? deeds.GetValueOrDefault(id) : null, _family)
            let end = wait?.EndsOn
            where end is not null
            select (end.Value, $"{w.Title}: {wait!.For} until {DayWords.Clock(wait.EndsAt)}");
    }
}
