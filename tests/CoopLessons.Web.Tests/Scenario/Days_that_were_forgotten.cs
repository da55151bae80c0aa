using CoopLessons.Data.Log;
using CoopLessons.Data.Schedule;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace CoopLessons.Web.Tests.Scenario;

/// <summary>The co-op as it is loaded on a Sunday in late November: the Alder family left two school days without a word.</summary>
public sealed class Days_that_were_forgotten : IAsyncLifetime
{
    private static readonly DateOnly Sunday = new(2026, 11, 29);
    private MillraceDatabase _coop = null!;

    public async Task InitializeAsync() => _coop = await MillraceDatabase.LoadedOn(Sunday);

    public async Task DisposeAsync() => await _coop.DisposeAsync();

    [Fact]
    public async Task Are_given_back_by_the_log()
    {
        var alder = _coop.Loaded["Alder"];
        var days = await _coop.In(alder, db => UnloggedDays.LoadAsync(db, Sunday, default));
        Assert.Equal(2, days.Days.Count);
        Assert.DoesNotContain(days.Days, days.Logged.Contains);
        Assert.Contains(days.Open, w => days.Days.Contains(w.Session.Date));
        // What was planned on other days of the two weeks is decided.
        Assert.True(await _coop.In(alder, db => db.PlannedSessions.Where(s => s.Date < Sunday && !days.Days.Contains(s.Date)).AllAsync(s => s.State != SessionState.Planned)));
    }

    [Fact]
    public async Task Are_one_family_s_alone() =>
        Assert.Empty((await _coop.In(_coop.Loaded["Cedar"], db => UnloggedDays.LoadAsync(db, Sunday, default))).Days);
}
