using System.Net;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Records;

[Collection(SharedServer.Name)]
public sealed class Records_asked_for_by_others(TestServer server)
{
    [Fact]
    public async Task Of_another_family_are_not_there()
    {
        var theirs = await KeptLog.OfAsync(server, "Linnet");
        var mine = await KeptLog.OfAsync(server, "Linnet");
        foreach (var path in new[]
        {
            theirs.RecordsPath(), $"/records?learner={theirs.Linnet}", $"/records?year={theirs.YearId}", $"/records?learner={mine.Linnet}&year={theirs.YearId}",
            theirs.EntriesPath(), mine.EntriesPath($"&subject={theirs.Subjects["science"]}"), $"/records/entries?learner={theirs.Linnet}&year={mine.YearId}",
            theirs.DayPath("2026-03-02"), theirs.FilePath("pdf"), theirs.FilePath("csv"), theirs.FilePath("xlsx"),
            $"/records/{theirs.Linnet}/{mine.YearId}/hours.csv", $"/records/{mine.Linnet}/{theirs.YearId}/hours.csv",
        })
        {
            var answer = await mine.Guardian.OpenAsync(path);
            Assert.True(answer.StatusCode == HttpStatusCode.NotFound, $"{path} answered {answer.StatusCode}");
            Assert.DoesNotContain("Linnet", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("/records?learner=linnet")]
    [InlineData("/records?year=2025")]
    [InlineData("/records/entries?subject=science")]
    [InlineData("/records/entries?month=2026-13")]
    [InlineData("/records/entries?month=March")]
    [InlineData("/records/entries?place=moon")]
    [InlineData("/records/entries?place=1")]
    [InlineData("/records/entries?date=2026-02-30")]
    [InlineData("/records/day/linnet/2026-03-02")]
    [InlineData("/records/x/y/hours.csv")]
    public async Task That_make_no_sense_are_not_there(string path)
    {
        var log = await KeptLog.OfAsync(server, "Linnet");
        Assert.Equal(HttpStatusCode.NotFound, (await log.Guardian.OpenAsync(path)).StatusCode);
    }

    [Fact]
    public async Task Are_closed_to_helpers_and_ask_strangers_to_sign_in()
    {
        var log = await KeptLog.OfAsync(server, "Linnet");
        var helper = await server.HelperAsync(log.Family);
        foreach (var path in new[] { log.RecordsPath(), log.EntriesPath(), log.DayPath("2026-03-02"), log.FilePath("csv") })
        {
            Assert.Equal(HttpStatusCode.Forbidden, (await helper.OpenAsync(path)).StatusCode);
            var stranger = await server.Visitor().OpenAsync(path);
            Assert.Equal(HttpStatusCode.Redirect, stranger.StatusCode);
            Assert.Contains("/sign-in", stranger.Headers.Location!.OriginalString, StringComparison.Ordinal);
        }
    }
}
