using CoopLessons.Data.OwnLists;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Scenario;

public sealed class The_lists_of_the_coop : IAsyncLifetime
{
    private static readonly DateOnly Tuesday = new(2026, 11, 10);
    private MillraceDatabase _coop = null!;

    public async Task InitializeAsync() => _coop = await MillraceDatabase.LoadedOn(Tuesday);

    public async Task DisposeAsync() => await _coop.DisposeAsync();

    [Fact]
    public async Task Give_the_Alders_three_ways_to_read_and_nobody_a_PIN()
    {
        var alder = _coop.Loaded["Alder"];
        var lists = await _coop.In(alder, db => db.OwnLists.ToListAsync());
        Assert.Equal(
            [("Heron", ReadingLevel.AllWords), ("Linnet", ReadingLevel.ShortWords), ("Wren", ReadingLevel.Pictures)],
            alder.Learners.Select(l => (l.Name, lists.Single(o => o.LearnerId == l.Id).Reading)));
        Assert.All(lists, l => Assert.False(l.HasPin));
    }

    [Fact]
    public async Task Let_one_thing_wait_for_a_guardian_and_leave_the_log_alone()
    {
        var alder = _coop.Loaded["Alder"];
        var said = Assert.Single(await _coop.In(alder, db => db.ChildrenSaid.ToListAsync()));
        Assert.True(said.IsWaiting);
        Assert.Equal(Tuesday, said.Date);
        Assert.Equal("Linnet", alder.Learners.Single(l => l.Id == said.LearnerId).Name);
        Assert.NotNull(said.SessionId);
        Assert.Equal(0, await _coop.In(alder, db => db.LogRevisions.CountAsync(r => r.Date == Tuesday)));
    }
}
