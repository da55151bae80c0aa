using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace CoopLessons.Data.Databases;

/// <summary>Which database holds everything.</summary>
public abstract record DatabaseChoice
{
    /// <summary>The embedded database in one file.</summary>
    public sealed record Sqlite(string File) : DatabaseChoice
    {
        public string ConnectionString => $"Data Source={File};Foreign Keys=True";
    }

    /// <summary>A PostgreSQL server.</summary>
    /// <param name="Serving">Connection of the role that serves: no superuser, no right to pass row security.</param>
    /// <param name="Owner">Connection of the role that owns and migrates the tables; often the same.</param>
    public sealed record Postgres(string Serving, string Owner) : DatabaseChoice
    {
        /// <summary>The serving role where it is another than the owner; else null.</summary>
        public string? SeparateRole
        {
            get
            {
                var role = new NpgsqlConnectionStringBuilder(Serving).Username;
                return role == new NpgsqlConnectionStringBuilder(Owner).Username ? null : role;
            }
        }
    }
}

public static class DatabaseRegistration
{
    /// <summary>Registers <see cref="AppDb"/> and the family whose rows each scope may see.</summary>
    public static IServiceCollection AddAppDb(this IServiceCollection services, DatabaseChoice choice)
    {
        services.AddScoped<CurrentFamily>();
        services.AddSingleton(choice);
        switch (choice)
        {
            case DatabaseChoice.Sqlite sqlite:
                services.AddDbContext<AppDb, SqliteAppDb>(o => o
                    .UseSqlite(sqlite.ConnectionString)
                    .AddInterceptors(new SaveGuard(), new Sealing.SealGuard(), new SqliteSafety()));
                break;
            case DatabaseChoice.Postgres postgres:
                services.AddSingleton(_ => NpgsqlDataSource.Create(postgres.Serving));
                services.AddDbContext<AppDb, PostgresAppDb>((scope, o) => o
                    .UseNpgsql(scope.GetRequiredService<NpgsqlDataSource>())
                    .AddInterceptors(new SaveGuard(), new Sealing.SealGuard(), new FamilyConnection(scope.GetRequiredService<CurrentFamily>())));
                break;
        }

        return services;
    }
}
