using CoopLessons.Core.Coop;
using CoopLessons.Core.Families;
using CoopLessons.Core.Units;
using static CoopLessons.Core.Tests.Coop.Millrace;

namespace CoopLessons.Core.Tests.Coop;

/// <summary>
/// Who is to be with the children in a room. The ratios and two adults in each room: Oregon State University, Youth Program
/// Best Practices, https://blogs.oregonstate.edu/youthsafety/basics/best-practices/ (read). That a couple does not count as
/// two: the supervision requirements at uua.org named in <see cref="CoverRules"/> (read). The rest is common practice, no source.
/// </summary>
public class A_room_with_its_adults
{
    private static readonly RoomAdult Iris = Adult("Iris", "Alder"), Basil = Adult("Basil", "Alder"), Rue = Adult("Rue", "Birch");
    private static readonly RoomChild Wren = Child("Wren", "Alder", 9), Lark = Child("Lark", "Birch", 10);

    private static CoverFault Only(CoverRoom room, CoverRules? rules = null) => Assert.Single(Cover.Faults(room, rules ?? CoverRules.Usual));

    private static RoomChild[] Children(int count, int age) => [.. Enumerable.Range(0, count).Select(i => Child($"Bird {age} {i}", "Cedar", age))];

    [Fact]
    public void Is_covered_by_two_adults_of_different_families() => Assert.Empty(Cover.Faults(Barn([Iris, Rue], Wren, Lark), CoverRules.Usual));

    [Fact]
    public void Needs_a_second_household_beside_a_couple()
    {
        var fault = Only(Barn([Basil, Iris], Wren, Lark));
        Assert.Equal((CoverFaultKind.TooFewUnrelated, 1), (fault.Kind, fault.Missing));
        Assert.Equal("Basil and Iris Alder are one household: a second adult of another family is needed in the barn.", fault.Sentence);
    }

    [Fact]
    public void Counts_a_couple_of_two_families_as_one()
    {
        var room = Barn([Adult("Iris", "Alder", household: "mill house"), Adult("Linden", "Cedar", household: "mill house")], Wren, Lark);
        Assert.Equal("Iris Alder and Linden Cedar are one household: a second adult of another family is needed in the barn.", Only(room).Sentence);
        Assert.Empty(Cover.Faults(room, CoverRules.Usual with { HouseholdCountsAsOne = false }));
    }

    [Fact]
    public void Does_not_count_a_guest()
    {
        var room = Barn([Iris, Adult("Hazel", "Dogwood", guest: true)], Wren, Lark);
        Assert.Equal("Iris Alder is the only adult in the barn at 10:00: a second adult of another family is needed. Guests do not count.", Only(room).Sentence);
        Assert.Empty(Cover.Faults(room, CoverRules.Usual with { GuestsCount = true }));
    }

    [Fact]
    public void Says_how_many_are_missing_where_nobody_is_there()
    {
        var faults = Cover.Faults(Barn([], Wren, Lark), CoverRules.Usual);
        Assert.Equal(["No adult of the co-op is in the barn at 10:00: two adults of different families are needed.",
            "With two children of 8 and more (one adult for 10) the barn needs one adult at 10:00; none are there who count."], faults.Select(f => f.Sentence));
    }

    [Fact]
    public void Needs_nobody_where_no_child_is() => Assert.Empty(Cover.Faults(Barn([]), CoverRules.Usual));

    [Theory]
    [InlineData(0, 0, false, 0)]
    [InlineData(0, 10, false, 1)]
    [InlineData(0, 11, false, 2)]
    [InlineData(0, 8, true, 1)]
    [InlineData(0, 9, true, 2)]
    [InlineData(5, 0, false, 1)]
    [InlineData(6, 0, false, 2)]
    [InlineData(5, 0, true, 1)]
    // 5/5 + 7/10 = 1.7; 2/5 + 6/10 = 1 exactly; 2/5 + 6/8 = 1.15.
    [InlineData(5, 7, false, 2)]
    [InlineData(2, 6, false, 1)]
    [InlineData(2, 6, true, 2)]
    public void Needs_an_adult_for_each_ten_eight_or_five(int young, int old, bool offSite, int adults) =>
        Assert.Equal(adults, Cover.AdultsNeeded([.. Enumerable.Repeat(7, young), .. Enumerable.Repeat(8, old)], offSite, CoverRules.Usual));

    [Fact]
    public void Says_every_fault_and_not_only_the_first()
    {
        var faults = Cover.Faults(Barn([Iris], [.. Children(6, 4), .. Children(5, 9)]), CoverRules.Usual);
        Assert.Equal([CoverFaultKind.TooFewUnrelated, CoverFaultKind.TooFewAdults, CoverFaultKind.ClassTooLarge, CoverFaultKind.AgesTooFarApart], faults.Select(f => f.Kind));
        Assert.Equal("With 6 children under 8 (one adult for 5) and 5 children of 8 and more (one adult for 10) the barn needs two adults at 10:00; one is there who counts.", faults[1].Sentence);
        Assert.Equal("11 children are in the barn at 10:00; a class has at most 8.", faults[2].Sentence);
        Assert.Equal("The ages in the barn at 10:00 reach from 4 to 9, 5 years apart; a class spans at most 3.", faults[3].Sentence);
        Assert.Equal([1, 1, 3, 2], faults.Select(f => f.Missing));
    }

    [Fact]
    public void Takes_the_co_ops_own_rules()
    {
        var room = Barn([Iris], [.. Children(6, 4), .. Children(5, 9)]);
        Assert.Empty(Cover.Faults(room, new CoverRules { LeastUnrelated = 1, YoungChildren = 12, ChildrenOnSite = 12, MostChildren = null, MostYearsApart = null }));
        Assert.Equal("An adult minds at least one child.", Assert.Single(new CoverRules { ChildrenOffSite = 0 }.Faults()));
        Assert.StartsWith("An adult minds", Assert.Throws<ArgumentException>(() => Cover.Faults(room, new CoverRules { ChildrenOffSite = 0 })).Message, StringComparison.Ordinal);
    }

    private static readonly Ingredient Flour = new("Wheat flour", [Allergen.Wheat]), Rice = new("rice flour", []), Almond = new("almond meal", [Allergen.TreeNuts]);
    private static readonly RoomChild Robin = Child("Robin", "Cedar", 8, Allergen.Wheat);

    private static CoverRoom Baking(Ingredient? swap, params RoomChild[] children) =>
        Barn([Iris, Rue], children) with { Activity = new RoomActivity("From Grain to Loaf", [new RoomIngredient(Flour, swap)]) };

    [Fact]
    public void Swaps_what_a_child_is_allergic_to_and_names_the_child_to_those_who_need_to_know()
    {
        var fault = Assert.IsType<AllergenFault>(Only(Baking(Rice, Wren, Robin)));
        Assert.Equal(CoverFaultKind.AllergenSwap, fault.Kind);
        Assert.Equal("Wheat flour is left out of the barn at 10:00; rice flour is used instead.", fault.Sentence);
        Assert.Equal("Wheat flour holds wheat, and Robin is allergic: use rice flour instead in the barn at 10:00.", fault.ForThoseWhoNeed);
        Assert.DoesNotContain("Robin", fault.Sentence, StringComparison.Ordinal);
        Assert.Equal([Iris.Id, Rue.Id], fault.TellAdults);
        Assert.Equal(Id("Cedar"), fault.TellFamily);
    }

    [Fact]
    public void Blocks_it_where_the_swap_would_meet_another_child()
    {
        var faults = Cover.Faults(Baking(Almond, Robin, Child("Finch", "Dogwood", 9, Allergen.TreeNuts)), CoverRules.Usual);
        var fault = Assert.IsType<AllergenFault>(Assert.Single(faults));
        Assert.Equal((CoverFaultKind.AllergenBlock, null), (fault.Kind, fault.Instead));
        Assert.Equal("Wheat flour is left out of the barn at 10:00; nothing is named that would do instead.", fault.Sentence);
    }

    [Fact]
    public void Looks_at_no_allergy_where_the_co_op_says_so() => Assert.Empty(Cover.Faults(Baking(null, Robin, Wren), CoverRules.Usual with { HeedsAllergies = false }));

    [Fact]
    public void Shares_nobody_with_another_room_at_the_same_time()
    {
        var loft = new CoverRoom(Id("loft"), "the loft", "10:00", [Iris, Rue], [Child("Heron", "Cedar", 12)]);
        Assert.Equal("Iris Alder would be in the barn and the loft at 10:00 at once.",
            Assert.Single(Cover.Faults([Barn([Iris, Adult("Linden", "Cedar")], Wren), loft], CoverRules.Usual), f => f.Kind == CoverFaultKind.InTwoRooms).Sentence);
        Assert.Empty(Cover.Faults([Barn([Iris, Adult("Linden", "Cedar")], Wren), loft with { Period = "11:00" }], CoverRules.Usual));
    }
}
