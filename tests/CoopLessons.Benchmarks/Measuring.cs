using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using CoopLessons.Benchmarks.Floor;
using CoopLessons.Benchmarks.Measured;

namespace CoopLessons.Benchmarks;

/// <summary>
/// How much slower a page, and a saved entry, is than the least that the same machinery can do in the same run. The
/// ratio is the result: times alone say more about the machine. With COOPLESSONS_TEST_POSTGRES (a connection of a role
/// that may make databases and roles) the saving is measured on PostgreSQL, too.
/// </summary>
public static class Measuring
{
    public static int Main()
    {
        var config = ManualConfig.Create(DefaultConfig.Instance)
            // Server and client share this process, so that both sides of a ratio are measured alike.
            .AddJob(Job.Default.WithToolchain(InProcessEmitToolchain.Instance).WithWarmupCount(6).WithIterationCount(15))
            .AddLogicalGroupRules(BenchmarkLogicalGroupRule.ByCategory)
            .AddColumn(CategoriesColumn.Default)
            .HideColumns(Column.Job, Column.Toolchain, Column.Type, Column.Namespace)
            .WithOptions(ConfigOptions.JoinSummary);
        Type[] measured = ThrowAwayPostgres.IsThere
            ? [typeof(OpeningAPage), typeof(StandingUnderTheLaw), typeof(SavingOnSqlite), typeof(SavingOnPostgres)]
            : [typeof(OpeningAPage), typeof(StandingUnderTheLaw), typeof(SavingOnSqlite)];
        var summaries = BenchmarkRunner.Run(measured, config);
        return summaries.SelectMany(s => s.Reports).All(r => r.Success) && summaries.All(s => !s.HasCriticalValidationErrors) ? 0 : 1;
    }
}
