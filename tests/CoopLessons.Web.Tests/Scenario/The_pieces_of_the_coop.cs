using CoopLessons.Data.Log;
using CoopLessons.Data.Scenario;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Scenario;

[Collection(OneCoop.Name)]
public sealed class The_pieces_of_the_coop(LoadedOnce loaded)
{
    private readonly MillraceDatabase _coop = loaded.Coop;
    private LoadedFamily Alder => _coop.Loaded.Families.Single(f => f.Name == "Alder");

    [Fact]
    public async Task Show_the_work_of_each_child_over_several_months_with_what_they_said()
    {
        var pieces = await _coop.In(Alder, db => db.Pieces.AsNoTracking().ToListAsync());
        Assert.True(pieces.Count >= 12, $"Only {pieces.Count} pieces.");
        Assert.True(pieces.Select(p => p.Date.Month).Distinct().Count() >= 3);
        Assert.All(pieces, p => Assert.True(p.Caption.Length > 0 && p.SmallHash is not null && p.Date < _coop.Today));
        Assert.Equal(Alder.Learners.Select(l => l.Id).Order(), pieces.SelectMany(p => p.Learners).Distinct().Order());
        Assert.Contains(pieces, p => p.SetAside);
    }

    [Fact]
    public async Task Belong_to_entries_of_their_day_children_and_family()
    {
        var odd = await _coop.In(Alder, async db =>
        {
            var entries = await db.Standing().ToDictionaryAsync(r => r.EntryId);
            var pieces = await db.Pieces.AsNoTracking().ToListAsync();
            return pieces.Where(p => entries[p.EntryId!.Value] is var entry && (entry.Date != p.Date || p.Learners.Exists(l => entry.Times.All(t => t.LearnerId != l)))).Select(p => p.Caption).ToList();
        });
        Assert.Empty(odd);
    }
}
