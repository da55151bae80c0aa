using System.Data;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Databases;

/// <summary>What is read until this is disposed agrees with itself, whatever others write meanwhile. For reading alone.</summary>
internal static class OneMoment
{
    /// <returns>Within a transaction that is open already nothing new is begun.</returns>
    public static async Task<IAsyncDisposable> OneMomentAsync(this AppDb db, CancellationToken ct)
    {
        if (db.Database.CurrentTransaction is not null)
            return new Begun();
        if (!db.Database.IsSqlite())
            return await db.Database.BeginTransactionAsync(IsolationLevel.RepeatableRead, ct);
        // A transaction that reads holds nobody up here; the one that the framework begins by itself would.
        await db.Database.OpenConnectionAsync(ct);
        var reading = ((SqliteConnection)db.Database.GetDbConnection()).BeginTransaction(deferred: true);
        await db.Database.UseTransactionAsync(reading, ct);
        return new Reading(db, reading);
    }

    private sealed class Begun : IAsyncDisposable
    {
        public ValueTask DisposeAsync() => ValueTask.CompletedTask;
    }

    private sealed class Reading(AppDb db, SqliteTransaction transaction) : IAsyncDisposable
    {
        public async ValueTask DisposeAsync()
        {
            await db.Database.UseTransactionAsync(null);
            await transaction.DisposeAsync();
            await db.Database.CloseConnectionAsync();
        }
    }
}
