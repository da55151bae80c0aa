using System.Net;
using CoopLessons.Core.Schedule;
using CoopLessons.Data.Planning;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Planning;

[Collection(PlanningServer.Name)]
public sealed class Who_teaches_and_when(TestServer server)
{
    private static Task<TeachingHours> HoursAsync(PlanningFamily family) => family.Family.FromDbAsync(db => TeachingHours.LoadAsync(db, TestServer.Today, default));

    private static async Task<Guid> AddAsync(PlanningFamily family, string name = "Basil")
    {
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/plan/adults/new"), new() { ["Input.Name"] = name, ["Input.Phone"] = "555 0142" });
        Assert.Equal("/week/plan", answer.Headers.Location!.OriginalString);
        return await family.Family.FromDbAsync(db => db.TeachingAdults.Where(a => a.Name == name).Select(a => a.Id).SingleAsync());
    }

    [Fact]
    public async Task Grown_ups_are_added_changed_and_set_aside()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var id = await AddAsync(family);
        var page = await family.Guardian.GetAsync($"/week/plan/adults/{id}");
        using var changed = await family.Guardian.SubmitAsync(page, new() { ["Input.Name"] = "Basil the elder", ["Input.PersonId"] = family.Family.GuardianId.ToString(), ["Input.SetAside"] = "true" });
        var adult = await family.Family.FromDbAsync(db => db.TeachingAdults.SingleAsync());
        Assert.Equal(("Basil the elder", family.Family.GuardianId, "555 0142", true), (adult.Name, adult.PersonId!.Value, adult.Phone, adult.SetAside));
    }

    [Theory]
    [InlineData("Input.Name", "")]
    [InlineData("Input.Name", "a name that is very much longer than the sixty signs that it may have")]
    [InlineData("Input.Phone", "a telephone number that is longer than forty signs")]
    [InlineData("Input.PersonId", "nobody")]
    public async Task Grown_ups_are_not_added_while_something_is_amiss(string field, string value)
    {
        var family = await PlanningFamily.MakeAsync(server);
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/plan/adults/new"), new() { ["Input.Name"] = "Basil", [field] = value });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.NotEmpty((await Visitor.ParseAsync(answer)).QuerySelectorAll(".field-validation-error"));
        Assert.Equal(0, await family.Family.FromDbAsync(db => db.TeachingAdults.CountAsync()));
    }

    [Fact]
    public async Task A_person_of_another_family_signs_in_as_nobody_here()
    {
        var (family, other) = (await PlanningFamily.MakeAsync(server), await PlanningFamily.MakeAsync(server));
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/plan/adults/new"), new() { ["Input.Name"] = "Basil", ["Input.PersonId"] = other.Family.GuardianId.ToString() });
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public async Task No_more_than_four_are_planned_with_at_once()
    {
        var family = await PlanningFamily.MakeAsync(server);
        foreach (var name in new[] { "Iris", "Basil", "Olive", "Rowan" })
            await AddAsync(family, name);
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/plan/adults/new"), new() { ["Input.Name"] = "Hazel" });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("Set one of them aside first", (await Visitor.ParseAsync(answer)).QuerySelector("#name-fault")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_grown_up_is_removed_from_sessions_appointments_and_hours()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var id = await AddAsync(family);
        var lesson = await family.LessonAsync(await family.CourseAsync(), TestServer.Today);
        var appointment = await family.AddAsync(a => new Appointment(a, new AppointmentFacts("Drive", AppointmentKind.Away, [family.Wren], [id], TestServer.Today, 600, 30, "", [], null)));
        await family.Family.WithDbAsync(async db =>
        {
            (await db.PlannedSessions.SingleAsync(s => s.Id == lesson)).TakeHandsOf(id);
            db.Add(new DayPattern(id, WeekHours.None));
            await db.SaveChangesAsync();
        });
        var page = await family.Guardian.GetAsync($"/week/plan/adults/{id}?remove=true");
        Assert.Contains("1 session that names them stays planned", page.QuerySelector(".note.loss")!.TextContent, StringComparison.Ordinal);
        using var removed = await family.Guardian.SubmitAsync(page);
        Assert.Equal(HttpStatusCode.Redirect, removed.StatusCode);
        Assert.Null((await family.SessionOf(lesson)).AdultId);
        Assert.Empty(await family.Family.FromDbAsync(db => db.Appointments.Where(a => a.Id == appointment).Select(a => a.Adults).SingleAsync()));
        Assert.False((await HoursAsync(family)).HasOwn(id));
    }

    [Fact]
    public async Task Hours_are_proposed_until_the_family_sets_them_and_hold_for_everybody()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var page = await family.Guardian.GetAsync("/week/plan/hours");
        Assert.Equal(["9:00–12:00, 13:00–15:00", ""], new[] { 0, 5 }.Select(i => page.GetElementById($"Input_Days_{i}_")!.GetAttribute("value") ?? ""));
        using var saved = await family.Guardian.SubmitAsync(page, new() { ["Input.Days[0]"] = "8:30-12", ["Input.Days[4]"] = "" });
        Assert.Equal("/week/plan#hours", saved.Headers.Location!.OriginalString);
        var hours = await HoursAsync(family);
        Assert.Equal([new Stretch(510, 720)], hours.Of(family.Wren).On(DayOfWeek.Monday));
        Assert.Empty(hours.Family.On(DayOfWeek.Friday));
        Assert.Equal(2, hours.Family.On(DayOfWeek.Tuesday).Count);

        using var own = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/week/plan/hours/{family.Wren}"), new() { ["Input.Days[0]"] = "10:00–11:00" });
        hours = await HoursAsync(family);
        Assert.Equal([new Stretch(600, 660)], hours.Of(family.Wren).On(DayOfWeek.Monday));
        Assert.Equal([new Stretch(510, 720)], hours.Of(family.Linnet).On(DayOfWeek.Monday));

        using var back = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync($"/week/plan/hours/{family.Wren}"), within: "form[action*='handler=Usual']");
        Assert.Equal([new Stretch(510, 720)], (await HoursAsync(family)).Of(family.Wren).On(DayOfWeek.Monday));
    }

    [Fact]
    public async Task Hours_that_cannot_be_read_are_kept_as_typed_with_a_sentence_beside_them()
    {
        var family = await PlanningFamily.MakeAsync(server);
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/plan/hours"), new() { ["Input.Days[2]"] = "mornings", ["Input.Days[3]"] = "9–10" });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var shown = await Visitor.ParseAsync(answer);
        Assert.Contains("“mornings” is no stretch of time", shown.GetElementById("day-2-fault")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("mornings", shown.GetElementById("Input_Days_2_")!.GetAttribute("value"));
        Assert.Equal("9–10", shown.GetElementById("Input_Days_3_")!.GetAttribute("value"));
        Assert.Null((await HoursAsync(family)).OfFamily);
    }

    [Fact]
    public async Task Hours_saved_by_somebody_else_first_are_not_overwritten_unseen()
    {
        var family = await PlanningFamily.MakeAsync(server);
        foreach (var (mine, theirs) in new[] { ("8–9", "9–10"), ("10–11", "11–12") })
        {
            var (page, other) = (await family.Guardian.GetAsync("/week/plan/hours"), await family.Guardian.GetAsync("/week/plan/hours"));
            using var first = await family.Guardian.SubmitAsync(other, new() { ["Input.Days[0]"] = theirs });
            using var second = await family.Guardian.SubmitAsync(page, new() { ["Input.Days[0]"] = mine });
            Assert.Equal(HttpStatusCode.Conflict, second.StatusCode);
            var shown = await Visitor.ParseAsync(second);
            Assert.Equal(mine, shown.GetElementById("Input_Days_0_")!.GetAttribute("value"));
            using var meant = await family.Guardian.SubmitAsync(shown);
            Assert.Equal(HttpStatusCode.Redirect, meant.StatusCode);
        }

        Assert.Equal([new Stretch(600, 660)], (await HoursAsync(family)).Family.On(DayOfWeek.Monday));
    }

    [Fact]
    public async Task Hours_of_somebody_of_another_family_are_not_there()
    {
        var (family, other) = (await PlanningFamily.MakeAsync(server), await PlanningFamily.MakeAsync(server));
        var adult = await other.AddAsync(id => new TeachingAdult(id, "Basil", null, "", 0));
        foreach (var owner in new[] { other.Wren, adult })
        {
            using var answer = await family.Guardian.OpenAsync($"/week/plan/hours/{owner}");
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        }
    }
}
