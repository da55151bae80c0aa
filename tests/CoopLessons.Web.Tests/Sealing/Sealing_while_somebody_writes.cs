using System.Data.Common;
using CoopLessons.Data;
using CoopLessons.Data.Databases;
using CoopLessons.Data.Log;
using CoopLessons.Data.Sealing;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Tests.App;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.Extensions.DependencyInjection;

namespace CoopLessons.Web.Tests.Sealing;

/// <summary>One guardian seals in the moment in which another's phone sends what it kept.</summary>
[Collection(SharedServer.Name)]
public sealed class Sealing_while_somebody_writes(TestServer server)
{
    [Fact]
    public async Task Waits_for_an_entry_that_was_looked_at_and_is_not_saved_yet()
    {
        var year = await FinishedYear.MakeAsync(server, isSealed: false);
        var tried = 0;
        await AsAsync(year, WriteAsync, "SealedYears", async () =>
        {
            tried++;
            await Assert.ThrowsAnyAsync<DbException>(() => AsAsync(year, SealAsync));
        });
        Assert.Equal(1, tried);
        await year.SealAsync();
        Assert.True((await year.CheckAsync(year.Linnet)).Holds);
        Assert.Equal(65, await year.Family.FromDbAsync(db => db.LogRevisions.Where(r => r.What == "Sent late").SelectMany(r => r.Times).SumAsync(t => t.Minutes)));
    }

    [Fact]
    public async Task Lets_nothing_in_while_its_records_are_made()
    {
        var year = await FinishedYear.MakeAsync(server, isSealed: false);
        var tried = 0;
        await AsAsync(year, SealAsync, "LogRevisions", async () =>
        {
            tried++;
            await Assert.ThrowsAnyAsync<DbException>(() => AsAsync(year, WriteAsync));
        });
        Assert.Equal(1, tried);
        Assert.True((await year.CheckAsync(year.Linnet)).Holds);
        await Assert.ThrowsAsync<SealedYearException>(() => year.Family.WithDbAsync(db => WriteAsync(db, year)));
    }

    [Fact]
    public async Task Is_refused_where_the_year_has_other_days_by_now()
    {
        var year = await FinishedYear.MakeAsync(server, isSealed: false);
        await year.Family.WithDbAsync(async db =>
        {
            var seen = await db.SchoolYears.AsNoTracking().SingleAsync(y => y.Id == year.YearId);
            await year.BehindAsync<CoopLessons.Data.Families.SchoolYear>("\"Last\" = '2025-06-20'", $"\"Id\" = {FinishedYear.Sql(year.YearId)}");
            Assert.False(await db.SealAsync(seen, year.Author, FinishedYear.Sealed, TestServer.Start.UtcDateTime, default));
            Assert.False(await db.SealedYears.AnyAsync());
        });
    }

    [Fact]
    public async Task Reading_whether_it_holds_sees_a_late_correction_whole_or_not_at_all()
    {
        var year = await FinishedYear.MakeAsync(server);
        var amended = 0;
        SealCheck? check = null;
        await AsAsync(
            year,
            async (db, _) => check = await db.CheckAsync(await db.SealedYears.AsNoTracking().SingleAsync(), year.Wren, default),
            "Amendments",
            async () =>
            {
                amended++;
                await year.AmendAsync();
            });
        Assert.Equal(1, amended);
        Assert.True(check!.Holds);
        Assert.True((await year.CheckAsync(year.Wren)).Holds);
    }

    private static async Task WriteAsync(AppDb db, FinishedYear year)
    {
        db.LogEntries.Add(LogEntry.Write(Guid.CreateVersion7(), year.Facts(FinishedYear.Monday, 65, year.Linnet) with { What = "Sent late" }, year.Author, TestServer.Start.UtcDateTime));
        await db.SaveChangesAsync();
    }

    private static async Task SealAsync(AppDb db, FinishedYear year) =>
        Assert.True(await db.SealAsync(await db.SchoolYears.SingleAsync(y => y.Id == year.YearId), year.Author, FinishedYear.Sealed, TestServer.Start.UtcDateTime, default));

    /// <summary>Works on the family's rows with a connection that does not wait long for others.</summary>
    /// <param name="reads">The first time that something is read from this table, <paramref name="meanwhile"/> is done before it goes on.</param>
    private async Task AsAsync(FinishedYear year, Func<AppDb, FinishedYear, Task> work, string reads = "", Func<Task>? meanwhile = null)
    {
        var services = new ServiceCollection().AddAppDb(server.Database.Choice);
        if (meanwhile is not null)
        {
            services.ConfigureDbContext<SqliteAppDb>(o => o.AddInterceptors(new AfterReading(reads, meanwhile)));
            services.ConfigureDbContext<PostgresAppDb>(o => o.AddInterceptors(new AfterReading(reads, meanwhile)));
        }

        await using var own = services.BuildServiceProvider();
        await using var scope = own.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentFamily>().ActForProgram(year.Family.Id);
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        await db.Database.OpenConnectionAsync();
        if (db.Database.GetDbConnection() is SqliteConnection embedded)
            embedded.DefaultTimeout = 1;
        else
            await db.Database.ExecuteSqlAsync($"SET lock_timeout = '200ms'");
        await work(db, year);
    }

    private sealed class AfterReading(string table, Func<Task> meanwhile) : DbCommandInterceptor
    {
        private bool _done;

        public override async ValueTask<DbDataReader> ReaderExecutedAsync(DbCommand command, CommandExecutedEventData eventData, DbDataReader result, CancellationToken cancellationToken = default)
        {
            if (_done || !command.CommandText.Contains($"FROM \"{table}\"", StringComparison.Ordinal))
                return result;
            _done = true;
            await meanwhile();
            return result;
        }
    }
}
