using System.Net;
using CoopLessons.Core.Schedule;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Planning.Futures;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Planning;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Units;
using IsoWeek = CoopLessons.Core.Calendar.Week;

namespace CoopLessons.Web.Tests.Week;

/// <summary>A walk, a drawing and a reading stand on Wednesday; then Wren has the dentist at the hour of the first.</summary>
[Collection(PlanningServer.Name)]
public sealed class AnAppointmentCame(TestServer server)
{
    private const string Walk = "w2-08-walk-among-grasses";
    private const string Map = "w2-07-wheat-journey-map";
    private const string Donkey = "w2-09-the-millers-donkey";
    private static readonly DateOnly Wednesday = new(2026, 3, 18);

    private async Task<(AWeekToLayOut Week, string Path, string Key)> WithDentistAsync()
    {
        var week = await AWeekToLayOut.MakeAsync(server, a => a.Week == 1, courses: false);
        await week.PlanAsync(Walk, Wednesday, 9 * 60);
        await week.PlanAsync(Map, Wednesday, 9 * 60, learners: week.Heron);
        await week.PlanAsync(Donkey, Wednesday, 11 * 60);
        var dentist = await week.AppointmentAsync("Dentist", AppointmentKind.Away, Wednesday, 9 * 60, 60, "", week.Wren);
        Assert.True(IsoWeek.TryParse(AWeekToLayOut.Next, out var next));
        return (week, $"/week/ways/{AWeekToLayOut.Next}/appointment/{dentist}", FamilyWork.KeyOf(dentist, next));
    }

    [Fact]
    public async Task Only_what_its_people_do_in_its_hours_is_hit()
    {
        var (week, path, key) = await WithDentistAsync();
        var page = await week.WaysAsync(path, key);
        Assert.Equal("Dentist takes its time", page.Text("h1"));
        Assert.Equal("Put it off Thin it out Let it go", page.Text(".ways h2"));
        Assert.Equal([(await week.SessionOfAsync(Walk)).Id], week.Outcome<UpsetOutcome>(key).Upset.Hit.Select(s => s.Id));
    }

    [Theory]
    [InlineData(FutureKind.Shift)]
    [InlineData(FutureKind.Thin)]
    [InlineData(FutureKind.LetGo)]
    public async Task Each_way_is_taken_and_undone_as_a_whole(FutureKind kind)
    {
        var (week, path, key) = await WithDentistAsync();
        var before = await week.RowsAsync();
        var page = await week.WaysAsync(path, key);
        var to = await week.Guardian.SubmitAsync(page, within: $"section[aria-labelledby=way-{kind}] form").RedirectedAsync();
        var walk = await week.SessionOfAsync(Walk);
        if (kind == FutureKind.LetGo)
            Assert.Equal((Wednesday, SessionState.LetGo), (walk.Date, walk.State));
        else
            Assert.False(walk.Date == Wednesday && new Stretch(walk.StartsAt!.Value, walk.StartsAt.Value + 45).Meets(new Stretch(9 * 60, 10 * 60)));
        if (kind == FutureKind.Shift)
            Assert.Equal(Wednesday.AddDays(1), walk.Date);
        Assert.Equal((Wednesday, 9 * 60), ((await week.SessionOfAsync(Map)).Date, (await week.SessionOfAsync(Map)).StartsAt));
        await week.Guardian.SubmitAsync(await week.Guardian.GetAsync(to), within: ".undo form").RedirectedAsync();
        Assert.Equal(before, await week.RowsAsync());
    }

    [Fact]
    public async Task Of_another_family_it_is_not_there()
    {
        var (_, path, _) = await WithDentistAsync();
        var other = await server.FamilyAsync("Birch");
        using var answer = await other.Guardian.OpenAsync(path);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }
}
