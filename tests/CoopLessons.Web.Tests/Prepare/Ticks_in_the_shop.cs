using System.Net;
using System.Text.Json;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Units;

namespace CoopLessons.Web.Tests.Prepare;

[Collection(PlanningServer.Name)]
public sealed class Ticks_in_the_shop(TestServer server)
{
    private static async Task<HttpResponseMessage> SendAsync(BakingFamily family, params (string Name, string Id)[] fields) =>
        await family.Guardian.PostAsync(BakingFamily.List + "?handler=Ticks",
            [.. fields.Select(f => new KeyValuePair<string, string>(f.Name, f.Id)), new("__RequestVerificationToken", await family.Guardian.TokenAsync(BakingFamily.List))]);

    [Fact]
    public async Task Are_saved_with_the_form_where_there_is_no_script()
    {
        var family = await BakingFamily.MakeAsync(server);
        for (var i = 0; i < 2; i++)
        {
            using var answer = await family.Guardian.SubmitAsync(await family.ListAsync(), new() { ["ticks"] = family.Flour.ToString() }, within: "#basket");
            Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        }

        Assert.Equal([family.Flour], await family.TicksAsync());
        var page = await family.ListAsync();
        Assert.True(page.QuerySelector($"input[value='{family.Flour}'][name=ticks]")!.HasAttribute("checked"));
        using var cleared = await family.Guardian.SubmitAsync(page, new() { ["ticks"] = null }, within: "#basket");
        Assert.Empty(await family.TicksAsync());
    }

    [Fact]
    public async Task Of_another_parent_stay_where_an_older_form_is_saved()
    {
        var family = await BakingFamily.MakeAsync(server);
        var old = await family.ListAsync();
        using var first = await family.Guardian.SubmitAsync(old, new() { ["ticks"] = family.Flour.ToString() }, within: "#basket");
        using var second = await family.Guardian.SubmitAsync(old, new() { ["ticks"] = family.IdOf("Card").ToString() }, within: "#basket");
        Assert.Equal(new[] { family.Flour, family.IdOf("Card") }.Order(), (await family.TicksAsync()).Order());
    }

    [Fact]
    public async Task Sent_twice_by_the_script_stay_one_and_the_answer_says_how_they_stand()
    {
        var family = await BakingFamily.MakeAsync(server);
        for (var i = 0; i < 2; i++)
        {
            using var answer = await SendAsync(family, ("on", family.Flour.ToString()), ("off", family.IdOf("Card").ToString()));
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            using var stands = JsonDocument.Parse(await answer.Content.ReadAsStringAsync());
            Assert.Equal([family.Flour], stands.RootElement.GetProperty("on").EnumerateArray().Select(e => e.GetGuid()));
            Assert.Equal([family.IdOf("Card")], stands.RootElement.GetProperty("off").EnumerateArray().Select(e => e.GetGuid()));
        }

        Assert.Equal([family.Flour], await family.TicksAsync());
    }

    [Fact]
    public async Task Name_nothing_of_another_family_and_nothing_that_is_not_there()
    {
        var (family, other) = (await BakingFamily.MakeAsync(server), await BakingFamily.MakeAsync(server));
        await other.SoldAsync();
        foreach (var id in new[] { other.Flour, Guid.CreateVersion7() })
        {
            using var answer = await SendAsync(family, ("on", family.IdOf("Card").ToString()), ("on", id.ToString()));
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
            using var form = await family.Guardian.SubmitAsync(await family.ListAsync(), new() { ["ticks"] = id.ToString() }, within: "#basket");
            Assert.Equal(HttpStatusCode.NotFound, form.StatusCode);
        }

        Assert.Empty(await family.TicksAsync());
        using var broken = await SendAsync(family, ("on", "flour"));
        Assert.Equal(HttpStatusCode.BadRequest, broken.StatusCode);
    }

    [Fact]
    public async Task Of_what_is_kept_count_it_as_there_or_put_it_on_the_list()
    {
        var family = await BakingFamily.MakeAsync(server);
        var pin = new Dictionary<string, string?> { ["found"] = family.IdOf("Rolling pin").ToString() };
        using var found = await family.Guardian.SubmitAsync(await family.ListAsync(), pin, within: "#look-out form");
        Assert.DoesNotContain("Rolling pin", (await family.ListAsync()).Text("#look-out, #basket"), StringComparison.Ordinal);

        var second = await BakingFamily.MakeAsync(server);
        var token = await second.Guardian.TokenAsync(BakingFamily.List);
        using var missing = await second.Guardian.PostAsync(BakingFamily.List + "?handler=Missing", [new("found", second.IdOf("Rolling pin").ToString()), new("__RequestVerificationToken", token)]);
        Assert.Contains("Rolling pin 1", (await second.ListAsync()).Text("#basket"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Can_be_for_something_else_that_was_put_on_the_list_by_hand()
    {
        var family = await BakingFamily.MakeAsync(server);
        var page = await family.ListAsync();
        for (var i = 0; i < 2; i++)
        {
            using var answer = await family.Guardian.SubmitAsync(page, new() { ["Else.Name"] = "Tea towels", ["Else.Quantity"] = "3" }, within: "#Else_Name");
            Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        }

        var shown = await family.ListAsync();
        Assert.Contains("Tea towels 3", shown.Text("#basket"), StringComparison.Ordinal);
        using var off = await family.Guardian.SubmitAsync(shown, within: "form[id^=take-off]");
        Assert.DoesNotContain("Tea towels", (await family.ListAsync()).Text("#basket"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Else.Name", "")]
    [InlineData("Else.Quantity", "2,5")]
    [InlineData("Else.Quantity", "0")]
    [InlineData("Else.Quantity", "some")]
    [InlineData("Else.Measure", "gill")]
    public async Task Are_not_offered_for_something_else_that_nobody_understands(string field, string value)
    {
        var family = await BakingFamily.MakeAsync(server);
        var fill = new Dictionary<string, string?> { ["Else.Name"] = "Tea towels", ["Else.Quantity"] = "3" };
        fill[field] = value;
        var shown = await family.Guardian.SubmitAsync(await family.ListAsync(), fill, within: "#Else_Name").AnsweredAsync(HttpStatusCode.UnprocessableEntity);
        Assert.NotEmpty(shown.Fault(field));
        Assert.Equal(fill["Else.Quantity"], shown.QuerySelector("#Else_Quantity")!.GetAttribute("value"));
    }
}
