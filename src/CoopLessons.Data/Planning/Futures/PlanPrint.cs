using System.Security.Cryptography;
using System.Text.Json;
using CoopLessons.Core.Schedule;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Planning.Futures;

/// <summary>
/// The plan around an upset as one short text: equal while no session there, no appointment and no unit's beginning is
/// changed, added or taken away. By it a way on knows whether it still answers the plan as it stands.
/// </summary>
public static class PlanPrint
{
    /// <summary>What stayed undone for so long is looked at as well.</summary>
    private const int DaysBefore = 28;

    public static async Task<string> OfAsync(AppDb db, DateOnly around, CancellationToken ct)
    {
        var from = around.AddDays(-DaysBefore);
        var sessions = await db.PlannedSessions.AsNoTracking().Where(s => s.Date >= from).OrderBy(s => s.Id).ToListAsync(ct);
        var appointments = await db.Appointments.OrderBy(a => a.Id).Select(a => new { a.Id, a.Version }).ToListAsync(ct);
        var units = await db.Units.OrderBy(u => u.Id).Select(u => new { u.Id, u.StartsOn }).ToListAsync(ct);
        return Convert.ToHexStringLower(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes(
            new { Sessions = sessions.Select(s => new { s.Id, s.State, s.Stands, s.Learners }), Appointments = appointments, Units = units })));
    }
}
