using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Core.Tests.Requirements.Situations;

/// <summary>Under N.D.C.C. § 15.1-23-04: 175 days of at least four hours, read at a county's school office.</summary>
public sealed class Days_marked_by_hand
{
    private static readonly DateOnly First = new(2025, 9, 1);

    [Fact]
    public void Count_whatever_was_logged_and_are_told()
    {
        var log = new StateLog().Write(First, 173, 240).Write(First.AddDays(173), 3, 200);
        log.Marks[First.AddDays(173)] = true;
        log.Marks[First.AddDays(200)] = true;
        var standing = log.Under("US-ND", "home-education", StateLog.InGrade(5));
        standing.Line("days").AssertMet(175);
        Assert.Equal("175 of 175 days of at least 4 hours: met. 2 logged days stay under 4 hours and do not count. 2 of the counted days are marked by hand.", standing.Line("days").Why);
    }

    [Fact]
    public void As_no_school_days_do_not_count_and_are_not_called_short()
    {
        var log = new StateLog().Write(First, 175, 240);
        log.Marks[First] = false;
        var standing = log.Under("US-ND", "home-education", StateLog.InGrade(5));
        standing.Line("days").AssertShort(174, 1);
        Assert.Equal("1 day of at least 4 hours is missing: 174 of 175.", standing.Line("days").Why);
    }

    [Fact]
    public void Outside_the_days_asked_are_not_seen()
    {
        var log = new StateLog().Write(First, 10, 240);
        log.Marks[new DateOnly(2026, 7, 2)] = true;
        Assert.Equal(10, log.Under("US-ND", "home-education", StateLog.InGrade(5)).Line("days").Measured!.Value.Value);
    }
}
