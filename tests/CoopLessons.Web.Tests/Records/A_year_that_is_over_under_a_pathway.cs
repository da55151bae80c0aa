using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;
using CoopLessons.Data.Families;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Records;

/// <summary>
/// Missouri: at least 1,000 hours, 600 of them in the core subjects, 400 of those at the regular home (RSMo § 167.012.2(2),
/// as of 28 August 2024). A year with 1,040 hours, 640 of core and 380 of core at home lacks 400 − 380 = 20 hours.
/// </summary>
[Collection(SharedServer.Name)]
public sealed class A_year_that_is_over_under_a_pathway(TestServer server)
{
    private const string Whole = "20 hours of core at home are missing: 380 of 400 (RSMo § 167.012.2(2)). Met: 1,040 of 1,000 hours; 640 of 600 hours of core.";

    [Fact]
    public async Task Says_in_one_sentence_what_is_missing_and_where_the_law_says_so()
    {
        var (log, year) = await MissouriAsync();
        var page = await log.Guardian.GetAsync(log.StandingPath(year: year));
        Assert.Equal(Whole, page.QuerySelector("main .standing")!.Plain());
        var records = await log.Guardian.GetAsync($"/records?learner={log.Linnet}&year={year}");
        Assert.Equal(Whole, records.QuerySelector("#standing-sentence")!.Plain());
        Assert.Contains("20 hours of core at home are missing", records.QuerySelector("section[aria-labelledby=standing]")!.Plain(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Gives_every_figure_its_source_and_asks_to_confirm_what_was_not_read_in_the_law_itself()
    {
        var (log, year) = await MissouriAsync();
        var page = await log.Guardian.GetAsync(log.StandingPath(year: year));
        var lines = page.QuerySelectorAll("main section.sheet > ul.rows > li").Where(l => l.QuerySelector(".state") is not null).ToList();

        Assert.Equal(["1,040 of 1,000 hours met", "640 of 600 hours met", "380 of 400 hours not met"], lines.Select(l => l.QuerySelector(".row-side")!.Plain()));
        Assert.All(lines, l => Assert.Contains("RSMo § 167.012.2(2) ·", l.Plain(), StringComparison.Ordinal));
        Assert.All(lines, l => Assert.Contains("confirm this", l.Texts(".tag")));
        Assert.StartsWith("Confirm this.", Assert.Single(page.Texts("main section.sheet > .note")), StringComparison.Ordinal);
        Assert.Contains("Law changes.", page.QuerySelector("main")!.Plain(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_foretold_nothing()
    {
        var (log, year) = await MissouriAsync();
        var page = await log.Guardian.GetAsync(log.StandingPath(year: year));
        Assert.Empty(page.QuerySelectorAll("main svg[role=img], main details.forecast"));
        Assert.Empty(page.QuerySelectorAll("main form"));
    }

    [Fact]
    public async Task Stays_apart_from_the_years_before_and_after_it()
    {
        var (log, year) = await MissouriAsync();
        await log.FillAsync(new(2024, 6, 20), 11, 600, "science");
        await log.FillAsync(new(2025, 7, 1), 5, 600, "science");
        var page = await log.Guardian.GetAsync(log.StandingPath(year: year));
        Assert.Equal(Whole, page.QuerySelector("main .standing")!.Plain());
        var running = await log.Guardian.GetAsync(log.StandingPath());
        Assert.Contains("50 of 1,000 hours", running.QuerySelector("main .standing")!.Plain(), StringComparison.Ordinal);
    }

    private async Task<(KeptLog Log, Guid Year)> MissouriAsync()
    {
        var log = await KeptLog.OfAsync(server, "Linnet").StandsAsync("US-MO", "home-school", new(2023, 7, 1));
        var year = new SchoolYear(Guid.CreateVersion7(), "2024–25", new(new DateOnly(2024, 7, 1), new DateOnly(2025, 6, 30)), Weekdays.MondayToFriday);
        await log.AddAsync(year);
        await log.FillAsync(new(2024, 9, 2), 38, 600, "reading");
        await log.FillAsync(new(2024, 11, 4), 26, 600, "science", Place.Coop);
        await log.FillAsync(new(2025, 1, 6), 40, 600, "art");
        return (log, year.Id);
    }
}
