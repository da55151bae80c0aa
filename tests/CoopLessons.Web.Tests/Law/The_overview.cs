using System.Net;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Requirements;
using CoopLessons.Data.Families;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Law;

[Collection(SharedServer.Name)]
public sealed class The_overview(TestServer server)
{
    [Fact]
    public async Task Tells_each_childs_pathway_and_offers_to_choose_where_there_is_none()
    {
        var family = await server.FamilyAsync();
        var (wren, linnet) = (await family.LearnerAsync("Wren", 0), await family.LearnerAsync("Linnet", 1));
        await family.StandsAsync(wren, "US-MO", "home-school");
        await family.OwnAsync("Our own way", linnet);
        var rook = await family.LearnerAsync("Rook", 2);
        var page = await family.Guardian.GetAsync("/family/law");
        var sheets = page.QuerySelectorAll("section.sheet").ToList();
        Assert.Contains("Missouri: " + Catalog.Of50AndDc["US-MO"]!.Pathway("home-school")!.Name, sheets[0].TextContent, StringComparison.Ordinal);
        Assert.Contains("Our own way", sheets[1].TextContent, StringComparison.Ordinal);
        Assert.Contains("No pathway is chosen", sheets[2].TextContent, StringComparison.Ordinal);
        Assert.NotNull(page.QuerySelector($"a.primary[href='/family/law/{rook}/choose']"));
        Assert.Contains("Law changes", page.Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal(page.QuerySelectorAll("main a[href]").Select(a => (a.TextContent, a.GetAttribute("href"))).Distinct().Count(), page.QuerySelectorAll("main a[href]").Select(a => a.TextContent).Distinct().Count());
    }

    [Fact]
    public async Task Sets_changes_and_forgets_a_grade()
    {
        var family = await server.FamilyAsync();
        var wren = await family.LearnerAsync();
        Assert.Contains("usually be grade 3", (await family.Guardian.GetAsync("/family/law")).Body!.TextContent, StringComparison.Ordinal);
        foreach (var (sent, kept) in new (string, int?)[] { ("3", 3), ("0", 0), ("12", 12), ("", null) })
        {
            var page = await family.Guardian.GetAsync("/family/law");
            Assert.Equal(HttpStatusCode.Redirect, (await family.Guardian.SubmitAsync(page, new() { ["grade"] = sent }, $"#grade-{wren}")).StatusCode);
            Assert.Equal(kept, await family.FromDbAsync(db => db.LearnerGrades.Select(g => (int?)g.Grade).SingleOrDefaultAsync()));
        }
    }

    [Theory]
    [InlineData("13")]
    [InlineData("-1")]
    [InlineData("third")]
    public async Task Refuses_a_grade_that_there_is_not(string grade)
    {
        var family = await server.FamilyAsync();
        var wren = await family.LearnerAsync();
        await (await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/family/law"), new() { ["grade"] = grade }, $"#grade-{wren}")).IsRefusedAsync();
        Assert.Equal(0, await family.FromDbAsync(db => db.LearnerGrades.CountAsync()));
    }

    [Fact]
    public async Task Keeps_one_grade_though_it_is_sent_several_times_at_once()
    {
        var family = await server.FamilyAsync();
        var wren = await family.LearnerAsync();
        var page = await family.Guardian.GetAsync("/family/law");
        var answers = await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => family.Guardian.SubmitAsync(page, new() { ["grade"] = "3" }, $"#grade-{wren}")));
        Assert.All(answers, a => Assert.Equal(HttpStatusCode.Redirect, a.StatusCode));
        Assert.Equal(1, await family.FromDbAsync(db => db.LearnerGrades.CountAsync()));
    }

    [Fact]
    public async Task Shows_another_year_with_the_pathways_and_grades_of_that_year()
    {
        var family = await server.FamilyAsync();
        var wren = await family.LearnerAsync();
        await family.StandsAsync(wren, "US-MO", "home-school", new DateOnly(2025, 7, 1));
        await family.StandsAsync(wren, "US-KS", "naps", new DateOnly(2026, 7, 1));
        var next = Guid.CreateVersion7();
        await family.WithDbAsync(async db =>
        {
            db.Add(new SchoolYear(next, "2026–27", new DayRange(new DateOnly(2026, 7, 1), new DateOnly(2027, 6, 30)), Weekdays.MondayToFriday));
            db.Add(new Data.Requirements.LearnerGrade(wren, next, 7));
            await db.SaveChangesAsync();
        });
        var now = await family.Guardian.GetAsync("/family/law");
        Assert.Contains("Missouri:", now.Body!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("Kansas:", now.Body!.TextContent, StringComparison.Ordinal);
        var then = await family.Guardian.GetAsync("/family/law?yearId=" + next);
        Assert.Contains("Kansas:", then.Body!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("Missouri:", then.Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal("7", then.QuerySelector($"#grade-{wren} option[selected]")!.GetAttribute("value"));
    }

    [Fact]
    public async Task Has_words_for_a_family_without_years_and_without_children()
    {
        var family = await server.FamilyAsync();
        Assert.Contains("No children yet", (await family.Guardian.GetAsync("/family/law")).Body!.TextContent, StringComparison.Ordinal);
        await family.WithDbAsync(async db =>
        {
            db.RemoveRange(await db.SchoolYears.ToListAsync());
            await db.SaveChangesAsync();
        });
        Assert.Contains("No school year yet", (await family.Guardian.GetAsync("/family/law")).Body!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_reached_from_the_family()
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync("/family");
        Assert.NotNull(page.QuerySelector("a[href='/family/law']"));
        Assert.NotNull(page.QuerySelector("a[href='/law']"));
    }
}
