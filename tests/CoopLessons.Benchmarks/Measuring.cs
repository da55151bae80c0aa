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
    /// <param name="args">Parts of the names of what is measured; nothing for all. “weeks”, “packet”, “portfolio” and “phone” print tables of their own instead.</param>
    public static int Main(string[] args)
    {
        if (args is ["weeks"])
            return LayingOutWeeks.Print(Console.Out);
        if (args is ["phone", var published])
            return VisitingByPhone.PrintAsync(published, Console.Out).GetAwaiter().GetResult();
        if (args is ["packet"])
            return MakingAPacket.Print(Console.Out);
        if (args is ["packet", "in", var folder])
            return MakingAPacket.Make(folder);
        if (args is ["portfolio"])
            return MakingAPortfolio.Print(Console.Out);
        if (args is ["portfolio", "in", var there])
            return MakingAPortfolio.Make(there);
        var config = ManualConfig.Create(DefaultConfig.Instance)
            // Server and client share this process, so that both sides of a ratio are measured alike.
            .AddJob(Job.Default.WithToolchain(InProcessEmitToolchain.Instance).WithWarmupCount(6).WithIterationCount(15))
            .AddLogicalGroupRules(BenchmarkLogicalGroupRule.ByCategory)
            .AddColumn(CategoriesColumn.Default)
            .HideColumns(Column.Job, Column.Toolchain, Column.Type, Column.Namespace)
            .WithOptions(ConfigOptions.JoinSummary);
        Type[] all = [typeof(OpeningAPage), typeof(FittingAUnit), typeof(StandingUnderTheLaw), typeof(SavingOnSqlite), .. ThrowAwayPostgres.IsThere ? [typeof(SavingOnPostgres)] : Type.EmptyTypes];
        var measured = all.Where(t => args.Length == 0 || args.Any(a => t.Name.Contains(a, StringComparison.OrdinalIgnoreCase))).ToArray();
        if (measured.Length == 0)
        {
            Console.Error.WriteLine($"Nothing is called so. There are: {string.Join(", ", all.Select(t => t.Name))}, weeks, packet, portfolio, and phone FOLDER of a published program.");
            return 2;
        }

        var summaries = BenchmarkRunner.Run(measured, config);
        return summaries.SelectMany(s => s.Reports).All(r => r.Success) && summaries.All(s => !s.HasCriticalValidationErrors) ? 0 : 1;
    }
}
