using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace CoopLessons.Data.Databases;

/// <summary>Each connection waits for the disk before a commit is reported: saved means saved.</summary>
internal sealed class SqliteSafety : DbConnectionInterceptor
{
    private const string Settings = "PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL;";

    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
    {
        using var command = connection.CreateCommand();
        command.CommandText = Settings;
        command.ExecuteNonQuery();
    }

    public override async Task ConnectionOpenedAsync(DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = Settings;
        await command.ExecuteNonQueryAsync(cancellationToken);
    }
}
