using System.Net;
using CoopLessons.Core.Units;
using CoopLessons.Data.Planning;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Planning;

[Collection(PlanningServer.Name)]
public sealed class Wishes_of_a_week(TestServer server)
{
    private static Task<WeeklyWish> OnlyAsync(PlanningFamily family) => family.Family.FromDbAsync(db => db.Wishes.AsNoTracking().SingleAsync());

    [Fact]
    public async Task Are_about_a_subject_or_a_kind_of_work()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var page = await family.Guardian.GetAsync("/week/plan/wishes/new");
        for (var i = 0; i < 2; i++)
        {
            using var answer = await family.Guardian.SubmitAsync(page, new() { ["Input.About"] = family.Subjects["science"].ToString(), ["Input.Day"] = "Wednesday" });
            Assert.Equal("/week/plan", answer.Headers.Location!.OriginalString);
        }

        var wish = await OnlyAsync(family);
        Assert.Equal((family.Subjects["science"], null, DayOfWeek.Wednesday, false), (wish.SubjectId!.Value, wish.Kind, wish.Day!.Value, wish.Morning));
        Assert.Contains("Science on Wednesdays", (await family.Guardian.GetAsync("/week/plan")).QuerySelector("#wishes")!.TextContent, StringComparison.Ordinal);

        using var changed = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/week/plan/wishes/{wish.Id}"), new() { ["Input.About"] = "ReadAloud", ["Input.Day"] = "", ["Input.Morning"] = "true" });
        wish = await OnlyAsync(family);
        Assert.Equal((null, ActivityKind.ReadAloud, null, true), (wish.SubjectId, wish.Kind!.Value, wish.Day, wish.Morning));
        Assert.Contains("Reading aloud before noon", (await family.Guardian.GetAsync("/week/plan")).QuerySelector("#wishes")!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "Wednesday", "about-fault")]
    [InlineData("Juggling", "Wednesday", "about-fault")]
    [InlineData("3", "Wednesday", "about-fault")]
    [InlineData("Music", "", "day-fault")]
    [InlineData("Music", "Someday", "day-fault")]
    [InlineData("Music", "9", "day-fault")]
    public async Task Are_not_saved_while_something_is_amiss(string about, string day, string where)
    {
        var family = await PlanningFamily.MakeAsync(server);
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/plan/wishes/new"), new() { ["Input.About"] = about, ["Input.Day"] = day });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.NotEmpty((await Visitor.ParseAsync(answer)).GetElementById(where)!.TextContent);
        Assert.Equal(0, await family.Family.FromDbAsync(db => db.Wishes.CountAsync()));
    }

    [Fact]
    public async Task Name_no_subject_of_another_family()
    {
        var (family, other) = (await PlanningFamily.MakeAsync(server), await PlanningFamily.MakeAsync(server));
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/plan/wishes/new"), new() { ["Input.About"] = other.Subjects["science"].ToString(), ["Input.Day"] = "Monday" });
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public async Task Are_changed_by_one_at_a_time_and_removed_after_a_question()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var id = await family.AddAsync(w => new WeeklyWish(w, family.Subjects["science"], null, DayOfWeek.Wednesday, false));
        var (mine, theirs) = (await family.Guardian.GetAsync($"/week/plan/wishes/{id}"), await family.Guardian.GetAsync($"/week/plan/wishes/{id}"));
        using var first = await family.Guardian.SubmitAsync(theirs, new() { ["Input.Day"] = "Monday" });
        using var second = await family.Guardian.SubmitAsync(mine, new() { ["Input.Day"] = "Friday" });
        Assert.Equal(HttpStatusCode.Conflict, second.StatusCode);
        using var removed = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/week/plan/wishes/{id}?remove=true"));
        Assert.Equal(0, await family.Family.FromDbAsync(db => db.Wishes.CountAsync()));
    }
}
