using System.Net;
using CoopLessons.Data.Planning;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Planning;

[Collection(PlanningServer.Name)]
public sealed class How_long_each_child_sits(TestServer server)
{
    private static Task<Dictionary<Guid, int>> KeptAsync(PlanningFamily family) => family.Family.FromDbAsync(db => db.Sittings.ToDictionaryAsync(s => s.LearnerId, s => s.Minutes));

    [Fact]
    public async Task Is_kept_only_where_a_parent_says_otherwise()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var page = await family.Guardian.GetAsync("/week/plan/sittings");
        // Linnet is nine, Wren six.
        Assert.Equal(["Proposed: 25", "Proposed: 15"], page.QuerySelectorAll(".field .hint").Select(h => h.TextContent));
        using var saved = await family.Guardian.SubmitAsync(page, new() { ["Input[1].Minutes"] = "20" });
        Assert.Equal(HttpStatusCode.Redirect, saved.StatusCode);
        Assert.Equal(new Dictionary<Guid, int> { [family.Wren] = 20 }, await KeptAsync(family));
        using var changed = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/plan/sittings"), new() { ["Input[0].Minutes"] = "30", ["Input[1].Minutes"] = "" });
        Assert.Equal(new Dictionary<Guid, int> { [family.Linnet] = 30 }, await KeptAsync(family));
    }

    [Theory]
    [InlineData("4")]
    [InlineData("181")]
    [InlineData("long")]
    public async Task Is_not_saved_out_of_bounds(string minutes)
    {
        var family = await PlanningFamily.MakeAsync(server);
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/plan/sittings"), new() { ["Input[0].Minutes"] = "40", ["Input[1].Minutes"] = minutes });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var shown = await Visitor.ParseAsync(answer);
        Assert.NotEmpty(shown.GetElementById("sitting-1-fault")!.TextContent);
        Assert.Equal("40", shown.GetElementById("Input_0__Minutes")!.GetAttribute("value"));
        Assert.Empty(await KeptAsync(family));
    }

    [Fact]
    public async Task Is_not_overwritten_unseen()
    {
        var family = await PlanningFamily.MakeAsync(server);
        using var begun = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/plan/sittings"), new() { ["Input[0].Minutes"] = "30" });
        var (mine, theirs) = (await family.Guardian.GetAsync("/week/plan/sittings"), await family.Guardian.GetAsync("/week/plan/sittings"));
        using var first = await family.Guardian.SubmitAsync(theirs, new() { ["Input[0].Minutes"] = "35" });
        using var second = await family.Guardian.SubmitAsync(mine, new() { ["Input[0].Minutes"] = "50" });
        Assert.Equal(HttpStatusCode.Conflict, second.StatusCode);
        Assert.Equal(35, (await KeptAsync(family))[family.Linnet]);
        using var meant = await family.Guardian.SubmitAsync(await Visitor.ParseAsync(second));
        Assert.Equal(50, (await KeptAsync(family))[family.Linnet]);
    }

    [Fact]
    public async Task Is_none_of_another_familys_business()
    {
        var (family, other) = (await PlanningFamily.MakeAsync(server), await PlanningFamily.MakeAsync(server));
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/plan/sittings"), new() { ["Input[0].LearnerId"] = other.Wren.ToString(), ["Input[0].Minutes"] = "30" });
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Empty(await KeptAsync(other));
    }
}
