using CoopLessons.Core.Units;
using CoopLessons.Data.Planning;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Today;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Planning;

[Collection(PlanningServer.Name)]
public sealed class The_bookmark_of_a_loop(TestServer server)
{
    private static string NextOf(LessonLoop loop) => loop.StepAhead(0).Title;

    [Fact]
    public async Task Goes_round_with_each_step_done_and_back_with_one_taken_back()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var loop = await family.LoopAsync();
        var (first, second) = (await family.SittingAsync(loop, TestServer.Today), await family.SittingAsync(loop, TestServer.Today, 840));
        Assert.Equal(["Afternoons: Songs", "Afternoons: Birds"], (await family.TodayAsync()).QuerySelectorAll(".strip-title").Select(t => t.TextContent));
        await family.DoneAsync(first);
        await family.DoneAsync(second);
        Assert.Equal("Maps", NextOf(await family.LoopOf(loop)));
        Assert.Equal(["Afternoons: Songs", "Afternoons: Birds"], (await family.TodayAsync()).QuerySelectorAll(".strip-title").Select(t => t.TextContent));
        var subjects = await family.Family.FromDbAsync(db => db.LogRevisions.OrderBy(r => r.What).Select(r => r.Subjects.Single().SubjectId).ToListAsync());
        Assert.Equal([family.Subjects["nature"], family.Subjects["music"]], subjects);

        await family.TakeBackAsync(first);
        Assert.Equal("Maps", NextOf(await family.LoopOf(loop)));
        await family.TakeBackAsync(second);
        Assert.Equal("Birds", NextOf(await family.LoopOf(loop)));
    }

    [Fact]
    public async Task Comes_back_where_the_only_sitting_is_taken_back()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var loop = await family.LoopAsync();
        var sitting = await family.SittingAsync(loop, TestServer.Today);
        await family.DoneAsync(sitting);
        Assert.Equal("Birds", NextOf(await family.LoopOf(loop)));
        await family.TakeBackAsync(sitting);
        Assert.Equal("Songs", NextOf(await family.LoopOf(loop)));
    }

    [Fact]
    public void Stays_at_its_step_when_the_list_is_written_anew()
    {
        var steps = new[] { "Maps", "Songs", "Birds" }.Select(t => new LoopStep(Guid.CreateVersion7(), t, Guid.CreateVersion7())).ToList();
        var facts = new LoopFacts("Afternoons", steps, 20, 3, [Guid.CreateVersion7()], AdultNeed.Beside, false);
        var loop = new LessonLoop(Guid.CreateVersion7(), facts);
        loop.GoTo(steps[1].Id);
        loop.Describe(facts with { Steps = [steps[2], steps[0], steps[1]] });
        Assert.Equal("Songs", NextOf(loop));
        // The step is gone: the next that stayed, as the list went round before.
        loop.Describe(facts with { Steps = [steps[2], steps[0]] });
        Assert.Equal("Birds", NextOf(loop));
        loop.Describe(facts with { Steps = [steps[1]] });
        Assert.Equal("Songs", NextOf(loop));
        Assert.Throws<ArgumentException>(() => loop.Describe(facts with { Steps = [] }));
    }

    [Fact]
    public void Of_a_single_step_stays_there()
    {
        var step = new LoopStep(Guid.CreateVersion7(), "Maps", Guid.CreateVersion7());
        var loop = new LessonLoop(Guid.CreateVersion7(), new LoopFacts("Maps", [step], 20, 1, [Guid.CreateVersion7()], AdultNeed.Alone, false));
        Assert.Equal(step, loop.StepDone());
        loop.TakeBack(step.Id);
        loop.DoneAgain(step.Id);
        Assert.Equal(step, loop.StepAhead(7));
    }
}
