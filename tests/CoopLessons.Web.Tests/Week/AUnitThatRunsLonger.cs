using System.Net;
using CoopLessons.Data.Planning.Futures;
using CoopLessons.Web.Planning;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Units;

namespace CoopLessons.Web.Tests.Week;

/// <summary>
/// Of the first week of “From Grain to Loaf” one activity is not done; two of the second stand in the next week, and a second
/// unit begins in May. Today is Thursday of the first week.
/// </summary>
[Collection(PlanningServer.Name)]
public sealed class AUnitThatRunsLonger(TestServer server)
{
    private const string Draw = "w1-06-draw-an-ear-of-wheat";
    private const string Walk = "w2-08-walk-among-grasses";
    private const string Donkey = "w2-09-the-millers-donkey";
    private static readonly DateOnly Monday = AWeekToLayOut.Monday;

    private async Task<(AWeekToLayOut Week, Guid Songs, string Path, string Key)> MadeAsync()
    {
        var week = await AWeekToLayOut.MakeAsync(server, a => a.Week == 1 && a.Code != Draw, courses: false);
        await week.PlanAsync(Walk, Monday, 9 * 60);
        await week.PlanAsync(Donkey, Monday.AddDays(2), 10 * 60);
        var songs = await week.Family.MillSongsAsync();
        await week.Family.WithDbAsync(async db =>
        {
            (await db.Units.FindAsync(week.Family.Id, songs.Id))!.Take(Monday.AddDays(49));
            await db.SaveChangesAsync();
        });
        return (week, songs.Id, $"/week/ways/unit/{week.Unit}", FamilyWork.KeyOf(week.Unit));
    }

    private static Task<Dictionary<Guid, DateOnly?>> BeginningsAsync(AWeekToLayOut week) =>
        week.Family.FromDbAsync(db => Task.FromResult(db.Units.ToDictionary(u => u.Id, u => u.StartsOn)));

    [Fact]
    public async Task Takes_the_units_behind_it_along_or_overlaps_with_them_or_ends_on_its_day()
    {
        var (week, songs, path, key) = await MadeAsync();
        var page = await week.WaysAsync(path, key);
        Assert.Equal("From Grain to Loaf runs a week longer", page.Text("h1"));
        Assert.Equal("Everything a week later Let them overlap End on its day", page.Text(".ways h2"));
        var futures = week.Outcome<UpsetOutcome>(key).Futures;
        Assert.Equal([week.Unit, songs], futures[0].Proposal.Units.OrderBy(u => u.From).Select(u => u.UnitId));
        Assert.Equal([week.Unit], futures[1].Proposal.Units.Select(u => u.UnitId));
        Assert.Empty(futures[2].Proposal.Units);
        Assert.Equal([week.Activities[Draw]], futures[2].Proposal.LeftOut);
        Assert.Equal(["Draw an ear of wheat"], futures[2].LetGo);
    }

    [Theory]
    [InlineData(FutureKind.Shift)]
    [InlineData(FutureKind.Thin)]
    [InlineData(FutureKind.LetGo)]
    public async Task Is_taken_and_undone_as_a_whole(FutureKind kind)
    {
        var (week, songs, path, key) = await MadeAsync();
        var (rows, beginnings) = (await week.RowsAsync(), await BeginningsAsync(week));
        var page = await week.WaysAsync(path, key);
        var to = await week.Guardian.SubmitAsync(page, within: $"section[aria-labelledby=way-{kind}] form").RedirectedAsync();
        var later = kind == FutureKind.LetGo ? 0 : 7;
        Assert.Equal(Monday.AddDays(later), (await week.SessionOfAsync(Walk)).Date);
        Assert.Equal(Monday.AddDays(2 + later), (await week.SessionOfAsync(Donkey)).Date);
        var after = await BeginningsAsync(week);
        Assert.Equal(beginnings[week.Unit]!.Value.AddDays(later), after[week.Unit]);
        Assert.Equal(beginnings[songs]!.Value.AddDays(kind == FutureKind.Shift ? 7 : 0), after[songs]);

        await week.Guardian.SubmitAsync(await week.Guardian.GetAsync(to), within: ".undo form").RedirectedAsync();
        Assert.Equal(rows, await week.RowsAsync());
        Assert.Equal(beginnings, await BeginningsAsync(week));
    }

    [Fact]
    public async Task Is_not_taken_once_the_plan_has_changed()
    {
        var (week, _, path, key) = await MadeAsync();
        var page = await week.WaysAsync(path, key);
        await week.PlanAsync(Draw, Monday.AddDays(1), 9 * 60);
        var rows = await week.RowsAsync();
        var answer = await week.Guardian.SubmitAsync(page, within: $"section[aria-labelledby=way-{FutureKind.Shift}] form").AnsweredAsync(HttpStatusCode.Conflict);
        Assert.Contains("Nothing was taken; look once more.", answer.Text("main"), StringComparison.Ordinal);
        Assert.Equal(rows, await week.RowsAsync());
    }

    [Fact]
    public async Task Is_one_that_was_taken()
    {
        var (week, _, _, _) = await MadeAsync();
        var shelf = await week.Family.TakeInAsync("the-night-sky");
        using var answer = await week.Guardian.OpenAsync($"/week/ways/unit/{shelf}");
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }
}
