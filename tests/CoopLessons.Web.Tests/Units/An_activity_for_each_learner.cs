using CoopLessons.Core.Families;
using CoopLessons.Core.Units;
using CoopLessons.Web.Pages.Units;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Units;

[Collection(PlanningServer.Name)]
public class An_activity_for_each_learner(TestServer server)
{
    private static readonly LevelVariant[] Variants = [new(4, 6, "Counts the grains."), new(7, 10, "Weighs the grains."), new(11, 14, "Plots the weights.")];

    private static Task<AngleSharp.Html.Dom.IHtmlDocument> OpenAsync(TestFamily family, (Guid Unit, Guid Activity) one) =>
        family.Guardian.GetAsync($"/units/{one.Unit}/activities/{one.Activity}");

    [Fact]
    public async Task Is_told_in_the_version_for_their_age()
    {
        var family = await server.FamilyAsync();
        await family.LearnerAsync("Wren", new DateOnly(2020, 5, 1));
        await family.LearnerAsync("Linnet", new DateOnly(2017, 3, 12));
        var page = await OpenAsync(family, await family.OneActivityAsync(d => d with { Variants = Variants }));
        var versions = page.QuerySelectorAll(".variants section").Select(s => s.TextContent.Squeezed()).ToList();

        Assert.Equal(["Wren 5 years Counts the grains. The version for ages 4–6", "Linnet 9 years Weighs the grains. The version for ages 7–10"], versions);
        Assert.Contains("Plots the weights.", page.Text("[aria-labelledby=versions] details"), StringComparison.Ordinal);
        Assert.DoesNotContain("Counts the grains.", page.Text("[aria-labelledby=versions] details"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Goes_by_the_level_in_the_weightiest_subject()
    {
        var family = await server.FamilyAsync();
        var (science, writing) = (await family.SubjectAsync("science"), await family.SubjectAsync("writing"));
        await family.LearnerAsync("Wren", new DateOnly(2020, 5, 1), level: (science, 6));
        await family.LearnerAsync("Heron", new DateOnly(2020, 5, 1), level: (writing, 6));
        var page = await OpenAsync(family, await family.OneActivityAsync(_ => UnitSamples.Counting((writing, 1), (science, 2)) with { Variants = Variants }));
        var versions = page.QuerySelectorAll(".variants section").Select(s => s.TextContent.Squeezed()).ToList();

        Assert.Equal(["Wren grade 6 in Science Plots the weights. The version for ages 11–14", "Heron 5 years Counts the grains. The version for ages 4–6"], versions);
    }

    [Fact]
    public async Task Keeps_the_lines_of_what_everybody_does()
    {
        var family = await server.FamilyAsync();
        var songs = await family.MillSongsAsync();
        var page = await OpenAsync(family, (songs.Id, songs.Song));

        Assert.Equal("Sing it.\nSing it once more.", page.QuerySelector("[aria-labelledby=does] .prose")!.TextContent);
    }

    [Fact]
    public async Task Warns_where_an_allergy_meets_an_ingredient()
    {
        var family = await server.FamilyAsync();
        await family.LearnerAsync("Wren", new DateOnly(2018, 5, 1), [Allergen.Wheat, Allergen.TreeNuts], "kiwi");
        await family.LearnerAsync("Linnet", new DateOnly(2018, 5, 1), [Allergen.Milk]);
        var one = await family.OneActivityAsync(d => d with { Ingredients = [new Ingredient("Stone-ground flour", [Allergen.Wheat]), new Ingredient("Salt", [])] });
        var page = await OpenAsync(family, one);
        var note = page.Text(".note.look");

        Assert.Contains("Stone-ground flour holds wheat, and Wren is allergic to it.", note, StringComparison.Ordinal);
        Assert.DoesNotContain("Linnet", note, StringComparison.Ordinal);
        Assert.Contains(CautionWords.Judgement, note, StringComparison.Ordinal);
        Assert.Contains("Wren, in your own words: kiwi.", page.Text("[aria-labelledby=ingredients]"), StringComparison.Ordinal);
        Assert.Contains("wheat for Wren", (await family.Guardian.GetAsync($"/units/{one.Unit}")).Text(".note.look"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2023-03-13", true)]
    [InlineData("2023-03-12", false)]
    public async Task Warns_of_small_parts_until_the_third_birthday(string birth, bool warns)
    {
        // 16 CFR 1501.2(a): articles for children under 3 years of age.
        var family = await server.FamilyAsync();
        await family.LearnerAsync("Pip", DateOnly.Parse(birth, System.Globalization.CultureInfo.InvariantCulture));
        var page = await OpenAsync(family, await family.OneActivityAsync(d => d with { Hazards = [new Hazard(HazardKind.SmallParts, "Count the beads.")] }));

        Assert.Equal(warns, page.Text(".note.look").Contains("16 CFR Part 1501", StringComparison.Ordinal));
        Assert.Contains("Count the beads.", page.Text("[aria-labelledby=care]"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Warns_where_a_child_is_younger_than_every_version_whatever_their_level()
    {
        var family = await server.FamilyAsync();
        await family.LearnerAsync("Pip", new DateOnly(2022, 12, 1), level: (await family.SubjectAsync("science"), 4));
        var page = await OpenAsync(family, await family.OneActivityAsync(d => d with { Variants = Variants }));

        Assert.Contains("written for 4 and older, and Pip is 3", page.Text(".note.look"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Never_says_that_something_is_safe()
    {
        var family = await server.FamilyAsync();
        await family.LearnerAsync("Wren", new DateOnly(2016, 5, 1));
        var page = await OpenAsync(family, await family.OneActivityAsync(d => d));

        Assert.DoesNotContain(" safe", page.Text("main").Replace("safety advice", "", StringComparison.Ordinal), StringComparison.OrdinalIgnoreCase);
        Assert.Contains("That does not mean that there are none.", page.Text("[aria-labelledby=care]"), StringComparison.Ordinal);
        Assert.Contains(CautionWords.Judgement, page.Text("[aria-labelledby=care]"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_not_told_for_one_who_has_left()
    {
        var family = await server.FamilyAsync();
        var id = await family.LearnerAsync("Wren", new DateOnly(2020, 5, 1), [Allergen.Wheat]);
        await family.WithDbAsync(async db =>
        {
            (await db.Learners.FindAsync(family.Id, id))!.PutAside();
            await db.SaveChangesAsync();
        });
        var page = await OpenAsync(family, await family.OneActivityAsync(d => d with { Variants = Variants, Ingredients = [new Ingredient("Flour", [Allergen.Wheat])] }));

        Assert.DoesNotContain("Wren", page.Text("main"), StringComparison.Ordinal);
    }
}
