using Npgsql;

namespace CoopLessons.Benchmarks.Floor;

/// <summary>A database of its own on the server that COOPLESSONS_TEST_POSTGRES names, with a role that serves.</summary>
public sealed class ThrowAwayPostgres
{
    private const string Role = "cooplessons_app";
    private static readonly string? Server = Environment.GetEnvironmentVariable("COOPLESSONS_TEST_POSTGRES");
    private readonly string _name = "measured_" + Guid.NewGuid().ToString("N");

    public static bool IsThere => !string.IsNullOrWhiteSpace(Server);

    public string Owner => new NpgsqlConnectionStringBuilder(Server) { Database = _name }.ConnectionString;

    /// <summary>The password, where the server asks for one, is the owner's: the role is made for the measuring alone.</summary>
    public string Serving => new NpgsqlConnectionStringBuilder(Owner) { Username = Role }.ConnectionString;

    /// <summary>Makes the database, and the role where it is not there; says so where the server does not wait for the disk.</summary>
    public async Task MakeAsync()
    {
        var password = new NpgsqlConnectionStringBuilder(Server).Password;
        await RunAsync($"DO $$ BEGIN CREATE ROLE {Role} LOGIN NOSUPERUSER NOBYPASSRLS; EXCEPTION WHEN duplicate_object THEN NULL; END $$");
        if (!string.IsNullOrEmpty(password))
            await RunAsync($"ALTER ROLE {Role} PASSWORD '{password.Replace("'", "''", StringComparison.Ordinal)}'");
        await RunAsync($"CREATE DATABASE {_name}");
        if (await RunAsync("SHOW fsync") is not "on" || await RunAsync("SHOW synchronous_commit") is not "on")
            Console.WriteLine("// This PostgreSQL does not wait for the disk: both sides of its ratios are measured so.");
    }

    public async Task DropAsync()
    {
        NpgsqlConnection.ClearAllPools();
        await RunAsync($"DROP DATABASE IF EXISTS {_name} WITH (FORCE)");
    }

    private static async Task<object?> RunAsync(string sql)
    {
        await using var connection = new NpgsqlConnection(Server);
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(sql, connection);
        return await command.ExecuteScalarAsync();
    }
}
