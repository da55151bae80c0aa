using CoopLessons.Core.Calendar;
using CoopLessons.Core.Schedule;
using CoopLessons.Data.Planning;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Scenario;

public sealed class The_planning_of_the_coop : IAsyncLifetime
{
    private static readonly DateOnly Thursday = new(2026, 11, 12);
    private MillraceDatabase _coop = null!;

    public async Task InitializeAsync() => _coop = await MillraceDatabase.LoadedOn(Thursday);

    public async Task DisposeAsync() => await _coop.DisposeAsync();

    [Fact]
    public async Task Lets_every_family_teach_and_meet_at_the_mill_outside_its_breaks()
    {
        foreach (var family in _coop.Loaded.Families)
        {
            Assert.NotEmpty(await _coop.In(family, db => db.TeachingAdults.ToListAsync()));
            var term = new DayRange(new DateOnly(2026, 9, 10), new DateOnly(2026, 12, 3));
            var days = (await _coop.In(family, db => FixedPoint.InAsync(db, term, default))).Where(f => f.Appointment.Kind == AppointmentKind.CoOp).Select(f => f.Date).ToList();
            Assert.All(days, d => Assert.Equal(DayOfWeek.Thursday, d.DayOfWeek));
            Assert.Contains(Thursday, days);
            Assert.DoesNotContain(new DateOnly(2026, 11, 26), days);
        }
    }

    [Fact]
    public async Task Gives_the_Alders_courses_of_their_own_a_loop_and_two_grown_ups()
    {
        var alder = _coop.Loaded.Families.Single(f => f.Name == "Alder");
        var courses = await _coop.In(alder, db => db.Courses.ToListAsync());
        Assert.Equal(3, courses.Count(c => c is { Minutes: 30, PerWeek: 5 } && c.LessonAhead(0) is not null && c.Learners.Count == 1));
        Assert.Equal(3, (await _coop.In(alder, db => db.Loops.SingleAsync())).Steps.Count);
        var hours = await _coop.In(alder, db => TeachingHours.LoadAsync(db, Thursday, default));
        var adults = await _coop.In(alder, db => db.TeachingAdults.OrderBy(a => a.Order).ToListAsync());
        Assert.Equal([new Stretch(510, 720), new Stretch(780, 900)], hours.Of(adults[0].Id).On(DayOfWeek.Monday));
        Assert.Equal([DayOfWeek.Tuesday, DayOfWeek.Friday], WeekHours.FromMonday.Where(d => hours.Of(adults[1].Id).On(d).Count > 0));
    }

    [Fact]
    public async Task Lets_the_child_under_three_sleep_every_day()
    {
        var birch = _coop.Loaded.Families.Single(f => f.Name == "Birch");
        var born = await _coop.In(birch, db => db.Learners.Select(l => l.BirthDate).ToListAsync());
        Assert.True(SmallPartsInTheRoom.Matter(born, Thursday));
        var naps = (await _coop.In(birch, db => FixedPoint.InAsync(db, CoopLessons.Core.Calendar.Week.Of(Thursday).Days, default))).Where(f => f.Appointment.Kind == AppointmentKind.Nap).ToList();
        Assert.Equal(7, naps.Count);
        Assert.All(naps, n => Assert.Equal(new Stretch((12 * 60) + 45, (14 * 60) + 30), n.Appointment.Time));
    }
}
