using CoopLessons.Core.Schedule;
using CoopLessons.Core.Units;
using CsCheck;

namespace CoopLessons.Core.Tests.Schedule;

public class Any_fit
{
    private static readonly Guid[] Children = [.. Enumerable.Range(1, 3).Select(AlderLog.Id)];

    private static readonly Gen<Demand[]> Weeks =
        Gen.Select(Gen.Enum<DemandOrigin>(), Gen.Int[1, 7], Gen.Int[0, 240], Gen.Enum<AdultNeed>(), Gen.Int[0, 20])
            .Select((origin, who, minutes, need, look) => (origin, who, minutes, need, look)).Array[0, 12]
            .Select(all => all.Select((d, i) => new Demand(
                AlderLog.Id(100 + i), $"Thing {i}", null, d.origin, [.. Children.Where((_, c) => (d.who >> c & 1) == 1)], d.minutes, d.need, d.look)).ToArray());

    private static readonly Gen<(Demand[] Demands, int[] Rooms)> Any = Gen.Select(Weeks, Gen.Int[0, 900].Array[4]);

    private static Fit Of(IReadOnlyList<Demand> demands, int[] rooms) => Fit.Of(
        demands, [.. Children.Select((c, i) => new Room(c, $"Child {i}", rooms[i]))], [new Room(AlderLog.Id(9), "Iris", rooms[3])]);

    [Fact]
    public void Asks_for_no_more_of_anybody_once_something_is_left_out() => Any.Sample(week =>
    {
        var whole = Of(week.Demands, week.Rooms).Lines.Select(l => l.Demand).ToList();
        for (var i = 0; i < week.Demands.Length; i++)
        {
            var without = Of([.. week.Demands.Where((_, j) => j != i)], week.Rooms).Lines.Select(l => l.Demand);
            Assert.All(without.Zip(whole), pair => Assert.True(pair.First <= pair.Second));
        }
    }, iter: 200);

    [Fact]
    public void Is_either_over_or_has_some_to_spare_and_the_parts_are_the_whole() => Any.Sample(week =>
        Assert.All(Of(week.Demands, week.Rooms).Lines, l =>
        {
            Assert.Equal(l.Demand - l.Capacity, l.Over - l.Spare);
            Assert.True(l.Over == 0 || l.Spare == 0);
        }), iter: 200);

    [Fact]
    public void Is_relieved_by_each_remedy_by_just_what_it_says() => Any.Sample(week =>
    {
        foreach (var (line, place) in Of(week.Demands, week.Rooms).Lines.Select((l, i) => (l, i)))
        {
            foreach (var remedy in line.Remedies)
            {
                var changed = remedy.Kind == RemedyKind.LeaveOut
                    ? week.Demands.Where(d => d.Id != remedy.DemandId)
                    : week.Demands.Select(d => d.Id == remedy.DemandId ? d with { Need = AdultNeed.Beside } : d);
                var after = Of([.. changed], week.Rooms).Lines.ElementAt(place);
                Assert.Equal(line.Demand - remedy.Relief, after.Demand);
                Assert.Equal(remedy.IsEnough, after.Over == 0);
            }
        }
    }, iter: 200);

    [Fact]
    public void Knows_every_single_activity_that_would_be_enough() => Any.Sample(week =>
    {
        foreach (var (line, place) in Of(week.Demands, week.Rooms).Lines.Select((l, i) => (l, i)).Where(x => x.l.Over > 0))
        {
            var enough = week.Demands.Where(d => d.Origin == DemandOrigin.Unit)
                .Where(d => Of([.. week.Demands.Where(x => x.Id != d.Id)], week.Rooms).Lines.ElementAt(place).Over == 0).Select(d => d.Id);
            Assert.Equal(enough.Order(), line.Remedies.Where(r => r is { Kind: RemedyKind.LeaveOut, IsEnough: true }).Select(r => r.DemandId).Order());
        }
    }, iter: 200);
}
