using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Week;

/// <summary>What must come after what, as the unit says it.</summary>
[Collection(PlanningServer.Name)]
public sealed class OrderAndWaits(TestServer server)
{
    [Fact]
    public async Task A_loaf_is_shaped_after_it_was_kneaded_and_has_risen_and_baked_after_that()
    {
        var week = await AWeekToLayOut.MakeAsync(server, a => a.Week <= 2, courses: false);
        await week.LayOutAsync("2026-W13");
        // Hands-on minutes and waits as the unit writes them: 40 and 75, 20 and 45.
        var (knead, shape, bake) = (At(week, "w3-02-knead-and-first-rise", "2026-W13"), At(week, "w3-03-shape-and-second-rise", "2026-W13"), At(week, "w3-04-bake-the-loaf", "2026-W13"));
        Assert.True(shape >= knead.AddMinutes(40 + 75), $"Kneaded {knead}, shaped {shape}.");
        Assert.True(bake >= shape.AddMinutes(20 + 45), $"Shaped {shape}, baked {bake}.");
    }

    [Fact]
    public async Task Tiles_are_painted_two_days_after_they_were_made()
    {
        var week = await AWeekToLayOut.MakeAsync(server, a => a.Code is not ("w2-05-salt-dough-tiles" or "w4-04-paint-the-tiles"), courses: false);
        await week.LayOutAsync("2026-W14");
        var (made, painted) = (At(week, "w2-05-salt-dough-tiles", "2026-W14"), At(week, "w4-04-paint-the-tiles", "2026-W14"));
        Assert.True(painted.Date >= made.Date.AddDays(2), $"Made {made}, painted {painted}.");
    }

    [Fact]
    public async Task A_wait_reaches_into_the_week_after()
    {
        var week = await AWeekToLayOut.MakeAsync(server, a => a.Code is not ("w2-05-salt-dough-tiles" or "w4-04-paint-the-tiles"), courses: false);
        await week.PlanAsync("w2-05-salt-dough-tiles", new DateOnly(2026, 3, 29), 10 * 60);
        await week.LayOutAsync("2026-W14");
        Assert.True(At(week, "w4-04-paint-the-tiles", "2026-W14") >= new DateTime(2026, 3, 31));
    }

    private static DateTime At(AWeekToLayOut week, string code, string name)
    {
        var laid = week.Laid(name);
        var place = laid.Plan.Places.Single(p => laid.AtHand.Of(p.SessionId).Activity!.Id == week.Activities[code]);
        return place.Day.ToDateTime(TimeOnly.MinValue).AddMinutes(place.StartsAt);
    }
}
