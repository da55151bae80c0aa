using CoopLessons.Core.Requirements.Scores;

namespace CoopLessons.Core.Tests.Requirements.Scores;

public sealed class A_score_beside_what_is_asked
{
    private static readonly ScoreFloor Above33 = new(ScoreMeasure.Percentile, Above: 33);
    private static readonly ScoreFloor FourthStanine = new(ScoreMeasure.Stanine, AtLeast: 4);

    private static ScoreStanding Composite(ScoreFloor floor, int? percentile, int? stanine = null) =>
        Assert.Single(ScoreStanding.Of(floor, [new(ScoreResult.Composite, percentile, stanine, "", "")]));

    [Theory]
    [InlineData(34, ScoreVerdict.Reached)]
    [InlineData(33, ScoreVerdict.NotReached)]
    public void Is_above_only_where_it_is_more(int rank, ScoreVerdict verdict) => Assert.Equal(verdict, Composite(Above33, rank).Verdict);

    [Theory]
    [InlineData(15, ScoreVerdict.Reached)]
    [InlineData(14, ScoreVerdict.NotReached)]
    public void Is_at_or_above_where_it_is_equal(int rank, ScoreVerdict verdict) => Assert.Equal(verdict, Composite(new(ScoreMeasure.Percentile, AtLeast: 15), rank).Verdict);

    [Fact]
    public void Is_told_with_both_numbers() => Assert.Equal("composite 41st percentile; asked for: above the 33rd percentile", Composite(Above33, 41).Words);

    // Common reading of Va. Code § 22.1-254.1 among its families: the fourth stanine begins at the 23rd percentile.
    [Theory]
    [InlineData(23, ScoreVerdict.Reached)]
    [InlineData(22, ScoreVerdict.NotReached)]
    public void Answers_a_stanine_by_its_percentile(int rank, ScoreVerdict verdict) => Assert.Equal(verdict, Composite(FourthStanine, rank).Verdict);

    [Theory]
    [InlineData(5, ScoreVerdict.Reached)]
    [InlineData(4, ScoreVerdict.CannotTell)]
    [InlineData(3, ScoreVerdict.NotReached)]
    public void Answers_a_percentile_by_a_stanine_only_where_all_of_its_ranks_do(int stanine, ScoreVerdict verdict) => Assert.Equal(verdict, Composite(Above33, null, stanine).Verdict);

    [Fact]
    public void Cannot_be_told_from_a_grade_equivalent()
    {
        var standing = Assert.Single(ScoreStanding.Of(Above33, [new(ScoreResult.Composite, null, null, "7.4", "")]));
        Assert.Equal((ScoreVerdict.CannotTell, "composite: no percentile is written down; asked for: above the 33rd percentile"), (standing.Verdict, standing.Words));
    }

    [Fact]
    public void Is_asked_of_each_area_that_the_law_names()
    {
        var standings = ScoreStanding.Of(new(ScoreMeasure.Percentile, Above: 30, Areas: ["reading", "mathematics"]), [new("Reading", 80, null, "", ""), new("composite", 90, null, "", "")]);
        Assert.Equal([ScoreVerdict.Reached, ScoreVerdict.CannotTell], standings.Select(s => s.Verdict));
    }
}

/// <summary>
/// Source: New Zealand's Ministry of Education, "Percentages, percentiles, and stanines" (assessment.tki.org.nz), read on
/// 28 November 2026: of a hundred results, 4, 7, 12, 17, 20, 17, 12, 7 and 4 stand in the nine stanines. The fourth
/// begins at the 23rd percentile also by the pages on Va. Code § 22.1-254.1 of two associations of Virginia's families.
/// </summary>
public sealed class The_nine_stanines
{
    [Fact]
    public void Begin_where_the_shares_below_them_are_full() =>
        Assert.Equal([1, 4, 11, 23, 40, 60, 77, 89, 96], Enumerable.Range(1, 9).Select(Stanine.LowestRank));

    [Fact]
    public void Hold_every_percentile_rank_once()
    {
        for (var rank = 1; rank <= 99; rank++)
            Assert.InRange(rank, Stanine.LowestRank(Stanine.Of(rank)), Stanine.HighestRank(Stanine.Of(rank)));
        Assert.Equal(99, Enumerable.Range(1, 9).Sum(s => Stanine.HighestRank(s) - Stanine.LowestRank(s) + 1));
    }

    [Theory]
    [InlineData(1, "1st")]
    [InlineData(11, "11th")]
    [InlineData(22, "22nd")]
    [InlineData(33, "33rd")]
    [InlineData(40, "40th")]
    public void Are_counted_as_one_says_them(int number, string words) => Assert.Equal(words, Stanine.Ordinal(number));
}
