using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Benchmarks.Floor;

/// <summary>One line of text, saved: the least that can be called kept.</summary>
public sealed class BareRow
{
    public Guid Id { get; init; }
    public string Text { get; init; } = "";
    public DateTime WrittenAt { get; init; }
}

public sealed class BareDb(DbContextOptions<BareDb> options) : DbContext(options)
{
    public DbSet<BareRow> Rows => Set<BareRow>();

    /// <summary>Makes the table; on SQLite with the log and the waiting for the disk that the program uses.</summary>
    public async Task MakeAsync()
    {
        await Database.EnsureCreatedAsync();
        if (!Database.IsSqlite())
            return;
        var journal = await Database.SqlQueryRaw<string>("PRAGMA journal_mode=WAL").ToListAsync();
        // WAL stays with the file; waiting for the disk (2, FULL) is what this build of SQLite does unasked.
        var synchronous = await Database.SqlQueryRaw<int>("PRAGMA synchronous").ToListAsync();
        if (journal is not ["wal"] || synchronous is not [2])
            throw new InvalidOperationException($"The floor does not wait for the disk: {journal.SingleOrDefault()}, {synchronous.SingleOrDefault()}.");
    }
}
