using CoopLessons.Core.Requirements.Standing;
using CsCheck;

namespace CoopLessons.Core.Tests.Requirements.Properties;

public sealed class The_best_and_the_worst_of_verdicts
{
    private static readonly Gen<Verdict[]> Some = Gen.Enum<Verdict>().Array[0, 6];

    [Fact]
    public void Are_found_among_them_whatever_the_order() =>
        (from all in Some from shuffled in Gen.Shuffle(all) select (all, shuffled)).Sample(both =>
        {
            Assert.Equal((both.all.Best(), both.all.Worst()), (both.shuffled.Best(), both.shuffled.Worst()));
            if (both.all.Length > 0)
                Assert.Contains(both.all.Best(), both.all);
        });

    [Fact]
    public void Pass_over_what_is_not_asked() => Some.Sample(all =>
    {
        Verdict[] more = [.. all, Verdict.NotAsked];
        Assert.Equal((all.Best(), all.Worst()), (more.Best(), more.Worst()));
    });

    [Fact]
    public void Are_not_asked_where_nothing_is() =>
        Assert.Equal([Verdict.NotAsked, Verdict.NotAsked], new[] { Array.Empty<Verdict>().Best(), new[] { Verdict.NotAsked }.Worst() });

    [Fact]
    public void Of_a_whole_are_those_of_its_parts() => Gen.Select(Some, Some).Sample((a, b) =>
    {
        Assert.Equal(a.Concat(b).Best(), new[] { a.Best(), b.Best() }.Best());
        Assert.Equal(a.Concat(b).Worst(), new[] { a.Worst(), b.Worst() }.Worst());
    });

    [Fact]
    public void Are_met_as_the_best_when_one_is_and_as_the_worst_when_all_that_are_asked_are() => Some.Sample(all =>
    {
        Assert.Equal(all.Contains(Verdict.Met), all.Best() == Verdict.Met);
        Assert.Equal(all.Any(v => v == Verdict.Met) && all.All(v => v is Verdict.Met or Verdict.NotAsked), all.Worst() == Verdict.Met);
        Assert.Equal(all.Contains(Verdict.NotMet), all.Worst() == Verdict.NotMet);
    });

    [Theory]
    [InlineData(Verdict.Met, "met")]
    [InlineData(Verdict.OnPace, "on pace")]
    [InlineData(Verdict.CannotTellYet, "cannot tell yet")]
    [InlineData(Verdict.ForYouToJudge, "for you to judge")]
    [InlineData(Verdict.Behind, "behind")]
    [InlineData(Verdict.NotMet, "not met")]
    [InlineData(Verdict.NotAsked, "not asked")]
    public void Are_each_told_in_words(Verdict verdict, string words) => Assert.Equal(words, verdict.Words());
}
