using CoopLessons.Data.Scenario;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Scenario;

public sealed class Pieces_of_a_coop_loaded_in_January
{
    [Fact]
    public async Task Are_those_made_until_then()
    {
        var today = new DateOnly(2026, 1, 28);
        await using var coop = await MillraceDatabase.LoadedOn(today);
        var captions = await coop.In(coop.Loaded.Families.Single(f => f.Name == "Alder"), db => db.Pieces.AsNoTracking().Select(p => p.Caption).ToListAsync());
        var told = CoopPieces.Read().Families["Alder"].Where(p => p.On is not null).ToLookup(p => p.On <= today, p => p.Caption);
        Assert.NotEmpty(told[true]);
        Assert.NotEmpty(told[false]);
        Assert.Empty(told[true].Except(captions));
        Assert.Empty(told[false].Intersect(captions));
    }
}
