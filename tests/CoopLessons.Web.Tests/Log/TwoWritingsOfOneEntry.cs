using CoopLessons.Core.Hours;
using CoopLessons.Data.Log;

namespace CoopLessons.Web.Tests.Log;

/// <summary>
/// Three-way merging by fields, held to its laws: one side alone passes through, both sides alike are as both say, the
/// order of disjoint changes does not matter (textbook properties of three-way merging; common practice, no source).
/// </summary>
public sealed class TwoWritingsOfOneEntry
{
    private static readonly Guid Wren = Guid.Parse("0195c5db-0000-7000-8000-000000000001");
    private static readonly Guid Linnet = Guid.Parse("0195c5db-0000-7000-8000-000000000002");
    private static readonly Guid Reading = Guid.Parse("0195c5db-0000-7000-8000-000000000011");
    private static readonly Guid Science = Guid.Parse("0195c5db-0000-7000-8000-000000000012");

    private static readonly EntryFacts Bread = new(
        new(2026, 3, 12), null, "Baked bread", Place.Home, "", [new(Wren, new(40)), new(Linnet, new(40))], [new(Reading, 1)], []);

    private static readonly IReadOnlyList<EntryFacts> Changes =
    [
        Bread with { What = "Baked two loaves" },
        Bread with { Date = new(2026, 3, 11) },
        Bread with { StartsAt = 615 },
        Bread with { Place = Place.Coop },
        Bread with { Note = "Rye" },
        Bread with { Times = [new(Wren, new(60)), new(Linnet, new(40))] },
        Bread with { Times = [new(Wren, new(40)), new(Linnet, new(55))] },
        Bread with { Split = [new(Reading, 1), new(Science, 2)] },
    ];

    [Fact]
    public void A_change_of_one_alone_is_what_holds_from_either_side()
    {
        foreach (var change in Changes)
        {
            Assert.Equal((true, false), (EntryMerge.Of(Bread, change, Bread).Merged.SaysTheSame(change), EntryMerge.Of(Bread, change, Bread).Collides));
            Assert.Equal((true, false), (EntryMerge.Of(Bread, Bread, change).Merged.SaysTheSame(change), EntryMerge.Of(Bread, Bread, change).Collides));
            Assert.Equal((true, false), (EntryMerge.Of(Bread, change, change).Merged.SaysTheSame(change), EntryMerge.Of(Bread, change, change).Collides));
        }
    }

    [Fact]
    public void Changes_of_different_fields_come_together_in_either_order()
    {
        foreach (var (first, second) in Changes.SelectMany(a => Changes.Where(b => b != a).Select(b => (a, b))))
        {
            var (one, other) = (EntryMerge.Of(Bread, first, second), EntryMerge.Of(Bread, second, first));
            Assert.False(one.Collides);
            Assert.True(one.Merged.SaysTheSame(other.Merged));
            // Merging once more brings nothing new.
            Assert.True(EntryMerge.Of(Bread, one.Merged, second).Merged.SaysTheSame(one.Merged));
        }
    }

    [Theory]
    [InlineData("Baked rolls", 0)]
    [InlineData("Baked bread", 90)]
    public void The_same_field_changed_otherwise_collides(string what, int minutes)
    {
        var first = Bread with { What = "Baked two loaves", Times = [new(Wren, new(60)), new(Linnet, new(40))] };
        var second = minutes == 0 ? Bread with { What = what } : Bread with { Times = [new(Wren, new(minutes)), new(Linnet, new(40))] };
        var merge = EntryMerge.Of(Bread, first, second);
        Assert.True(merge.Collides);
    }

    [Fact]
    public void Two_who_each_take_the_others_child_out_collide_rather_than_leave_nobody()
    {
        var merge = EntryMerge.Of(Bread, Bread with { Times = [new(Wren, new(40))] }, Bread with { Times = [new(Linnet, new(40))] });
        Assert.True(merge.Collides);
        Assert.NotEmpty(merge.Merged.Times);
    }
}
