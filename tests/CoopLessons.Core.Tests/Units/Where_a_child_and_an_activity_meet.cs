using CoopLessons.Core.Families;
using CoopLessons.Core.Units;

namespace CoopLessons.Core.Tests.Units;

public class Where_a_child_and_an_activity_meet
{
    private static CautionedLearner Aged(int age, params Allergen[] allergies) => new(Guid.CreateVersion7(), "Wren", age, allergies);

    private static IReadOnlyList<Caution> Of(CautionedLearner learner, Ingredient[]? ingredients = null, HazardKind[]? hazards = null, LevelVariant[]? variants = null) =>
        Cautions.Of([learner], [learner], Care(AdultNeed.HandsOn, ingredients, hazards, variants));

    private static ActivityCare Care(AdultNeed need, Ingredient[]? ingredients = null, HazardKind[]? hazards = null, LevelVariant[]? variants = null) =>
        new(ingredients ?? [], [.. (hazards ?? []).Select(h => new Hazard(h, "Take care."))], variants ?? [], need);

    [Theory]
    [InlineData(Allergen.Milk)]
    [InlineData(Allergen.Eggs)]
    [InlineData(Allergen.Fish)]
    [InlineData(Allergen.Shellfish)]
    [InlineData(Allergen.TreeNuts)]
    [InlineData(Allergen.Peanuts)]
    [InlineData(Allergen.Wheat)]
    [InlineData(Allergen.Soybeans)]
    [InlineData(Allergen.Sesame)]
    public void Each_of_the_nine_allergens_is_noticed(Allergen allergen)
    {
        // The nine of 21 U.S.C. 321(qq)(1), the section from memory; the nine names as the FDA lists them since the FASTER Act of 2021.
        var met = Assert.IsType<AllergenMet>(Assert.Single(Of(Aged(8, allergen), [new Ingredient("Paste", [allergen]), new Ingredient("Water", [])])));

        Assert.Equal(("Paste", allergen), (met.Ingredient, Assert.Single(met.Met)));
    }

    [Fact]
    public void Only_the_child_s_own_allergens_are_named()
    {
        var met = Assert.IsType<AllergenMet>(Assert.Single(Of(Aged(8, Allergen.Wheat, Allergen.Milk), [new Ingredient("Dough", [Allergen.Eggs, Allergen.Wheat, Allergen.Milk])])));

        Assert.Equal([Allergen.Milk, Allergen.Wheat], met.Met);
        Assert.Empty(Of(Aged(8, Allergen.Fish), [new Ingredient("Dough", [Allergen.Wheat])]));
    }

    [Theory]
    [InlineData(0, true)]
    [InlineData(2, true)]
    [InlineData(3, false)]
    [InlineData(4, false)]
    public void Small_parts_matter_under_three(int age, bool matters)
    {
        // 16 CFR 1501.2(a), eCFR as of 15 September 2021: articles intended for use by children under 3 years (36 months).
        Assert.Equal(matters, Of(Aged(age), hazards: [HazardKind.SmallParts]).Count == 1);
    }

    [Fact]
    public void Button_cells_and_loose_magnets_are_small_parts_and_heat_is_not()
    {
        Assert.Equal([HazardKind.ButtonCells, HazardKind.Magnets], Of(Aged(2), hazards: [HazardKind.ButtonCells, HazardKind.Heat, HazardKind.Magnets, HazardKind.Magnets]).Cast<SmallPartsMet>().Select(c => c.Kind));
    }

    [Fact]
    public void A_child_younger_than_every_version_is_noticed()
    {
        LevelVariant[] variants = [new(8, 11, "Weighs."), new(5, 7, "Counts.")];

        Assert.Equal(5, Assert.IsType<YoungerThanWritten>(Assert.Single(Of(Aged(4), variants: variants))).YoungestAge);
        Assert.Empty(Of(Aged(5), variants: variants));
        Assert.Empty(Of(Aged(16), variants: variants));
        Assert.Empty(Of(Aged(1)));
    }

    [Fact]
    public void Cautions_come_learner_by_learner()
    {
        var (pip, wren) = (Aged(2, Allergen.Wheat), Aged(8, Allergen.Wheat));
        var all = Cautions.Of([wren, pip], [wren, pip], Care(AdultNeed.HandsOn, [new Ingredient("Flour", [Allergen.Wheat])], [HazardKind.SmallParts]));

        Assert.Equal([(wren, typeof(AllergenMet)), (pip, typeof(AllergenMet)), (pip, typeof(SmallPartsMet))], all.Select(c => (c.Learner, c.GetType())));
    }

    [Theory]
    [InlineData(5, AdultNeed.Alone, AdultNeed.HandsOn)]
    [InlineData(5, AdultNeed.Beside, AdultNeed.HandsOn)]
    [InlineData(11, AdultNeed.Alone, AdultNeed.Beside)]
    [InlineData(11, AdultNeed.Beside, null)]
    [InlineData(12, AdultNeed.Alone, null)]
    [InlineData(5, AdultNeed.HandsOn, null)]
    public void An_adult_who_is_usually_nearer_is_asked_for(int age, AdultNeed written, AdultNeed? usual)
    {
        // Blades: an adult's hands below six, beside below twelve (common practice, no source).
        var child = Aged(age);
        Assert.Equal(usual, Cautions.Of([child], [child], Care(written, hazards: [HazardKind.Blades])).Cast<NearerAdult>().SingleOrDefault()?.Usual);
    }

    [Fact]
    public void A_small_child_who_takes_no_part_is_kept_out_of_reach()
    {
        var (pip, wren) = (Aged(2, Allergen.Wheat), Aged(13));
        var all = Cautions.Of([wren], [wren, pip], Care(AdultNeed.Alone, [new Ingredient("Flour", [Allergen.Wheat])], [HazardKind.Heat, HazardKind.Magnets, HazardKind.Blades], [new(8, 18, "Bakes.")]));

        Assert.Equal([typeof(NearerAdult), typeof(AllergenMet), typeof(SmallPartsMet), typeof(WithinReach)], all.Select(c => c.GetType()));
        Assert.Equal([HazardKind.Heat, HazardKind.Blades], all.OfType<WithinReach>().Single().Kinds);
        Assert.Empty(Cautions.Of([wren], [wren, Aged(5)], Care(AdultNeed.Alone, hazards: [HazardKind.Blades])));
    }

    [Fact]
    public void What_is_swallowed_is_kept_from_a_child_of_three_in_the_house_too()
    {
        var reached = Assert.IsType<WithinReach>(Assert.Single(Cautions.Of([], [Aged(3)], Care(AdultNeed.HandsOn, hazards: [HazardKind.ButtonCells, HazardKind.Plants, HazardKind.Sun]))));

        Assert.Equal([HazardKind.ButtonCells, HazardKind.Plants], reached.Kinds);
    }

    [Fact]
    public void A_child_too_young_for_the_work_is_still_told_its_hazards()
    {
        var all = Cautions.Of([Aged(4)], [], Care(AdultNeed.Alone, hazards: [HazardKind.Blades], variants: [new(5, 12, "Cuts.")]));

        Assert.Equal([typeof(YoungerThanWritten), typeof(NearerAdult)], all.Select(c => c.GetType()));
    }

    [Fact]
    public void Every_hazard_has_its_usual_caution_and_none_says_safe()
    {
        foreach (var kind in Enum.GetValues<HazardKind>())
        {
            var care = HazardCare.Of(kind);
            Assert.Equal(kind, care.Kind);
            Assert.True(care.HandsOnUnder <= care.BesideUnder);
            Assert.DoesNotContain("safe", care.Caution, StringComparison.OrdinalIgnoreCase);
        }
    }
}
