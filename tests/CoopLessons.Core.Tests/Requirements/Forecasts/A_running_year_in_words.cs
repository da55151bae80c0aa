using CoopLessons.Core.Calendar;
using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Core.Tests.Requirements.Forecasts;

/// <summary>Wis. Stat. § 118.165(1)(c): 875 hours, statute text; N.D.C.C. § 15.1-23-04: 175 days of four hours, a county's school office.</summary>
public sealed class A_running_year_in_words
{
    private static readonly LearnerWords Wisconsin = new("US-WI", "home-based-private");
    private static readonly LearnerWords NorthDakota = new("US-ND", "home-education");

    [Fact]
    public void Is_on_pace_at_five_hours_a_day() =>
        // 875 / 5 = 175 days of 195.
        Wisconsin.Tells(300, "2026-10-04", Verdict.OnPace, "125 of 875 hours, on pace with 20 days to spare (Wis. Stat. § 118.165(1)(c)).");

    [Fact]
    public void Is_behind_at_four_hours_a_day() =>
        // 195 × 4 = 780; 775 h = 46,500 minutes over 170 days are 273.5.
        Wisconsin.Tells(240, "2026-10-04", Verdict.Behind, "100 of 875 hours, behind: the last weeks lead to about 780; 4:34 hours on each of the 170 teaching days left would reach it (Wis. Stat. § 118.165(1)(c)).");

    [Fact]
    public void Cannot_be_told_in_the_second_week() =>
        // 825 h = 49,500 minutes over 185 days are 267.6.
        Wisconsin.Tells(300, "2026-09-13", Verdict.CannotTellYet, "50 of 875 hours; 4:28 hours on each of the 185 teaching days left would reach it (Wis. Stat. § 118.165(1)(c)). A forecast needs three whole weeks of log.");

    [Fact]
    public void Names_the_last_day_in_the_singular() =>
        // 194 × 4 = 776, 780 in all; 99 h on one day is more than it has.
        Wisconsin.Tells(240, "2027-05-27", Verdict.Behind, "776 of 875 hours, behind: the last weeks lead to about 780; 99 hours are missing, and 1 teaching day is left (Wis. Stat. § 118.165(1)(c)).");

    [Fact]
    public void Spreads_what_is_missing_over_one_day_where_it_fits() =>
        // 194 × 268 = 51,992 minutes; 508 of 52,500 are missing.
        Wisconsin.Tells(268, "2027-05-27", Verdict.Behind, "866:32 of 875 hours, behind: the last weeks lead to about 871; 8:28 hours on the 1 teaching day left would reach it (Wis. Stat. § 118.165(1)(c)).");

    [Fact]
    public void Says_of_days_how_many_of_those_left_are_needed() =>
        NorthDakota.Tells(240, "2026-10-04", Verdict.OnPace, "25 of 175 days of at least 4 hours, on pace with 20 days to spare (N.D.C.C. § 15.1-23-04).");

    [Fact]
    public void Does_not_call_more_days_enough_than_are_left() =>
        NorthDakota.Tells(200, "2026-10-04", Verdict.Behind,
            "0 of 175 days of at least 4 hours, behind: the last weeks lead to about 0; 175 days are missing, and 170 teaching days are left (N.D.C.C. § 15.1-23-04). 25 logged days stay under 4 hours and do not count.");

    private sealed record LearnerWords(string Code, string Pathway)
    {
        public void Tells(int minutes, string asOf, Verdict verdict, string sentence)
        {
            var today = DateOnly.ParseExact(asOf, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
            var log = new StateLog { School = new TeachingCalendar(SteadyWeeks.Year, Weekdays.MondayToFriday, []) }.Teach(SteadyWeeks.Year.First, today, minutes);
            var standing = log.Under(Code, Pathway, StateLog.Wren(new DateOnly(2016, 3, 1), 5), today);
            Assert.Equal((verdict, sentence), (standing.Verdict, standing.Sentence));
        }
    }
}
