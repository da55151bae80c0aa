using System.Net;
using AngleSharp.Html.Dom;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Units;

[Collection(PlanningServer.Name)]
public class The_growing_lists_of_an_activity(TestServer server)
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Grows_a_list_and_keeps_all_that_was_typed_right_or_wrong(bool htmx)
    {
        var (family, songs, form, science) = await Writing_an_activity.BeginAsync(server);
        var fill = Writing_an_activity.Written(form, science);
        fill["Input.Supplies[0].Name"] = "Corks";
        fill["Input.Supplies[0].Quantity"] = "some";
        fill["Input.Supplies[1].Unit"] = "cup";
        fill["Input.HandsOnMinutes"] = "a while";
        fill["more"] = "Supplies";
        var action = $"/units/{songs.Id}/activities/new?handler=Rows";
        Assert.Equal(action, form.QuerySelector("#more-Supplies")!.GetAttribute("formaction"));
        Assert.True(form.QuerySelector("#more-Supplies")!.HasAttribute("formnovalidate"));
        ((IHtmlFormElement)form.QuerySelector("main form")!).SetAttribute("action", action);
        var page = await family.Guardian.SubmitAsync(form, fill, htmx: htmx).AnsweredAsync(HttpStatusCode.OK);

        Assert.Equal(4, page.QuerySelectorAll("#list-Supplies fieldset").Length);
        Assert.Equal("Corks", page.QuerySelector("[name='Input.Supplies[0].Name']")!.GetAttribute("value"));
        Assert.Equal("some", page.QuerySelector("[name='Input.Supplies[0].Quantity']")!.GetAttribute("value"));
        Assert.Equal("cup", ((IHtmlSelectElement)page.QuerySelector("[name='Input.Supplies[1].Unit']")!).Value);
        Assert.Equal("", page.QuerySelectorAll(".field-validation-error").Select(e => e.TextContent).DefaultIfEmpty("").Aggregate(string.Concat));
        Assert.Equal(htmx, page.QuerySelector("h1") is null);
        if (!htmx)
            Assert.Equal("a while", page.QuerySelector("[name='Input.HandsOnMinutes']")!.GetAttribute("value"));
        Assert.Equal(3, (await family.UnitAsync(songs.Id)).Activities.Count);
    }

    [Theory]
    [InlineData("Variants", 6)]
    [InlineData("Supplies", 40)]
    [InlineData("Printables", 10)]
    [InlineData("Books", 10)]
    [InlineData("Hazards", 10)]
    [InlineData("Ingredients", 40)]
    public async Task Grows_each_list_up_to_its_bound(string list, int most)
    {
        var (family, _, page, _) = await Writing_an_activity.BeginAsync(server);
        for (var rows = 2; rows < most; rows += 2)
        {
            var button = page.QuerySelector($"#more-{list}")!;
            ((IHtmlFormElement)page.QuerySelector("main form")!).SetAttribute("action", button.GetAttribute("formaction")!);
            page = await family.Guardian.SubmitAsync(page, new() { ["more"] = list }).AnsweredAsync(HttpStatusCode.OK);
        }

        Assert.Null(page.QuerySelector($"#more-{list}"));
        Assert.Contains($"At most {most}.", page.Text($"#list-{list}"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Nothing")]
    [InlineData("../Show")]
    [InlineData("")]
    public async Task Knows_no_other_list(string list)
    {
        var (family, songs, form, _) = await Writing_an_activity.BeginAsync(server);
        ((IHtmlFormElement)form.QuerySelector("main form")!).SetAttribute("action", $"/units/{songs.Id}/activities/new?handler=Rows");
        await family.Guardian.SubmitAsync(form, new() { ["more"] = list }).AnsweredAsync(HttpStatusCode.NotFound);
    }
}
