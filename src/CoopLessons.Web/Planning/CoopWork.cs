using CoopLessons.Core.Coop;
using CoopLessons.Core.Schedule;
using CoopLessons.Data;
using CoopLessons.Data.Coops.Turns;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Planning;

/// <summary>Turns of some days that were asked for, as they came out.</summary>
public sealed record RotaOutcome(DateOnly First, DateOnly Last, RotaAtHand AtHand, Rota Rota);

/// <summary>A rota that holds again from a meeting on, as it came out.</summary>
public sealed record HealedOutcome(Guid TermId, DateOnly From, RotaAtHand AtHand, HealedRota Healed);

/// <summary>What a co-op may ask of the line. Its jobs are the co-op's, so that whoever leads it finds them.</summary>
public sealed class CoopWork(LayoutLine line, IServiceScopeFactory scopes)
{
    public const string RotaKey = "rota";

    public static string HealingKey(Guid meetingId) => $"heal {meetingId:N}";

    /// <param name="family">One that leads the co-op; its rows are not read.</param>
    /// <returns>The id of the job; null where the line is full.</returns>
    public Guid? AskRota(Guid family, Guid coop, DateOnly first, DateOnly last, Effort effort) => line.Ask(coop, RotaKey, (progress, ct) => ForAsync(family, coop, async db =>
    {
        progress.Report(new LayoutProgress("Reading who is there and when", 0));
        var atHand = await RotaAtHand.LoadAsync(db, coop, first, last, withKept: false, ct);
        progress.Report(new LayoutProgress("Looking for fair turns", 0.1));
        return new RotaOutcome(first, last, atHand, RotaPlanning.Solve(atHand.Problem, effort, ct));
    }));

    /// <inheritdoc cref="AskRota"/>
    public Guid? AskHealing(Guid family, Guid coop, Guid termId, Guid meetingId, Effort effort) => line.Ask(coop, HealingKey(meetingId), (progress, ct) => ForAsync(family, coop, async db =>
    {
        progress.Report(new LayoutProgress("Reading who is there and when", 0));
        var term = await db.TurnTerms.AsNoTracking().SingleAsync(t => t.CoopId == coop && t.Id == termId, ct);
        var from = (await db.CoopMeetings.AsNoTracking().SingleAsync(m => m.CoopId == coop && m.Id == meetingId, ct)).On;
        var atHand = await RotaAtHand.LoadAsync(db, coop, term.First, term.Last, withKept: true, ct);
        progress.Report(new LayoutProgress("Looking for the fewest changes", 0.1));
        return new HealedOutcome(term.Id, from, atHand, RotaHealing.Heal(atHand.Problem, atHand.Kept, from, effort, ct));
    }));

    private async Task<T> ForAsync<T>(Guid family, Guid coop, Func<AppDb, Task<T>> work)
    {
        await using var scope = scopes.CreateAsyncScope();
        var current = scope.ServiceProvider.GetRequiredService<CurrentFamily>();
        current.ActForProgram(family);
        current.BelongTo([coop]);
        return await work(scope.ServiceProvider.GetRequiredService<AppDb>());
    }
}
