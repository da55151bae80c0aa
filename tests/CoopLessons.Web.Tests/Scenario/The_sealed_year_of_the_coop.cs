using CoopLessons.Data.Sealing;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace CoopLessons.Web.Tests.Scenario;

[Collection(OneCoop.Name)]
public sealed class The_sealed_year_of_the_coop(LoadedOnce once)
{
    [Fact]
    public async Task Is_the_Alders_first_with_one_amendment_and_still_says_what_was_sealed()
    {
        var coop = once.Coop;
        foreach (var family in coop.Loaded.Families.Where(f => f.Name != "Alder"))
            Assert.Equal(0, await coop.In(family, db => db.SealedYears.CountAsync()));
        await coop.In(coop.Loaded["Alder"], async db =>
        {
            var year = await db.SealedYears.SingleAsync();
            Assert.Equal(("2025–26", new DateOnly(2026, 7, 14), "Iris"), (year.YearName, year.SealedOn, year.SealedBy));
            foreach (var learner in coop.Loaded["Alder"].Learners)
            {
                var amendment = await db.Amendments.SingleAsync(a => a.LearnerId == learner.Id);
                Assert.Equal((1, new DateOnly(2026, 8, 20)), (amendment.Number, amendment.AmendedOn));
                var change = Assert.Single(amendment.Changes);
                Assert.Equal(("13 December 2025, Baked for the winter fair and kept the accounts of the stall", "150 minutes", "135"), (change.About, change.Was, change.Now));
                var check = await db.CheckAsync(year, learner.Id, default);
                Assert.True(check.Holds, string.Join(" ", check.Faults.Concat(check.Differences.Select(d => d.Sentence))));
            }

            return true;
        });
    }
}
