using System.Globalization;
using CoopLessons.Core.Calendar;
using CoopLessons.Data.Planning;

namespace CoopLessons.Web.Tests.Planning;

/// <summary>
/// The worked examples of RFC 5545, section 3.8.5.3, with their days as the section lists them. Examples within a day are left
/// out, since those rules are refused. UNTIL is written as the last day, as 3.3.10 asks where the beginning is a day.
/// </summary>
public class The_rules_of_RFC_5545
{
    private static DateOnly Day(string text) => DateOnly.ParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static RepeatRule Rule(string text)
    {
        Assert.True(RepeatRule.TryRead(text, out var rule, out var fault), fault);
        return rule;
    }

    /// <summary>"9: 2 9 16" is those days of September, from the year of the first on; months of another year follow its number.</summary>
    private static List<DateOnly> Days(string first, string told)
    {
        var year = Day(first).Year;
        var days = new List<DateOnly>();
        foreach (var part in told.Split(';', StringSplitOptions.TrimEntries))
        {
            if (!part.Contains(':', StringComparison.Ordinal))
            {
                year = int.Parse(part, CultureInfo.InvariantCulture);
                continue;
            }

            var month = part.Split(':');
            days.AddRange(month[1].Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(d => new DateOnly(year, int.Parse(month[0], CultureInfo.InvariantCulture), int.Parse(d, CultureInfo.InvariantCulture))));
        }

        return days;
    }

    [Theory]
    [InlineData("1997-09-02", "FREQ=DAILY;COUNT=10", "9: 2 3 4 5 6 7 8 9 10 11")]
    [InlineData("1997-09-02", "FREQ=DAILY;INTERVAL=10;COUNT=5", "9: 2 12 22; 10: 2 12")]
    [InlineData("1997-09-02", "FREQ=WEEKLY;COUNT=10", "9: 2 9 16 23 30; 10: 7 14 21 28; 11: 4")]
    [InlineData("1997-09-02", "FREQ=WEEKLY;UNTIL=19971223", "9: 2 9 16 23 30; 10: 7 14 21 28; 11: 4 11 18 25; 12: 2 9 16 23")]
    [InlineData("1997-09-02", "FREQ=WEEKLY;UNTIL=19971006;WKST=SU;BYDAY=TU,TH", "9: 2 4 9 11 16 18 23 25 30; 10: 2")]
    [InlineData("1997-09-02", "FREQ=WEEKLY;COUNT=10;WKST=SU;BYDAY=TU,TH", "9: 2 4 9 11 16 18 23 25 30; 10: 2")]
    [InlineData("1997-09-01", "FREQ=WEEKLY;INTERVAL=2;UNTIL=19971223;WKST=SU;BYDAY=MO,WE,FR", "9: 1 3 5 15 17 19 29; 10: 1 3 13 15 17 27 29 31; 11: 10 12 14 24 26 28; 12: 8 10 12 22")]
    [InlineData("1997-09-02", "FREQ=WEEKLY;INTERVAL=2;COUNT=8;WKST=SU;BYDAY=TU,TH", "9: 2 4 16 18 30; 10: 2 14 16")]
    [InlineData("1997-09-05", "FREQ=MONTHLY;COUNT=10;BYDAY=1FR", "9: 5; 10: 3; 11: 7; 12: 5; 1998; 1: 2; 2: 6; 3: 6; 4: 3; 5: 1; 6: 5")]
    [InlineData("1997-09-05", "FREQ=MONTHLY;UNTIL=19971223;BYDAY=1FR", "9: 5; 10: 3; 11: 7; 12: 5")]
    [InlineData("1997-09-07", "FREQ=MONTHLY;INTERVAL=2;COUNT=10;BYDAY=1SU,-1SU", "9: 7 28; 11: 2 30; 1998; 1: 4 25; 3: 1 29; 5: 3 31")]
    [InlineData("1997-09-22", "FREQ=MONTHLY;COUNT=6;BYDAY=-2MO", "9: 22; 10: 20; 11: 17; 12: 22; 1998; 1: 19; 2: 16")]
    [InlineData("1997-09-02", "FREQ=MONTHLY;COUNT=10;BYMONTHDAY=2,15", "9: 2 15; 10: 2 15; 11: 2 15; 12: 2 15; 1998; 1: 2 15")]
    [InlineData("1997-09-30", "FREQ=MONTHLY;COUNT=10;BYMONTHDAY=1,-1", "9: 30; 10: 1 31; 11: 1 30; 12: 1 31; 1998; 1: 1 31; 2: 1")]
    [InlineData("1997-09-10", "FREQ=MONTHLY;INTERVAL=18;COUNT=10;BYMONTHDAY=10,11,12,13,14,15", "9: 10 11 12 13 14 15; 1999; 3: 10 11 12 13")]
    [InlineData("1997-06-10", "FREQ=YEARLY;COUNT=10;BYMONTH=6,7", "6: 10; 7: 10; 1998; 6: 10; 7: 10; 1999; 6: 10; 7: 10; 2000; 6: 10; 7: 10; 2001; 6: 10; 7: 10")]
    [InlineData("1997-03-10", "FREQ=YEARLY;INTERVAL=2;COUNT=10;BYMONTH=1,2,3", "3: 10; 1999; 1: 10; 2: 10; 3: 10; 2001; 1: 10; 2: 10; 3: 10; 2003; 1: 10; 2: 10; 3: 10")]
    [InlineData("1997-01-01", "FREQ=YEARLY;INTERVAL=3;COUNT=10;BYYEARDAY=1,100,200", "1: 1; 4: 10; 7: 19; 2000; 1: 1; 4: 9; 7: 18; 2003; 1: 1; 4: 10; 7: 19; 2006; 1: 1")]
    [InlineData("1997-09-04", "FREQ=MONTHLY;COUNT=3;BYDAY=TU,WE,TH;BYSETPOS=3", "9: 4; 10: 7; 11: 6")]
    [InlineData("1997-08-05", "FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=MO", "8: 5 10 19 24")]
    [InlineData("1997-08-05", "FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=SU", "8: 5 17 19 31")]
    [InlineData("2007-01-15", "FREQ=MONTHLY;BYMONTHDAY=15,30;COUNT=5", "1: 15 30; 2: 15; 3: 15 30")]
    public void Give_the_listed_days_and_then_end(string first, string rule, string told)
    {
        var days = Days(first, told);
        Assert.Equal(days, Rule(rule).Next(Day(first), Day(first), days.Count + 5));
    }

    [Theory]
    [InlineData("1997-09-02", "FREQ=DAILY;INTERVAL=2", "9: 2 4 6 8 10 12 14 16 18 20 22 24 26 28 30; 10: 2 4 6")]
    [InlineData("1997-09-02", "FREQ=WEEKLY;INTERVAL=2;WKST=SU", "9: 2 16 30; 10: 14 28; 11: 11 25; 12: 9 23; 1998; 1: 6 20; 2: 3 17")]
    [InlineData("1997-09-28", "FREQ=MONTHLY;BYMONTHDAY=-3", "9: 28; 10: 29; 11: 28; 12: 29; 1998; 1: 29; 2: 26")]
    [InlineData("1997-09-02", "FREQ=MONTHLY;INTERVAL=2;BYDAY=TU", "9: 2 9 16 23 30; 11: 4 11 18 25; 1998; 1: 6 13 20 27; 3: 3 10 17 24 31")]
    [InlineData("1997-05-19", "FREQ=YEARLY;BYDAY=20MO", "5: 19; 1998; 5: 18; 1999; 5: 17")]
    [InlineData("1997-05-12", "FREQ=YEARLY;BYWEEKNO=20;BYDAY=MO", "5: 12; 1998; 5: 11; 1999; 5: 17")]
    [InlineData("1997-03-13", "FREQ=YEARLY;BYMONTH=3;BYDAY=TH", "3: 13 20 27; 1998; 3: 5 12 19 26; 1999; 3: 4 11 18 25")]
    [InlineData("1997-06-05", "FREQ=YEARLY;BYDAY=TH;BYMONTH=6,7,8", "6: 5 12 19 26; 7: 3 10 17 24 31; 8: 7 14 21 28; 1998; 6: 4 11 18 25; 7: 2 9 16 23 30; 8: 6 13 20 27")]
    [InlineData("1998-02-13", "FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13", "2: 13; 3: 13; 11: 13; 1999; 8: 13; 2000; 10: 13")]
    [InlineData("1997-09-13", "FREQ=MONTHLY;BYDAY=SA;BYMONTHDAY=7,8,9,10,11,12,13", "9: 13; 10: 11; 11: 8; 12: 13; 1998; 1: 10; 2: 7; 3: 7; 4: 11; 5: 9; 6: 13")]
    [InlineData("1996-11-05", "FREQ=YEARLY;INTERVAL=4;BYMONTH=11;BYDAY=TU;BYMONTHDAY=2,3,4,5,6,7,8", "11: 5; 2000; 11: 7; 2004; 11: 2")]
    [InlineData("1997-09-29", "FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=-2", "9: 29; 10: 30; 11: 27; 12: 30; 1998; 1: 29; 2: 26; 3: 30")]
    public void Give_the_listed_days_and_go_on(string first, string rule, string told)
    {
        var days = Days(first, told);
        Assert.Equal(days, Rule(rule).Next(Day(first), Day(first), days.Count));
    }

    [Theory]
    [InlineData("FREQ=YEARLY;UNTIL=20000131;BYMONTH=1;BYDAY=SU,MO,TU,WE,TH,FR,SA")]
    [InlineData("FREQ=DAILY;UNTIL=20000131;BYMONTH=1")]
    public void Give_every_day_of_January_for_three_years(string rule)
    {
        var days = Rule(rule).DaysIn(new DateOnly(1998, 1, 1), new DayRange(new DateOnly(1998, 1, 1), new DateOnly(2003, 12, 31)));
        Assert.Equal(93, days.Count);
        Assert.Equal(new[] { 1998, 1999, 2000 }.SelectMany(y => Enumerable.Range(1, 31).Select(d => new DateOnly(y, 1, d))), days);
    }

    [Fact]
    public void Give_every_day_until_the_day_before_Christmas_Eve() =>
        Assert.Equal(29 + 31 + 30 + 23, Rule("FREQ=DAILY;UNTIL=19971223").DaysIn(Day("1997-09-02"), new DayRange(Day("1997-01-01"), Day("1998-12-31"))).Count);
}
