using System.Globalization;
using System.Net;
using AngleSharp.Html.Dom;
using CoopLessons.Core.Families;
using CoopLessons.Core.Units;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Units;

[Collection(PlanningServer.Name)]
public class Writing_an_activity(TestServer server)
{
    internal static Dictionary<string, string?> Written(IHtmlDocument form, Guid science) => new()
    {
        ["Input.Title"] = "Build a small mill",
        ["Input.Week"] = "2",
        ["Input.Kind"] = "Making",
        ["Input.Does"] = "1. Cut the paddles.\n2. Fix them.",
        ["Input.AdultNeed"] = "HandsOn",
        ["Input.HandsOnMinutes"] = "45",
        [form.SubjectField(science, "Weight")] = "3",
    };

    internal static async Task<(TestFamily Family, MillSongs Songs, IHtmlDocument Form, Guid Science)> BeginAsync(TestServer server)
    {
        var family = await server.FamilyAsync();
        var songs = await family.MillSongsAsync();
        return (family, songs, await family.Guardian.GetAsync($"/units/{songs.Id}/activities/new"), await family.SubjectAsync("science"));
    }

    [Fact]
    public async Task Puts_it_last_in_its_week_with_everything_that_was_typed()
    {
        var (family, songs, form, science) = await BeginAsync(server);
        var fill = Written(form, science);
        fill[form.SubjectField(await family.SubjectAsync("geography"), "Touched")] = "true";
        foreach (var (name, value) in new Dictionary<string, string>
        {
            ["WaitingMinutes"] = "1440",
            ["WaitingFor"] = "the glue dries",
            ["Variants[0].FromAge"] = "4",
            ["Variants[0].ToAge"] = "6",
            ["Variants[0].Does"] = "Turns it.",
            ["Supplies[1].Name"] = "Corks",
            ["Supplies[1].Quantity"] = "2.5",
            ["Supplies[1].Unit"] = "piece",
            ["Supplies[1].Per"] = "Pair",
            ["Printables[0].Title"] = "Paddle pattern",
            ["Printables[0].Pages"] = "2",
            ["Books[0].Title"] = "Old Mills",
            ["Books[0].Use"] = "LookedThrough",
            ["Books[0].Isbn"] = "978-0-306-40615-7",
            ["Hazards[0].Kind"] = "Blades",
            ["Hazards[0].Caution"] = "An adult cuts.",
            ["Ingredients[0].Name"] = "Flour paste",
            ["Ingredients[0].Allergens"] = "Wheat",
        })
            fill["Input." + name] = value;
        var next = await family.Guardian.SubmitAsync(form, fill).RedirectedAsync();
        var activity = (await family.UnitAsync(songs.Id)).Activities.Single(a => a.Title == "Build a small mill");

        Assert.EndsWith($"/units/{songs.Id}#a-{activity.Id}", next, StringComparison.Ordinal);
        Assert.Equal(("build-a-small-mill", 2, 2, ActivityKind.Making, AdultNeed.HandsOn, 45, 1440, "the glue dries"),
            (activity.Code, activity.Week, activity.Order, activity.Kind, activity.AdultNeed, activity.HandsOnMinutes, activity.WaitingMinutes, activity.WaitingFor));
        Assert.Equal("1. Cut the paddles.\n2. Fix them.", activity.Does);
        Assert.Equal([(science, 3), (await family.SubjectAsync("geography"), 0)], activity.Details.Subjects.Select(s => (s.SubjectId, s.Weight)));
        Assert.Equal([new LevelVariant(4, 6, "Turns it.")], activity.Details.Variants);
        Assert.Equal([new Supply("Corks", 2.5m, "piece", Per.Pair)], activity.Details.Supplies);
        Assert.Equal([new Printable("Paddle pattern", 2)], activity.Details.Printables);
        Assert.Equal([new Book("Old Mills", BookUse.LookedThrough, null, "9780306406157")], activity.Details.Books);
        Assert.Equal([new Hazard(HazardKind.Blades, "An adult cuts.")], activity.Details.Hazards);
        Assert.Equal(("Flour paste", Allergen.Wheat), (activity.Details.Ingredients.Single().Name, activity.Details.Ingredients.Single().Allergens.Single()));
        Assert.Contains(await family.SubjectAsync("geography"), (await family.UnitAsync(songs.Id)).Subjects.Select(s => s.SubjectId));
    }

    [Fact]
    public async Task Is_written_once_however_often_it_is_sent()
    {
        var (family, songs, form, science) = await BeginAsync(server);
        var answers = await Task.WhenAll(Enumerable.Range(0, 5).Select(_ => family.Guardian.SubmitAsync(form, Written(form, science)).RedirectedAsync()));
        await family.Guardian.SubmitAsync(form, Written(form, science)).RedirectedAsync();

        Assert.Single(answers.Distinct());
        Assert.Equal(4, (await family.UnitAsync(songs.Id)).Activities.Count);
    }

    [Fact]
    public async Task Gives_every_activity_a_code_of_its_own()
    {
        var (family, songs, _, science) = await BeginAsync(server);
        foreach (var title in new[] { "Build a small mill", "Build a small mill!", "小麦", "🍞", "Crème brûlée’s crust", new string('x', 120), new string('x', 119) })
        {
            var form = await family.Guardian.GetAsync($"/units/{songs.Id}/activities/new");
            var fill = Written(form, science);
            fill["Input.Title"] = title;
            await family.Guardian.SubmitAsync(form, fill).RedirectedAsync();
        }

        var codes = (await family.UnitAsync(songs.Id)).Activities.Where(a => a.Week == 2 && a.Order > 1).OrderBy(a => a.Order).Select(a => a.Code);
        Assert.Equal(["build-a-small-mill", "build-a-small-mill-2", "activity", "activity-2", "creme-brulees-crust", new string('x', 36), new string('x', 36) + "-2"], codes);
    }

    [Theory]
    [InlineData("Title", "", "Title")]
    [InlineData("Week", "3", "Week")]
    [InlineData("Week", "0", "Week")]
    [InlineData("Week", "", "Week")]
    [InlineData("Week", "two", "Week")]
    [InlineData("Order", "0", "Order")]
    [InlineData("Order", "1000", "Order")]
    [InlineData("Kind", "", "Kind")]
    [InlineData("Kind", "Juggling", "Kind")]
    [InlineData("Kind", "99", "Kind")]
    [InlineData("Does", "", "Does")]
    [InlineData("AdultNeed", "", "AdultNeed")]
    [InlineData("AdultNeed", "Robot", "AdultNeed")]
    [InlineData("HandsOnMinutes", "", "HandsOnMinutes")]
    [InlineData("HandsOnMinutes", "0", "HandsOnMinutes")]
    [InlineData("HandsOnMinutes", "481", "HandsOnMinutes")]
    [InlineData("HandsOnMinutes", "1e3", "HandsOnMinutes")]
    [InlineData("WaitingMinutes", "-1", "WaitingMinutes")]
    [InlineData("WaitingMinutes", "43201", "WaitingMinutes")]
    [InlineData("WaitingMinutes", "30", "WaitingFor")]
    [InlineData("Variants[0].Does", "Turns it.", "Variants[0].FromAge")]
    [InlineData("Variants[1].FromAge", "4", "Variants[1].Does")]
    [InlineData("Variants[0].FromAge", "19", "Variants[0].FromAge")]
    [InlineData("Supplies[0].Name", "Corks", "Supplies[0].Quantity")]
    [InlineData("Supplies[0].Quantity", "2", "Supplies[0].Name")]
    [InlineData("Supplies[1].Quantity", "1,5", "Supplies[1].Quantity")]
    [InlineData("Supplies[1].Quantity", "0", "Supplies[1].Quantity")]
    [InlineData("Supplies[1].Quantity", "-3", "Supplies[1].Quantity")]
    [InlineData("Supplies[1].Quantity", "100001", "Supplies[1].Quantity")]
    [InlineData("Supplies[1].Quantity", "NaN", "Supplies[1].Quantity")]
    [InlineData("Printables[0].Title", "Pattern", "Printables[0].Pages")]
    [InlineData("Printables[0].Pages", "201", "Printables[0].Pages")]
    [InlineData("Books[0].Author", "Somebody", "Books[0].Title")]
    [InlineData("Books[0].Isbn", "12345", "Books[0].Isbn")]
    [InlineData("Books[0].Isbn", "978-0-306-40615-8", "Books[0].Isbn")]
    [InlineData("Hazards[0].Kind", "Blades", "Hazards[0].Caution")]
    [InlineData("Hazards[0].Caution", "Careful.", "Hazards[0].Kind")]
    [InlineData("Ingredients[1].Allergens", "Wheat", "Ingredients[1].Name")]
    [InlineData("Ingredients[1].Allergens", "Gold", "Ingredients[1].Allergens")]
    public async Task Asks_again_beside_the_field(string field, string typed, string faulty)
    {
        var (family, songs, form, science) = await BeginAsync(server);
        var fill = Written(form, science);
        fill["Input." + field] = typed;
        var page = await family.Guardian.SubmitAsync(form, fill).AnsweredAsync(HttpStatusCode.UnprocessableEntity);

        Assert.NotEqual("", page.Fault("Input." + faulty));
        Assert.Equal("1. Cut the paddles.\n2. Fix them.", field == "Does" ? "1. Cut the paddles.\n2. Fix them." : page.QuerySelector("[name='Input.Does']")!.TextContent.Trim());
        if (page.QuerySelector($"input[type=number][name='Input.{field}'], input[type=text][name='Input.{field}']") is { } input)
            Assert.Equal(typed, input.GetAttribute("value") ?? "");
        Assert.Equal(3, (await family.UnitAsync(songs.Id)).Activities.Count);
    }

    [Theory]
    [InlineData("Title", 121)]
    [InlineData("Does", 4001)]
    [InlineData("WaitingFor", 121)]
    [InlineData("Variants[0].Does", 1001)]
    [InlineData("Supplies[0].Name", 10_000)]
    [InlineData("Supplies[0].Note", 501)]
    [InlineData("Printables[0].Title", 121)]
    [InlineData("Printables[0].Note", 501)]
    [InlineData("Books[0].Title", 121)]
    [InlineData("Books[0].Author", 121)]
    [InlineData("Books[0].Note", 501)]
    [InlineData("Hazards[0].Caution", 501)]
    [InlineData("Ingredients[0].Name", 121)]
    public async Task Refuses_what_is_too_long_and_keeps_it(string field, int length)
    {
        var (family, _, form, science) = await BeginAsync(server);
        var fill = Written(form, science);
        fill["Input." + field] = new string('w', length);
        var page = await family.Guardian.SubmitAsync(form, fill).AnsweredAsync(HttpStatusCode.UnprocessableEntity);
        var shown = page.QuerySelector($"[name='Input.{field}']")!;

        Assert.Contains("at most", page.Fault("Input." + field), StringComparison.OrdinalIgnoreCase);
        Assert.Equal(length, (shown.GetAttribute("value") ?? shown.TextContent.Trim()).Length);
    }

    [Theory]
    [InlineData("")]
    [InlineData("0")]
    [InlineData("101")]
    [InlineData("-1")]
    [InlineData("1.5")]
    public async Task Needs_a_weight_for_a_subject(string weight)
    {
        var (family, _, form, science) = await BeginAsync(server);
        var fill = Written(form, science);
        var field = form.SubjectField(science, "Weight");
        fill[field] = weight;
        fill[field.Replace("Weight", "Touched", StringComparison.Ordinal)] = "true";
        var page = await family.Guardian.SubmitAsync(form, fill).AnsweredAsync(HttpStatusCode.UnprocessableEntity);

        Assert.NotEqual("", page.Fault("Input.Subjects") + page.Fault(field));
        Assert.Equal(weight, page.QuerySelector($"[name='{field}']")!.GetAttribute("value") ?? "");
    }

    [Fact]
    public async Task Takes_at_most_eight_weighted_subjects()
    {
        var (family, _, form, science) = await BeginAsync(server);
        var fill = Written(form, science);
        for (var i = 0; i < 9; i++)
            fill[string.Create(CultureInfo.InvariantCulture, $"Input.Subjects[{i}].Weight")] = "1";
        var page = await family.Guardian.SubmitAsync(form, fill).AnsweredAsync(HttpStatusCode.UnprocessableEntity);

        Assert.Contains("At most 8", page.Fault("Input.Subjects"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Knows_only_the_family_s_subjects()
    {
        var (family, songs, form, science) = await BeginAsync(server);
        var other = await server.FamilyAsync("Birch");
        foreach (var id in new[] { await other.SubjectAsync("science"), Guid.CreateVersion7() })
        {
            var fill = Written(form, science);
            fill[form.SubjectField(science, "SubjectId")] = id.ToString();
            await family.Guardian.SubmitAsync(form, fill).AnsweredAsync(HttpStatusCode.NotFound);
        }

        Assert.Equal(3, (await family.UnitAsync(songs.Id)).Activities.Count);
    }

    [Theory]
    [InlineData("=1+1")]
    [InlineData("<script>alert(1)</script><img src=x onerror=alert(1)>")]
    [InlineData("\u202Eright to left\u202C")]
    [InlineData("🌾 loaf 🍞")]
    public async Task Keeps_hostile_text_as_text(string text)
    {
        var (family, songs, form, science) = await BeginAsync(server);
        var fill = Written(form, science);
        foreach (var field in new[] { "Title", "Does", "Supplies[0].Name", "Supplies[0].Note", "Hazards[0].Caution", "Ingredients[0].Name", "Books[0].Title" })
            fill["Input." + field] = text;
        fill["Input.Supplies[0].Quantity"] = "1";
        fill["Input.Hazards[0].Kind"] = "Heat";
        await family.Guardian.SubmitAsync(form, fill).RedirectedAsync();
        var id = (await family.UnitAsync(songs.Id)).Activities.Single(a => a.Title == text).Id;

        foreach (var path in new[] { $"/units/{songs.Id}", $"/units/{songs.Id}/activities/{id}", $"/units/{songs.Id}/activities/{id}/edit", $"/units/{songs.Id}/activities/{id}/remove" })
        {
            var page = await family.Guardian.GetAsync(path);
            Assert.Empty(page.QuerySelectorAll("main script, main img"));
            Assert.Contains(text, page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        }
    }
}
