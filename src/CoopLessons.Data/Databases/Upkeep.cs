using System.Data.Common;
using System.Globalization;
using CoopLessons.Data.Tenancy;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace CoopLessons.Data.Databases;

/// <summary>The database cannot be used as it is; the message says what to do, in one line.</summary>
public sealed class DatabaseUnfitException(string message) : Exception(message);

/// <summary>What is done to a database before it serves: version checks, migrations, the second wall.</summary>
public static class Upkeep
{
    /// <summary>Versions before this one can damage a file when a checkpoint meets a commit (fixed March 2026).</summary>
    private static readonly Version OldestSqlite = new(3, 51, 3);

    // SQLite's result codes, sqlite.org/rescode.html.
    private const int SqliteCorrupt = 11;
    private const int SqliteNotADatabase = 26;

    /// <summary>Brings the database to this program's version. SQLite is copied first and put back if that fails.</summary>
    /// <exception cref="DatabaseUnfitException">
    /// The database is newer than this program, its library too old, the file damaged, or the server does not answer.
    /// </exception>
    public static async Task MigrateAsync(DatabaseChoice choice, CancellationToken ct = default)
    {
        try
        {
            if (choice is DatabaseChoice.Sqlite sqlite)
                await MigrateSqliteAsync(sqlite, ct);
            else if (choice is DatabaseChoice.Postgres postgres)
                await MigratePostgresAsync(postgres, ct);
        }
        catch (DbException fault)
        {
            throw new DatabaseUnfitException(Unfit(choice, fault));
        }
    }

    private static string Unfit(DatabaseChoice choice, DbException fault)
    {
        var said = fault.Message.ReplaceLineEndings(" ").Trim();
        if (choice is DatabaseChoice.Sqlite sqlite)
        {
            return fault is SqliteException { SqliteErrorCode: SqliteCorrupt or SqliteNotADatabase }
                ? $"The database file {sqlite.File} is damaged; nothing was changed in it. Put a copy back in its place ({said})."
                : $"The database file {sqlite.File} cannot be used: {said}";
        }

        var owner = new NpgsqlConnectionStringBuilder(((DatabaseChoice.Postgres)choice).Owner);
        var place = $"{owner.Host}:{owner.Port}, database {owner.Database}, role {owner.Username}";
        return fault is PostgresException
            ? $"The PostgreSQL server ({place}) refused: {said}"
            : $"The PostgreSQL server ({place}) cannot be reached: {said}";
    }

    /// <summary>Whether the database can be reached and is at this program's version.</summary>
    public static async Task<bool> IsReadyAsync(AppDb db, CancellationToken ct) =>
        await db.Database.CanConnectAsync(ct) && !(await db.Database.GetPendingMigrationsAsync(ct)).Any();

    private static async Task MigrateSqliteAsync(DatabaseChoice.Sqlite choice, CancellationToken ct)
    {
        var options = new DbContextOptionsBuilder<SqliteAppDb>().UseSqlite(choice.ConnectionString + ";Pooling=False").AddInterceptors(new SqliteSafety()).Options;
        await using var db = new SqliteAppDb(options, new CurrentFamily());
        var library = await db.Database.SqlQueryRaw<string>("SELECT sqlite_version() AS \"Value\"").SingleAsync(ct);
        if (Version.Parse(library) < OldestSqlite)
            throw new DatabaseUnfitException($"The SQLite library is {library}; {OldestSqlite} or newer is needed to keep the file from damage.");

        var known = File.Exists(choice.File) && (await db.Database.GetAppliedMigrationsAsync(ct)).Any();
        await RefuseNewerAsync(db, ct);
        if (!(await db.Database.GetPendingMigrationsAsync(ct)).Any())
            return;

        var before = known ? await CopyAsync(db, choice.File, ct) : null;
        try
        {
            await db.Database.MigrateAsync(ct);
        }
        catch (Exception fault) when (before is not null)
        {
            await db.Database.CloseConnectionAsync();
            SqliteConnection.ClearAllPools();
            foreach (var trace in new[] { "-wal", "-shm" })
                File.Delete(choice.File + trace);
            File.Copy(before, choice.File, overwrite: true);
            throw new DatabaseUnfitException($"The database could not be brought to this version and was put back as it was ({fault.Message}).");
        }
    }

    private static async Task<string> CopyAsync(SqliteAppDb db, string file, CancellationToken ct)
    {
        var stamp = File.GetLastWriteTimeUtc(file).ToString("yyyyMMdd-HHmmss", CultureInfo.InvariantCulture);
        var copy = $"{file}.before-{stamp}";
        File.Delete(copy);
        await db.Database.ExecuteSqlAsync($"VACUUM INTO {copy}", ct);
        return copy;
    }

    private static async Task MigratePostgresAsync(DatabaseChoice.Postgres choice, CancellationToken ct)
    {
        var options = new DbContextOptionsBuilder<PostgresAppDb>().UseNpgsql(choice.Owner).Options;
        await using var db = new PostgresAppDb(options, new CurrentFamily());
        if (await db.Database.CanConnectAsync(ct))
        {
            // Before anything is made: tables that a superuser made would not be the owner's afterwards.
            await RefuseRolePastTheWallAsync(choice, ct);
            await RefuseNewerAsync(db, ct);
        }

        await db.Database.MigrateAsync(ct);
        await using var transaction = await db.Database.BeginTransactionAsync(ct);
        foreach (var statement in RowSecurity.Statements(db.Model, choice.SeparateRole))
            await db.Database.ExecuteSqlRawAsync(statement, ct); // Made from the model alone: names of tables and a role, quoted.
        await transaction.CommitAsync(ct);
        await RefuseRolePastTheWallAsync(choice, ct);
    }

    private static async Task RefuseNewerAsync(AppDb db, CancellationToken ct)
    {
        var known = db.Database.GetMigrations().ToHashSet(StringComparer.Ordinal);
        var newer = (await db.Database.GetAppliedMigrationsAsync(ct)).Where(m => !known.Contains(m)).ToList();
        if (newer.Count > 0)
            throw new DatabaseUnfitException($"The database was written by a newer version of this program ({newer[^1]}); start that version or a later one.");
    }

    /// <exception cref="DatabaseUnfitException">The serving role could read past row security.</exception>
    public static async Task RefuseRolePastTheWallAsync(DatabaseChoice.Postgres choice, CancellationToken ct)
    {
        await using var connection = new NpgsqlConnection(choice.Serving);
        await connection.OpenAsync(ct);
        await using var command = new NpgsqlCommand("SELECT rolsuper OR rolbypassrls FROM pg_roles WHERE rolname = current_user", connection);
        if (await command.ExecuteScalarAsync(ct) is true)
            throw new DatabaseUnfitException("The database role that serves is a superuser or passes row security; give ConnectionStrings__Postgres a plain role and ConnectionStrings__PostgresOwner the owner.");
    }
}
