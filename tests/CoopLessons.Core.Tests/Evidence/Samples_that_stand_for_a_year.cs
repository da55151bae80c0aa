using CoopLessons.Core.Calendar;
using CoopLessons.Core.Evidence;
using CsCheck;
using Xunit;

namespace CoopLessons.Core.Tests.Evidence;

public class Samples_that_stand_for_a_year
{
    private static readonly DayRange Year = new(new(2026, 9, 1), new(2027, 5, 31));

    private static readonly Gen<SampleCandidate[]> Candidates =
        Gen.Select(Gen.Guid, Gen.Int[-20, 300], Gen.Bool, Gen.Bool, (id, day, aside, told) => new SampleCandidate(id, Year.First.AddDays(day), aside, told)).Array[0, 9];

    [Fact]
    public void Come_from_its_beginning_middle_and_end()
    {
        var samples = Of((9, 7), (9, 20), (10, 30), (1, 12), (2, 20), (5, 3), (5, 20));
        Assert.Equal([samples[0].Id, samples[3].Id, samples[6].Id], SampleSpread.Choose(samples, Year));
    }

    [Fact]
    public void Are_those_that_the_family_set_aside_before_any_other()
    {
        var samples = Of((9, 7), (10, 1), (10, 2), (1, 12), (5, 20));
        samples[1] = samples[1] with { SetAside = true };
        samples[2] = samples[2] with { SetAside = true };
        Assert.Equal([samples[1].Id, samples[2].Id, samples[4].Id], SampleSpread.Choose(samples, Year));
    }

    [Fact]
    public void Are_told_of_where_two_lie_as_well()
    {
        var samples = Of((9, 1), (1, 14), (1, 15), (5, 31));
        samples[2] = samples[2] with { Told = true };
        Assert.Equal([samples[0].Id, samples[2].Id, samples[3].Id], SampleSpread.Choose(samples, Year));
        samples = Of((9, 1), (1, 14), (1, 14), (5, 31));
        Assert.Contains(SampleSpread.Choose([samples[0], samples[1] with { Told = true }, samples[2], samples[3]], Year), id => id == samples[1].Id);
    }

    [Fact]
    public void Are_as_good_as_the_best_of_all_ways_to_choose() => Gen.Select(Candidates, Gen.Int[1, 4]).Sample((candidates, count) =>
    {
        var inside = candidates.Where(c => Year.Contains(c.Date)).DistinctBy(c => c.Id).OrderBy(c => c.Date).ThenBy(c => c.Id).ToList();
        var chosen = SampleSpread.Choose(inside, Year, count).Select(id => inside.Single(c => c.Id == id)).ToList();
        Assert.Equal(Math.Min(count, inside.Count), chosen.Count);
        Assert.Equal(chosen.OrderBy(c => c.Date), chosen);
        if (inside.Count <= count)
            return;
        var best = Ways(inside, count).Min(w => Cost(w, count));
        Assert.Equal(best, Cost(chosen, count));
    });

    [Fact]
    public void Lie_in_thirds_of_the_days()
    {
        var nine = new DayRange(new(2026, 9, 1), new(2026, 9, 9));
        Assert.Equal("Beginning Beginning Beginning Middle Middle Middle End End End", string.Join(' ', nine.Days().Select(d => SampleSpread.PartOf(d, nine))));
    }

    [Fact]
    public void Cannot_be_fewer_than_one() => Assert.Throws<ArgumentOutOfRangeException>(() => SampleSpread.Choose([], Year, 0));

    private static (int, int, int) Cost(IReadOnlyList<SampleCandidate> way, int count) => (
        way.Count(c => !c.SetAside),
        way.Select((c, i) => Math.Abs(c.Date.DayNumber - Goal(i, count))).Sum(),
        way.Count(c => !c.Told));

    private static int Goal(int i, int count) => count == 1 ? Year.First.DayNumber + (Year.Count - 1) / 2 : Year.First.DayNumber + i * (Year.Count - 1) / (count - 1);

    private static IEnumerable<List<SampleCandidate>> Ways(List<SampleCandidate> all, int count)
    {
        for (var bits = 0; bits < 1 << all.Count; bits++)
        {
            if (int.PopCount(bits) == count)
                yield return [.. all.Where((_, i) => (bits >> i & 1) == 1)];
        }
    }

    private static SampleCandidate[] Of(params (int Month, int Day)[] dates) =>
        [.. dates.Select((d, i) => new SampleCandidate(new Guid(i + 1, 0, 0, new byte[8]), new DateOnly(d.Month >= 9 ? 2026 : 2027, d.Month, d.Day), SetAside: false, Told: false))];
}
