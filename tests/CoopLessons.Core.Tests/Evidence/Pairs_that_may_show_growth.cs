using CoopLessons.Core.Evidence;
using Xunit;

namespace CoopLessons.Core.Tests.Evidence;

public class Pairs_that_may_show_growth
{
    private static readonly Guid Nature = Guid.NewGuid();
    private static readonly Guid Writing = Guid.NewGuid();

    [Fact]
    public void Are_the_first_and_last_of_what_was_done_again()
    {
        var bird = Of(Nature, "Draw a bird", 0);
        var again = Of(Nature, "draw a Bird ", 70);
        var pair = Assert.Single(GrowthPairs.Propose([Of(Nature, "Leaves", -30), again, Of(Nature, "Draw a bird", 40), bird, Of(Nature, "", 90)]));
        Assert.Equal(new GrowthPair(Nature, "Draw a bird", bird.Id, again.Id), pair);
    }

    [Fact]
    public void Are_of_the_subject_alone_where_nothing_was_done_again()
    {
        var first = Of(Writing, "A letter", 0);
        var last = Of(Writing, "A recipe", 56);
        Assert.Equal(new GrowthPair(Writing, "", first.Id, last.Id), Assert.Single(GrowthPairs.Propose([last, first])));
    }

    [Fact]
    public void Lie_at_least_eight_weeks_apart() => Assert.Empty(GrowthPairs.Propose([Of(Writing, "A letter", 0), Of(Writing, "A letter", 55)]));

    [Fact]
    public void Come_one_a_subject_the_farthest_apart_first() => Assert.Equal(
        [Nature, Writing], GrowthPairs.Propose([Of(Writing, "", 0), Of(Writing, "", 60), Of(Nature, "", 0), Of(Nature, "", 61)]).Select(p => p.SubjectId));

    private static GrowthCandidate Of(Guid subject, string what, int day) => new(Guid.NewGuid(), new DateOnly(2026, 10, 1).AddDays(day), subject, what);
}
