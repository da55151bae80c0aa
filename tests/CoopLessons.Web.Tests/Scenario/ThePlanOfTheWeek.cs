using CoopLessons.Core.Calendar;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace CoopLessons.Web.Tests.Scenario;

[Collection(OneCoop.Name)]
public sealed class ThePlanOfTheWeek(LoadedOnce once)
{
    private readonly MillraceDatabase _coop = once.Coop;

    private sealed record Planned(string Family, PlannedSession Session, Activity Activity, Unit Unit);

    /// <summary>Common practice, no source: a parent prepares one week at a time.</summary>
    [Fact]
    public async Task Each_family_has_a_unit_laid_out_from_its_first_week_to_the_next()
    {
        var sessions = await Sessions();
        var week = Core.Calendar.Week.Of(_coop.Today);
        foreach (var family in sessions.GroupBy(s => s.Family))
        {
            var weeks = family.Select(s => Core.Calendar.Week.Of(s.Session.Date)).Distinct().OrderBy(w => w.Monday).ToList();
            var first = family.Min(s => s.Unit.StartsOn!.Value);
            Assert.Contains(week, weeks);
            Assert.Equal(Core.Calendar.Week.Of(first), weeks[0]);
            Assert.Equal(week.Next, weeks[^1]);
            Assert.All(family, s => Assert.Equal(1 + ((s.Session.Date.DayNumber - s.Unit.StartsOn!.Value.DayNumber) / 7), s.Activity.Week));
        }

        Assert.Equal(4, sessions.Select(s => s.Family).Distinct().Count());
    }

    /// <summary>Common practice, no source: not every subject every day.</summary>
    [Fact]
    public async Task No_day_holds_all_the_subjects_that_were_taken()
    {
        foreach (var day in (await Sessions()).GroupBy(s => (s.Family, s.Session.Date)))
        {
            var unit = day.First().Unit;
            var taught = day.SelectMany(s => s.Activity.Split(unit.LeftOut)!.Split.Select(w => w.SubjectId)).Distinct().Count();
            Assert.InRange(taught, 1, unit.Subjects.Count - unit.LeftOut.Count - 1);
            Assert.InRange(day.Count(), 1, 3);
        }
    }

    [Fact]
    public async Task What_is_past_was_done_or_was_not_and_what_comes_is_planned()
    {
        var sessions = (await Sessions()).Select(s => s.Session).ToList();
        Assert.All(sessions.Where(s => s.Date >= _coop.Today), s => Assert.Equal(SessionState.Planned, s.State));
        var past = sessions.Where(s => s.Date < _coop.Today).ToList();
        Assert.All(past, s => Assert.Contains(s.State, new[] { SessionState.Done, SessionState.NotDone }));
        Assert.Contains(past, s => s.State == SessionState.NotDone);
        Assert.True(past.Count(s => s.State == SessionState.Done) >= 8);
    }

    [Fact]
    public async Task A_session_that_was_done_and_its_entry_know_each_other()
    {
        foreach (var family in _coop.Loaded.Families)
        {
            var done = await _coop.In(family, db => db.PlannedSessions.Where(s => s.State == SessionState.Done).ToDictionaryAsync(s => s.Id, s => s.EntryId!.Value));
            var entries = await _coop.In(family, db => db.LogEntries.Where(e => e.SessionId != null).ToDictionaryAsync(e => e.SessionId!.Value, e => e.Id));
            Assert.Equal(entries.OrderBy(e => e.Key), done.OrderBy(e => e.Key));
        }
    }

    [Fact]
    public async Task What_must_wait_is_begun_before_what_need_not()
    {
        var days = (await Sessions()).GroupBy(s => (s.Family, s.Session.Date)).ToList();
        foreach (var day in days)
        {
            Assert.All(day, s => Assert.InRange(s.Session.StartsAt!.Value, (8 * 60) + 30, 21 * 60));
            Assert.Equal(day.Count(), day.Select(s => s.Session.StartsAt).Distinct().Count());
            var light = day.Where(s => s.Session.StartsAt < 20 * 60).ToList();
            var waiting = light.Where(s => s.Activity.WaitingMinutes > 0).Select(s => s.Session.StartsAt!.Value).DefaultIfEmpty(0).Max();
            Assert.All(light.Where(s => s.Activity.WaitingMinutes == 0), s => Assert.True(s.Session.StartsAt > waiting));
        }

        Assert.Contains(days.SelectMany(d => d), s => s.Session.StartsAt == (8 * 60) + 30 && s.Activity.WaitingMinutes > 0);
    }

    private Task<List<Planned>> Sessions() => _coop.InEach(async (family, db) =>
    {
        var units = await db.Units.Include(u => u.Subjects).Include(u => u.Activities).AsSplitQuery().ToListAsync();
        var activities = units.SelectMany(u => u.Activities.Select(a => (Activity: a, Unit: u))).ToDictionary(a => a.Activity.Id);
        var sessions = await db.PlannedSessions.ToListAsync();
        return sessions.Select(s => new Planned(family.Name, s, activities[s.ActivityId!.Value].Activity, activities[s.ActivityId!.Value].Unit)).ToList();
    });
}
