using CoopLessons.Data.Requirements;
using CoopLessons.Web.Tests.Records;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Notices;

/// <summary>
/// New York asks for reports by quarter (8 NYCRR 100.10(g)); the program proposes 31 March for the third. Fourteen days before
/// is 17 March, three days before 28 March.
/// </summary>
public sealed class A_date_that_the_law_sets
{
    [Theory]
    [InlineData(16, false)]
    [InlineData(17, true)]
    [InlineData(18, false)]
    [InlineData(27, false)]
    [InlineData(28, true)]
    [InlineData(29, false)]
    [InlineData(31, false)]
    public async Task Is_told_fourteen_and_three_days_before_once_each_and_names_nobody(int day, bool told)
    {
        await using var all = await NoticeServer.StartAsync(3, day, 7, 0);
        var log = await NewYorkAsync(all);
        await all.TurnOnAsync(log.Guardian);
        var came = await all.AfterARoundAsync();
        all.ItIs(3, day, 7, 20);
        Assert.Empty(await all.AfterARoundAsync());
        if (told)
            Assert.Equal(("A date ahead", "A paper is due on 31 March.", "/records"), all.Read(Assert.Single(came)));
        else
            Assert.Empty(came);
    }

    [Theory]
    [InlineData(0, 0, 0)]
    [InlineData(6, 59, 0)]
    [InlineData(7, 0, 1)]
    [InlineData(20, 59, 1)]
    [InlineData(21, 0, 0)]
    [InlineData(23, 59, 0)]
    public async Task Is_told_in_no_quiet_hour_of_the_family_s_own_zone(int hour, int minute, int told)
    {
        await using var all = await NoticeServer.StartAsync(3, 17, hour, minute);
        var log = await NewYorkAsync(all);
        await all.TurnOnAsync(log.Guardian);
        Assert.Equal(told, (await all.AfterARoundAsync()).Count);
    }

    [Fact]
    public async Task Is_not_told_once_the_paper_is_handed_in()
    {
        await using var all = await NoticeServer.StartAsync(3, 17, 9, 0);
        var log = await NewYorkAsync(all);
        await all.TurnOnAsync(log.Guardian);
        await log.Family.WithDbAsync(async db =>
        {
            var year = await db.SchoolYears.Include(y => y.Breaks).SingleAsync(y => y.Id == log.YearId);
            foreach (var law in await LawOfLearner.LoadAllAsync(db, year, default))
            {
                foreach (var duty in LearnerDuty.Of(law).Where(d => d.Dated.Due == new DateOnly(2026, 3, 31)))
                {
                    var mark = new DutyMark(law.Learner.Id, year.Id, duty.Dated.Key);
                    mark.Done(new DateOnly(2026, 3, 1));
                    db.DutyMarks.Add(mark);
                }
            }

            await db.SaveChangesAsync();
        });
        Assert.Empty(await all.AfterARoundAsync());
    }

    [Fact]
    public async Task Is_told_to_guardians_alone_and_only_to_those_who_asked()
    {
        await using var all = await NoticeServer.StartAsync(3, 17, 9, 0);
        var log = await NewYorkAsync(all);
        await all.TurnOnAsync(log.Guardian, lawDates: false);
        await all.TurnOnAsync(await all.Server.HelperAsync(log.Family), device: "two");
        Assert.Empty(await all.AfterARoundAsync());
    }

    private static async Task<KeptLog> NewYorkAsync(NoticeServer all)
    {
        var log = await KeptLog.OfAsync(all.Server, "Linnet").StandsAsync("US-NY", "home-instruction");
        await log.GradeAsync(4);
        return log;
    }
}
