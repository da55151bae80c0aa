using CoopLessons.Core.Units;
using CoopLessons.Data.Families;
using CoopLessons.Data.Planning;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Units;

namespace CoopLessons.Web.Tests.Week;

/// <summary>
/// Grinding wheat has small parts. That they are kept from children under three: 16 CFR 1501.2(a) and 1501.5.
/// </summary>
[Collection(PlanningServer.Name)]
public sealed class WithAToddler(TestServer server)
{
    private const string Grind = "w2-01-grind-and-sift";
    private const string Because = "while Robin sleeps or is out of the room, since it has small parts";

    private async Task<(AWeekToLayOut Week, Guid Robin)> WithRobinAsync(DateOnly born)
    {
        var week = await AWeekToLayOut.MakeAsync(server, a => a.Code != Grind, courses: false);
        var robin = Guid.CreateVersion7();
        await week.AddAsync(new Learner(robin, "Robin", born, 3));
        return (week, robin);
    }

    public static TheoryData<DateOnly> UnderThree => [new DateOnly(2025, 1, 10), new DateOnly(2024, 1, 10), new DateOnly(2023, 3, 17)];

    [Theory]
    [MemberData(nameof(UnderThree))]
    public async Task What_has_small_parts_is_done_while_the_child_sleeps(DateOnly born)
    {
        var (week, robin) = await WithRobinAsync(born);
        await week.AppointmentAsync("Nap", AppointmentKind.Nap, new DateOnly(2026, 1, 5), 13 * 60, 90, "FREQ=WEEKLY;BYDAY=MO,TU,WE,TH,FR", robin);
        var page = await week.LayOutAsync();
        var laid = week.Laid();
        var grind = Assert.Single(laid.Plan.Places);
        Assert.InRange(grind.StartsAt, 13 * 60, (13 * 60) + 90 - 45);
        Assert.Equal([week.Heron, week.Linnet, week.Wren], laid.AtHand.Of(grind.SessionId).Learners);
        Assert.Equal(Because, page.Text(".week .row-main .quiet"));
    }

    [Fact]
    public async Task Without_such_a_time_it_has_no_place_and_is_told_why()
    {
        var (week, _) = await WithRobinAsync(new DateOnly(2024, 1, 10));
        var page = await week.LayOutAsync();
        Assert.Empty(week.Laid().Plan.Places);
        Assert.Equal($"Needs 45 minutes {Because}; there is no such time on these days.", page.Text("section[aria-labelledby=misfits] .row-main > p"));
    }

    [Fact]
    public async Task A_nap_that_is_too_short_is_told_with_its_length()
    {
        var (week, robin) = await WithRobinAsync(new DateOnly(2024, 1, 10));
        await week.AppointmentAsync("Nap", AppointmentKind.Nap, new DateOnly(2026, 3, 18), 13 * 60, 40, "", robin);
        await week.LayOutAsync();
        Assert.Equal($"Needs 45 minutes {Because}; the longest stretch for it is 40 on Wednesday.", Assert.Single(week.Laid().Plan.Misfits).Reason);
    }

    [Fact]
    public async Task From_the_third_birthday_on_it_is_bound_to_nothing()
    {
        var (week, robin) = await WithRobinAsync(AWeekToLayOut.Monday.AddYears(-3));
        var page = await week.LayOutAsync();
        var laid = week.Laid();
        Assert.Contains(robin, laid.AtHand.Of(Assert.Single(laid.Plan.Places).SessionId).Learners);
        Assert.Equal("", page.Text(".week .row-main .quiet"));
        Assert.Contains(laid.AtHand.Wanted[0].Activity!.Details.Hazards, h => h.Kind == HazardKind.SmallParts);
    }
}
