using CoopLessons.Core.Calendar;
using CoopLessons.Core.Schedule;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Planning.Futures;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Planning;

/// <summary>A week that was asked for, as it came out. No week where no day of it is left.</summary>
public sealed record WeekOutcome(WeekAsk Ask, WeekLaid? Laid);

/// <summary>What a family may ask of the line. Each job reads the database anew, for that family alone.</summary>
public sealed class FamilyWork(LayoutLine line, IServiceScopeFactory scopes, TimeProvider clock)
{
    public static string KeyOf(Week week) => $"week {week.Iso}";

    public static string KeyOf(DayRange lost) => $"lost {lost.First:yyyy-MM-dd} {lost.Last:yyyy-MM-dd}";

    public static string KeyOf(DayRange lost, Guid spell) => $"{KeyOf(lost)} {spell:N}";

    public static string KeyOf(Guid unit) => $"unit {unit:N}";

    public static string KeyOf(Guid appointment, Week week) => $"appointment {appointment:N} {week.Iso}";

    /// <summary>The id of the job; null where the line is full.</summary>
    public Guid? AskWeek(Guid family, Week week, WeekAsk ask, Effort effort) => line.Ask(family, KeyOf(week), (progress, ct) => ForAsync(family, async (db, today, now) =>
    {
        progress.Report(new LayoutProgress("Reading the week", 0));
        var atHand = await WeekReading.LoadAsync(db, week, today, now, ask, ct);
        return new WeekOutcome(ask, atHand is null ? null : WeekLaid.Of(atHand, $"Week of {week.Monday:d MMMM} laid out", effort, progress.Report, ct));
    }));

    /// <inheritdoc cref="AskWeek"/>
    public Guid? AskLost(Guid family, DayRange lost, string title) => line.Ask(family, KeyOf(lost), (progress, ct) => ForAsync(family, async (db, today, now) =>
        await FuturesAsync(db, await Upset.OfDaysAsync(db, lost, title, null, ct), today, now, progress, ct)));

    /// <inheritdoc cref="AskWeek"/>
    public Guid? AskIll(Guid family, DayRange lost, Guid spellId, string title) => line.Ask(family, KeyOf(lost, spellId), (progress, ct) => ForAsync(family, async (db, today, now) =>
    {
        var spell = await db.IllSpells.AsNoTracking().SingleOrDefaultAsync(s => s.Id == spellId, ct);
        return await FuturesAsync(db, await Upset.OfDaysAsync(db, lost, title, spell, ct), today, now, progress, ct);
    }));

    /// <inheritdoc cref="AskWeek"/>
    public Guid? AskAppointment(Guid family, Guid appointmentId, Week week, string title) => line.Ask(family, KeyOf(appointmentId, week), (progress, ct) => ForAsync(family, async (db, today, now) =>
    {
        var appointment = await db.Appointments.AsNoTracking().SingleAsync(a => a.Id == appointmentId, ct);
        var from = week.Monday > today ? week.Monday : today;
        return await FuturesAsync(db, await Upset.OfAppointmentAsync(db, appointment, new DayRange(from, week.Days.Last), title, ct), today, now, progress, ct);
    }));

    /// <inheritdoc cref="AskWeek"/>
    public Guid? AskLonger(Guid family, Guid unitId, string title) => line.Ask(family, KeyOf(unitId), (progress, ct) => ForAsync(family, async (db, today, now) =>
    {
        var unit = await db.Units.AsNoTracking().Include(u => u.Subjects).Include(u => u.Activities).AsSplitQuery().SingleAsync(u => u.Id == unitId, ct);
        var print = await PlanPrint.OfAsync(db, today, ct);
        return await LongerUnit.OfAsync(db, unit, title, today, now, Effort.Usual, progress.Report, ct) with { Print = print };
    }));

    private static async Task<UpsetOutcome> FuturesAsync(AppDb db, Upset upset, DateOnly today, int now, IProgress<LayoutProgress> progress, CancellationToken ct)
    {
        // Taken before anything else is read: a change in between makes the answer stale, never wrong.
        var print = await PlanPrint.OfAsync(db, upset.From, ct);
        return new UpsetOutcome(upset, await ThreeFutures.OfAsync(db, upset, today, now, Effort.Usual, progress.Report, ct)) { Print = print };
    }

    private async Task<T> ForAsync<T>(Guid family, Func<AppDb, DateOnly, int, Task<T>> work)
    {
        await using var scope = scopes.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentFamily>().ActForProgram(family);
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        var own = await db.Families.SingleAsync();
        return await work(db, own.Today(clock), NowOf(own, clock));
    }

    /// <summary>Minutes after midnight in the family's zone, up to the next five.</summary>
    public static int NowOf(Family family, TimeProvider clock)
    {
        var local = family.Local(clock.GetUtcNow());
        return (local.Hour * 60 + local.Minute + 4) / 5 * 5;
    }
}
