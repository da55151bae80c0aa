using System.Net;
using CoopLessons.Data.Planning;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Planning;

[Collection(PlanningServer.Name)]
public sealed class An_appointment_written_down(TestServer server)
{
    private static Dictionary<string, string?> Music(params (string Field, string? Value)[] otherwise)
    {
        var fill = new Dictionary<string, string?>
        {
            ["Input.Title"] = "Fiddle lesson",
            ["Input.Kind"] = "LessonOut",
            ["Input.First"] = "2026-03-12",
            ["Input.Start"] = "14:00",
            ["Input.Minutes"] = "45",
            ["Input.How"] = "Weekly",
            ["Input.Days"] = "Thursday",
        };
        foreach (var (field, value) in otherwise)
            fill[field] = value;
        return fill;
    }

    private static Task<Appointment> OnlyAsync(PlanningFamily family) => family.Family.FromDbAsync(db => db.Appointments.AsNoTracking().SingleAsync());

    [Theory]
    [InlineData("Once", "", "", "", "")]
    [InlineData("Weekly", "Thursday", "", "", "FREQ=WEEKLY;BYDAY=TH")]
    [InlineData("Weekly", "Thursday", "2026-05-28", "", "FREQ=WEEKLY;BYDAY=TH;UNTIL=20260528")]
    [InlineData("EveryOtherWeek", "Thursday", "", "", "FREQ=WEEKLY;INTERVAL=2;BYDAY=TH")]
    [InlineData("OwnRule", "", "", "freq=monthly;byday=2th", "FREQ=MONTHLY;BYDAY=2TH")]
    public async Task Is_kept_as_a_rule_and_shown_as_the_choices_that_were_made(string how, string day, string until, string rule, string kept)
    {
        var family = await PlanningFamily.MakeAsync(server);
        var page = await family.Guardian.GetAsync("/week/plan/appointments/new");
        var fill = Music(("Input.How", how), ("Input.Days", day.Length == 0 ? null : day), ("Input.Until", until), ("Input.Rule", rule));
        for (var i = 0; i < 2; i++)
        {
            using var answer = await family.Guardian.SubmitAsync(page, fill);
            Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        }

        var appointment = await OnlyAsync(family);
        Assert.Equal((kept, 14 * 60, 45), (appointment.Repeats, appointment.StartsAt, appointment.Minutes));
        Assert.Equal(2, appointment.Learners.Count);
        var shown = await family.Guardian.GetAsync($"/week/plan/appointments/{appointment.Id}");
        Assert.Equal(how, shown.QuerySelector("input[name='Input.How'][checked]")!.GetAttribute("value"));
        Assert.Equal(day.Length == 0 ? [] : [day], shown.QuerySelectorAll("input[name='Input.Days'][checked]").Select(d => d.GetAttribute("value")!));
        Assert.Equal("2026-03-12", shown.QuerySelector("#next-days time")!.GetAttribute("datetime"));
    }

    [Fact]
    public async Task Shows_its_next_five_days_before_it_is_saved()
    {
        var family = await PlanningFamily.MakeAsync(server);
        var page = await family.Guardian.GetAsync("/week/plan/appointments/new");
        var fields = Music(("Input.Except", "2026-03-19, 2026-04-02\n2026-12-24"), ("Input.Learners", family.Wren.ToString()));
        fields["__RequestVerificationToken"] = await family.Guardian.TokenAsync("/family/learners/new");
        using var answer = await family.Guardian.PostAsync("/week/plan/appointments/new?handler=Dates", fields.Select(f => new KeyValuePair<string, string>(f.Key, f.Value!)));
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var shown = await Visitor.ParseAsync(answer);
        Assert.Equal(["2026-03-12", "2026-03-26", "2026-04-09", "2026-04-16", "2026-04-23"], shown.QuerySelectorAll("#next-days time").Select(t => t.GetAttribute("datetime")!));
        Assert.Equal("Fiddle lesson", shown.QuerySelector("#Input_Title")!.GetAttribute("value"));
        Assert.Equal(0, await family.Family.FromDbAsync(db => db.Appointments.CountAsync()));
        Assert.NotNull(page.QuerySelector("button[formaction$='handler=Dates']"));
    }

    [Theory]
    [InlineData("Input.Title", "", "title-fault")]
    [InlineData("Input.First", "", "first-fault")]
    [InlineData("Input.First", "1999-12-31", "first-fault")]
    [InlineData("Input.First", "2026-03-13", "first-fault")]
    [InlineData("Input.Start", "", "start-fault")]
    [InlineData("Input.Start", "noon", "start-fault")]
    [InlineData("Input.Start", "23:30", "minutes-fault")]
    [InlineData("Input.Minutes", "4", "minutes-fault")]
    [InlineData("Input.Minutes", "1440", "minutes-fault")]
    [InlineData("Input.Days", null, "days-fault")]
    [InlineData("Input.Days", "Someday", "days-fault")]
    [InlineData("Input.Until", "2026-03-11", "until-fault")]
    [InlineData("Input.Except", "Christmas", "except-fault")]
    [InlineData("Input.Kind", "Picnic", "")]
    [InlineData("Input.How", "Sometimes", "")]
    public async Task Is_not_saved_while_something_is_amiss(string field, string? value, string where)
    {
        var family = await PlanningFamily.MakeAsync(server);
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/plan/appointments/new"), Music((field, value), ("Input.Rule", "kept 🎻")));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var shown = await Visitor.ParseAsync(answer);
        Assert.NotEmpty(shown.QuerySelectorAll(".field-validation-error, .fault"));
        if (where.Length > 0)
            Assert.NotEmpty(shown.GetElementById(where)!.TextContent);
        Assert.Equal("kept 🎻", shown.QuerySelector("#Input_Rule")!.GetAttribute("value"));
        Assert.Equal(0, await family.Family.FromDbAsync(db => db.Appointments.CountAsync()));
    }

    [Theory]
    [InlineData("FREQ=HOURLY", "comes back within a day")]
    [InlineData("Thursdays", "no part of a rule")]
    [InlineData("", "Write a rule")]
    [InlineData("FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30", "never takes place")]
    public async Task Refuses_a_rule_that_cannot_be_kept(string rule, string sentence)
    {
        var family = await PlanningFamily.MakeAsync(server);
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/plan/appointments/new"), Music(("Input.How", "OwnRule"), ("Input.Rule", rule)));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains(sentence, (await Visitor.ParseAsync(answer)).QuerySelector("#rule-fault")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Says_on_which_day_it_would_begin()
    {
        var family = await PlanningFamily.MakeAsync(server);
        using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/plan/appointments/new"), Music(("Input.Days", "Tuesday")));
        Assert.Contains("first takes place on Tuesday 17 March", (await Visitor.ParseAsync(answer)).QuerySelector("#first-fault")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Takes_nobody_and_no_subject_of_another_family()
    {
        var (family, other) = (await PlanningFamily.MakeAsync(server), await PlanningFamily.MakeAsync(server));
        var theirs = await other.AddAsync(id => new TeachingAdult(id, "Basil", null, "", 0));
        foreach (var (field, value) in new[] { ("Input.Learners", other.Wren), ("Input.Adults", theirs), ("Input.SubjectId", other.Subjects["music"]) })
        {
            using var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/plan/appointments/new"), Music((field, value.ToString())));
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        }
    }

    [Fact]
    public async Task Keeps_what_was_typed_where_somebody_else_saved_first()
    {
        var family = await PlanningFamily.MakeAsync(server);
        using var made = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/plan/appointments/new"), Music());
        var path = $"/week/plan/appointments/{(await OnlyAsync(family)).Id}";
        var (mine, theirs) = (await family.Guardian.GetAsync(path), await family.Guardian.GetAsync(path));
        using var first = await family.Guardian.SubmitAsync(theirs, new() { ["Input.Minutes"] = "50" });
        using var second = await family.Guardian.SubmitAsync(mine, new() { ["Input.Minutes"] = "55" });
        Assert.Equal(HttpStatusCode.Conflict, second.StatusCode);
        Assert.Equal("55", (await Visitor.ParseAsync(second)).QuerySelector("#Input_Minutes")!.GetAttribute("value"));
        Assert.Equal(50, (await OnlyAsync(family)).Minutes);
    }

    [Fact]
    public async Task Is_removed_after_a_question()
    {
        var family = await PlanningFamily.MakeAsync(server);
        using var made = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/week/plan/appointments/new"), Music());
        var page = await family.Guardian.GetAsync($"/week/plan/appointments/{(await OnlyAsync(family)).Id}?remove=true");
        Assert.Contains("Sessions that are planned stay where they are", page.QuerySelector(".note.loss")!.TextContent, StringComparison.Ordinal);
        using var removed = await family.Guardian.SubmitAsync(page);
        Assert.Equal(0, await family.Family.FromDbAsync(db => db.Appointments.CountAsync()));
    }
}
