using CoopLessons.Data.Requirements;
using CoopLessons.Data.Scenario;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace CoopLessons.Web.Tests.Scenario;

[Collection(OneCoop.Name)]
public sealed class The_law_of_the_coop(LoadedOnce once)
{
    private readonly MillraceDatabase _coop = once.Coop;

    [Fact]
    public async Task Is_that_of_each_familys_state_for_every_child_of_school_age()
    {
        foreach (var family in _coop.Loaded.Families)
        {
            var all = await LawAsync(family);
            foreach (var child in family.Learners)
            {
                var law = all.Single(l => l.Learner.Id == child.Id);
                Assert.Empty(law.Lost);
                if (child.IsOfSchoolAge)
                    Assert.Equal("US-" + family.State, Assert.Single(law.InYear).Code);
                else
                    Assert.Empty(law.Spans);
            }
        }
    }

    [Fact]
    public async Task Names_only_goals_that_the_catalog_offers()
    {
        var spans = (await _coop.InEach(async (family, _) => (await LawAsync(family)).SelectMany(l => l.Spans).ToList())).ToList();
        Assert.NotEmpty(spans);
        Assert.All(spans, s => Assert.Subset(s.Pathway.AllRequirements.Where(r => !r.Binds).Select(r => r.Id).ToHashSet(), s.Choices.Goals.ToHashSet()));
        Assert.Contains(spans, s => s.Choices.Goals.Count > 0);
    }

    [Fact]
    public async Task Has_a_grade_for_each_child_of_school_age_and_one_that_is_not_the_usual()
    {
        var all = (await _coop.InEach(async (family, _) => (await LawAsync(family)).ToList())).ToDictionary(l => l.Learner.Name, l => l.Learner.Grade);
        Assert.Equal(10, all["Merlin"]);
        Assert.Equal(5, all["Lark"]);
        Assert.Equal(9, all.Values.Count(g => g is not null));
    }

    private Task<IReadOnlyList<LawOfLearner>> LawAsync(LoadedFamily family) => _coop.In(family, async db =>
        await LawOfLearner.LoadAllAsync(db, await db.SchoolYears.SingleAsync(y => y.First == MillraceDatabase.ThisYear.First), default));
}
