using BenchmarkDotNet.Attributes;
using CoopLessons.Benchmarks.Floor;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Benchmarks.Measured;

/// <summary>The day's page of a family in the middle of its year, signed in, beside a bare page.</summary>
[BenchmarkCategory("Opening a page")]
public class OpeningAPage
{
    private readonly string _folder = Directory.CreateTempSubdirectory("cooplessons-bare-").FullName;
    private BareHost _bare = null!;
    private CoopServer _coop = null!;
    private Browser _stranger = null!;
    private Browser _beginner = null!;
    private Browser _guardian = null!;

    [GlobalSetup]
    public async Task SetUpAsync()
    {
        _bare = await BareHost.StartAsync(o => o.UseSqlite($"Data Source={Path.Combine(_folder, "bare.db")}"));
        _stranger = new Browser(_bare.Address);
        _coop = await CoopServer.StartAsync();
        _beginner = await MoveInAsync(entries: 0);
        _guardian = await MoveInAsync(AlderFamily.AYearOfEntries);
    }

    [GlobalCleanup]
    public async Task CleanUpAsync()
    {
        _stranger.Dispose();
        _beginner.Dispose();
        _guardian.Dispose();
        await _coop.DisposeAsync();
        await _bare.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    [Benchmark(Baseline = true, Description = "A bare Razor page")]
    public Task<string> Bare() => _stranger.OpenAsync("/");

    [Benchmark(Description = "Today: 10 sessions, an empty log")]
    public Task<string> TodayAtFirst() => _beginner.OpenAsync("/today");

    [Benchmark(Description = "Today: 10 sessions, 1,500 entries in the year")]
    public Task<string> Today() => _guardian.OpenAsync("/today");

    private async Task<Browser> MoveInAsync(int entries)
    {
        var guardian = (await AlderFamily.MoveInAsync(_coop, entries)).Guardian;
        var page = await guardian.OpenAsync("/today");
        var lines = page.Split("id=\"line-").Length - 1;
        return lines == AlderFamily.Sessions ? guardian : throw new InvalidOperationException($"The day shows {lines} sessions.");
    }
}
