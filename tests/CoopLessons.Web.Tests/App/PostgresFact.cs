namespace CoopLessons.Web.Tests.App;

/// <summary>A fact about what PostgreSQL does by itself; passed over in the SQLite run, where there is no such wall.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class PostgresFactAttribute : FactAttribute
{
    public PostgresFactAttribute()
    {
        if (!TestDatabase.IsPostgres)
            Skip = "Holds on PostgreSQL only; the run on PostgreSQL checks it.";
    }
}
