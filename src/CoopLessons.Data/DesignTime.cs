using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace CoopLessons.Data;

/// <summary>For the migrations tool, which opens no connection.</summary>
public sealed class SqliteDesign : IDesignTimeDbContextFactory<SqliteAppDb>
{
    public SqliteAppDb CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<SqliteAppDb>().UseSqlite("Data Source=:memory:").Options, new CurrentFamily());
}

/// <summary>For the migrations tool, which opens no connection.</summary>
public sealed class PostgresDesign : IDesignTimeDbContextFactory<PostgresAppDb>
{
    public PostgresAppDb CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<PostgresAppDb>().UseNpgsql("Host=design").Options, new CurrentFamily());
}
