using CoopLessons.Data.Databases;
using Npgsql;

namespace CoopLessons.Web.Tests.App;

/// <summary>
/// The database of one test server: a SQLite file, or with COOPLESSONS_TEST_POSTGRES (a connection of a role that may
/// make databases and roles) a database of its own on that server. The suite is run once for each.
/// </summary>
public sealed class TestDatabase : IDisposable
{
    private const string ServingRole = "cooplessons_app";
    private static readonly string? Server = Environment.GetEnvironmentVariable("COOPLESSONS_TEST_POSTGRES");
    private readonly string _name = "test_" + Guid.NewGuid().ToString("N");
    private readonly bool _borrowed;

    public TestDatabase()
    {
        Folder = Directory.CreateTempSubdirectory("cooplessons-").FullName;
        if (Server is null)
        {
            Choice = new DatabaseChoice.Sqlite(Path.Combine(Folder, "cooplessons.db"));
            return;
        }

        // Two test processes may come here at the same moment; one makes the role, the other finds it.
        Execute($"DO $$ BEGIN CREATE ROLE {ServingRole} LOGIN NOSUPERUSER NOBYPASSRLS; EXCEPTION WHEN duplicate_object OR unique_violation THEN NULL; END $$");
        Execute($"CREATE DATABASE {_name}");
        var owner = new NpgsqlConnectionStringBuilder(Server) { Database = _name };
        var serving = new NpgsqlConnectionStringBuilder(owner.ConnectionString) { Username = ServingRole };
        Choice = new DatabaseChoice.Postgres(serving.ConnectionString, owner.ConnectionString);
    }

    /// <summary>A data folder of its own, in which database and keys are those of another.</summary>
    private TestDatabase(TestDatabase other)
    {
        (Folder, Choice, _borrowed) = (Directory.CreateTempSubdirectory("cooplessons-").FullName, other.Choice, true);
        Directory.CreateSymbolicLink(Path.Combine(Folder, "keys"), Path.Combine(other.Folder, "keys"));
        if (other.Choice is DatabaseChoice.Sqlite)
            File.CreateSymbolicLink(Path.Combine(Folder, "cooplessons.db"), Path.Combine(other.Folder, "cooplessons.db"));
    }

    public static bool IsPostgres => Server is not null;

    public string Folder { get; }
    public DatabaseChoice Choice { get; }

    /// <summary>The settings by which the web program finds this database.</summary>
    public IEnumerable<KeyValuePair<string, string>> Settings()
    {
        yield return new("CoopLessons:Data", Folder);
        if (Choice is DatabaseChoice.Postgres postgres)
        {
            yield return new("ConnectionStrings:Postgres", postgres.Serving);
            yield return new("ConnectionStrings:PostgresOwner", postgres.Owner);
        }
    }

    /// <summary>The same database for another web program; what it holds goes with the first.</summary>
    public TestDatabase Beside() => new(this);

    public void Dispose()
    {
        if (_borrowed)
        {
            if (Directory.Exists(Folder))
                Directory.Delete(Folder, recursive: true);
            return;
        }

        // A test host is disposed both ways.
        if (!Directory.Exists(Folder))
            return;
        if (Choice is DatabaseChoice.Postgres postgres)
        {
            NpgsqlConnection.ClearAllPools();
            Execute($"DROP DATABASE IF EXISTS {_name} WITH (FORCE)");
        }
        else
        {
            Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        }

        Directory.Delete(Folder, recursive: true);
    }

    private static void Execute(string sql)
    {
        using var connection = new NpgsqlConnection(Server);
        connection.Open();
        using var command = new NpgsqlCommand(sql, connection);
        command.ExecuteNonQuery();
    }
}
