using CoopLessons.Core.Calendar;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Planning;

/// <summary>An appointment on one of its days.</summary>
public sealed record FixedPoint(DateOnly Date, Appointment Appointment)
{
    /// <summary>Every appointment on each of its days in the range, by day, start and title.</summary>
    public static async Task<IReadOnlyList<FixedPoint>> InAsync(AppDb db, DayRange days, CancellationToken ct)
    {
        var appointments = await db.Appointments.AsNoTracking().Where(a => a.First <= days.Last).ToListAsync(ct);
        return
        [
            .. appointments.SelectMany(a => a.DaysIn(days).Select(d => new FixedPoint(d, a)))
                .OrderBy(f => f.Date).ThenBy(f => f.Appointment.StartsAt).ThenBy(f => f.Appointment.Title, StringComparer.Ordinal).ThenBy(f => f.Appointment.Id),
        ];
    }
}
