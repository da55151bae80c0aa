using CoopLessons.Core.Prepare.Books;
using CsCheck;

namespace CoopLessons.Core.Tests.Prepare.Books;

public class How_fast_a_family_reads_aloud
{
    private static readonly Gen<TimedSitting[]> Sittings = Gen.Select(Gen.Int[1, 600], Gen.Int[1, 180]).Select((t, m) => new TimedSitting(t, m)).Array[0, 8];

    // Thirty pages an hour to begin with: common practice, no source.
    [Fact]
    public void Begins_at_thirty_pages_an_hour()
    {
        var pace = ReadingPace.Of([], [new(100, 30), new(100, 30)]);
        Assert.Equal((PaceFrom.Usual, 30m), (pace.From, pace.PagesAnHour));
        Assert.Equal(24, pace.MinutesFor(120, BookMeasure.Pages));
        Assert.Equal(25, pace.MinutesFor(121, BookMeasure.Pages));
    }

    [Fact]
    public void Is_the_family_s_own_from_the_third_sitting_on()
    {
        // 12 + 8.5 + 14 pages in 20 + 15 + 25 minutes: 34.5 pages in an hour.
        var pace = ReadingPace.Of([], [new(120, 20), new(85, 15), new(140, 25)]);
        Assert.Equal((PaceFrom.OfTheFamily, 34.5m), (pace.From, pace.PagesAnHour));
        Assert.Equal(60, pace.MinutesFor(345, BookMeasure.Pages));
    }

    [Fact]
    public void Is_the_book_s_own_where_three_sittings_of_it_tell()
    {
        TimedSitting[] own = [new(60, 20), new(60, 20), new(60, 20)];
        var pace = ReadingPace.Of(own, [.. own, new(400, 30)]);
        Assert.Equal((PaceFrom.OfTheBook, 18m), (pace.From, pace.PagesAnHour));
    }

    [Fact]
    public void Does_not_matter_to_a_recorded_book()
    {
        Assert.Equal(13, ReadingPace.Usual.MinutesFor(125, BookMeasure.Minutes));
        Assert.Equal(12, ReadingPace.Usual.MinutesFor(120, BookMeasure.Minutes));
    }

    [Fact]
    public void Gives_back_the_minutes_of_all_that_was_measured() => Sittings.Where(s => s.Length >= 3).Sample(sittings =>
        Assert.Equal(sittings.Sum(s => s.Minutes), ReadingPace.Of(sittings, []).MinutesFor(sittings.Sum(s => s.Tenths), BookMeasure.Pages)));

    [Fact]
    public void Never_gives_less_time_for_more_pages() => Gen.Select(Sittings, Gen.Int[0, 5000], Gen.Int[0, 500]).Sample((sittings, tenths, more) =>
    {
        var pace = ReadingPace.Of(sittings, []);
        Assert.True(pace.MinutesFor(tenths, BookMeasure.Pages) <= pace.MinutesFor(tenths + more, BookMeasure.Pages));
    });
}
