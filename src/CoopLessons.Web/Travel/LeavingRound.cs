using CoopLessons.Data;
using CoopLessons.Data.Families.Going;
using CoopLessons.Data.Files;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Travel;

/// <summary>Deletes the families whose week is over and whom nobody stopped.</summary>
public sealed class LeavingRound(IServiceScopeFactory scopes, FileShelf shelf, IEnumerable<MadeFiles> rooms, TimeProvider clock, ILogger<LeavingRound> log) : IDisposable
{
    private readonly SemaphoreSlim _turn = new(1, 1);

    public async Task RunAsync(CancellationToken ct)
    {
        await _turn.WaitAsync(ct);
        try
        {
            foreach (var due in await DueAsync(ct))
                await DeleteAsync(due, ct);
        }
        finally
        {
            _turn.Release();
        }
    }

    public void Dispose() => _turn.Dispose();

    private async Task<List<string>> DueAsync(CancellationToken ct)
    {
        var now = clock.GetUtcNow().UtcDateTime;
        await using var scope = scopes.CreateAsyncScope();
        return await scope.ServiceProvider.GetRequiredService<AppDb>().LeavingReceipts
            .Where(r => r.DoneAt == null && r.StoppedAt == null && r.DueAt <= now).OrderBy(r => r.DueAt).Select(r => r.SecretHash).ToListAsync(ct);
    }

    private async Task DeleteAsync(string receipt, CancellationToken ct)
    {
        try
        {
            await using var scope = scopes.CreateAsyncScope();
            var db = scope.ServiceProvider.GetRequiredService<AppDb>();
            using var turn = await shelf.TurnAsync(ct);
            if (await Deleting.OfAsync(db, receipt, ForgetAsync, clock.GetUtcNow().UtcDateTime, ct) is not { } deleted)
                return;
            log.LogInformation("A family was deleted: {Rows} rows, {Files} files", deleted.Rows, deleted.Files);
            await Deleting.TidyAsync(db, ct);
        }
        catch (Exception fault) when (fault is not OperationCanceledException and not OutOfMemoryException)
        {
            // Another family's day is not put off by it; this one comes up again with the next round.
            log.LogError(fault, "A family could not be deleted");
        }
    }

    private async Task ForgetAsync(Guid owner)
    {
        await shelf.ForgetAsync(owner, CancellationToken.None);
        foreach (var made in rooms)
            made.Remove(owner);
    }
}
