using System.Text.Json;
using CoopLessons.Core.Coop;

namespace CoopLessons.Data.Scenario;

/// <summary>The turns and the money of the invented co-op, as <c>seed-scenario/turns.json</c> tells them.</summary>
/// <param name="Meetings">How many are added where none are there yet.</param>
internal sealed record CoopRota(
    int Meetings, DayOfWeek Day, string Where, string Room, IReadOnlyList<RotaOfRole> Roles, IReadOnlyList<RotaAway> Away, IReadOnlyList<RotaLiking> Wishes,
    RotaFee Fee, IReadOnlyList<RotaBought> Bought, RotaPaid Paid)
{
    public static CoopRota Read() =>
        JsonSerializer.Deserialize<CoopRota>(ScenarioFiles.Bytes("scenario/turns.json"), Coop.Json) ?? throw new InvalidDataException("turns.json holds nothing.");
}

internal sealed record RotaOfRole(string Name, int Weight, int Places, bool InRoom);

/// <param name="Meeting">From 1, of those still to come.</param>
internal sealed record RotaAway(string Adult, int Meeting);

internal sealed record RotaLiking(string Adult, string Role, bool Liked);

internal sealed record RotaFee(string Name, int FamilyCents, string Keeper);

internal sealed record RotaBought(string What, int Cents, int DaysAgo, string PaidBy, SharedBy By);

internal sealed record RotaPaid(string From, string To, int Cents, int DaysAgo);
