using CoopLessons.Core.Families;
using CoopLessons.Core.Prepare.Supplies;
using CoopLessons.Core.Units;

namespace CoopLessons.Core.Tests.Prepare.Supplies;

public class Allergens_in_the_words_of_a_good
{
    private static readonly CautionedLearner Dove = new(Guid.Empty, "Dove", 7, [Allergen.Wheat]);
    private static readonly CautionedLearner Teal = new(Guid.Empty, "Teal", 8, [Allergen.Milk, Allergen.Eggs]);

    private static Allergen[] In(string name) => [.. AllergenWords.In(name).Select(f => f.Allergen)];

    // 21 U.S.C. § 321(qq)(1), the foods and the examples that the statute gives; sesame by the FASTER Act of 2021.
    [Theory]
    [InlineData(Allergen.Milk, "milk")]
    [InlineData(Allergen.Eggs, "egg")]
    [InlineData(Allergen.Fish, "fish", "bass", "flounder", "cod")]
    [InlineData(Allergen.Shellfish, "crustacean shellfish", "crab", "lobster", "shrimp")]
    [InlineData(Allergen.TreeNuts, "tree nuts", "almonds", "pecans", "walnuts")]
    [InlineData(Allergen.Wheat, "wheat")]
    [InlineData(Allergen.Peanuts, "peanuts")]
    [InlineData(Allergen.Soybeans, "soybeans")]
    [InlineData(Allergen.Sesame, "sesame")]
    public void Are_found_by_the_words_of_the_statute(Allergen allergen, params string[] words) =>
        Assert.All(words, w => Assert.Equal([allergen], In(w)));

    // FDA, Questions and Answers Regarding Food Allergens, Edition 5 (6 January 2025), table 1: the twelve, as told by
    // https://content.govdelivery.com/accounts/WIDATCP/bulletins/3ce77c1 (Wisconsin Department of Agriculture).
    [Theory]
    [InlineData("Almond")]
    [InlineData("Black walnut")]
    [InlineData("Brazil nut")]
    [InlineData("California walnut")]
    [InlineData("Cashew")]
    [InlineData("Filbert/Hazelnut")]
    [InlineData("Heartnut/Japanese walnut")]
    [InlineData("Macadamia nut/Bush nut")]
    [InlineData("Pecan")]
    [InlineData("Pine nut/Pinon nut")]
    [InlineData("Pistachio")]
    [InlineData("Walnut (English, Persian)")]
    public void Are_found_in_each_tree_nut_of_the_guidance(string nut) => Assert.Contains(Allergen.TreeNuts, In(nut));

    // The same bulletin, "The tree nuts removed are".
    [Theory]
    [InlineData("Beech nut")]
    [InlineData("Butternut")]
    [InlineData("Chestnut")]
    [InlineData("Chinquapin")]
    [InlineData("Coconut")]
    [InlineData("Ginkgo nut")]
    [InlineData("Hickory nut")]
    [InlineData("Lichee nut")]
    [InlineData("Pili nut")]
    [InlineData("Sheanut")]
    public void Are_not_found_in_what_the_guidance_took_from_the_tree_nuts(string nut) => Assert.Empty(In(nut));

    // Minnesota Department of Agriculture, https://www.mda.state.mn.us/food-feed/food-ingredients-may-cause-allergies,
    // "Milk and milk products" and "Eggs".
    [Theory]
    [InlineData(Allergen.Milk, "butter fat", "butter oil", "buttermilk", "casein", "caseinates", "casein hydrolysate", "rennet casein", "cottage cheese", "cream cheese", "cheese curds", "half & half cream", "sour cream", "whipping cream", "custard", "ghee", "lactalbumin phosphate", "lactose", "lactulose", "lactoglobulin", "lactoferrin", "pudding", "tagatose", "whey protein hydrolysate", "yogurt")]
    [InlineData(Allergen.Eggs, "albumin", "albumen", "ovalbumin", "eggnog", "eggs", "globulin", "ovoglobulin", "livetin", "vitellin", "ovovitellin", "lysozyme", "mayonnaise", "meringue", "ovomucoid", "ovomucin", "ovotransferrin")]
    public void Are_found_by_the_words_of_a_department_of_agriculture(Allergen allergen, params string[] words) =>
        Assert.All(words, w => Assert.Contains(allergen, In(w)));

    // Food allergy quick guide of Great Neck Public Schools, https://www.greatneck.k12.ny.us/Page/8824, "Wheat".
    [Theory]
    [InlineData("Bulgur")]
    [InlineData("Couscous")]
    [InlineData("Durum")]
    [InlineData("Einkorn")]
    [InlineData("Emmer")]
    [InlineData("Farina")]
    [InlineData("All-purpose flour")]
    [InlineData("Kamut")]
    [InlineData("Matzoh")]
    [InlineData("Pasta")]
    [InlineData("Seitan")]
    [InlineData("Semolina")]
    [InlineData("Spelt")]
    [InlineData("Triticale")]
    [InlineData("Vital wheat gluten")]
    [InlineData("Whole-wheat berries")]
    public void Are_found_in_the_many_names_of_wheat(string name) => Assert.Equal([Allergen.Wheat], In(name));

    // Common practice, no source.
    [Theory]
    [InlineData("Tahini", Allergen.Sesame)]
    [InlineData("Tofu", Allergen.Soybeans)]
    [InlineData("Edamame", Allergen.Soybeans)]
    [InlineData("Marzipan", Allergen.TreeNuts)]
    [InlineData("Peanut butter", Allergen.Peanuts)]
    [InlineData("Almond milk", Allergen.TreeNuts)]
    [InlineData("Soy milk", Allergen.Soybeans)]
    [InlineData("Egg cartons, empty", Allergen.Eggs)]
    public void Are_found_in_goods_that_hide_them(string name, Allergen allergen) => Assert.Equal([allergen], In(name));

    [Theory]
    [InlineData("Buckwheat")]
    [InlineData("Buckwheat flour")]
    [InlineData("Cocoa butter")]
    [InlineData("Coconut milk")]
    [InlineData("Eggplant")]
    [InlineData("Nutmeg")]
    [InlineData("Butternut squash")]
    [InlineData("Cream of tartar")]
    [InlineData("Rye flour")]
    [InlineData("Oat milk")]
    [InlineData("Water chestnuts")]
    [InlineData("Butter beans")]
    [InlineData("Wing nuts")]
    [InlineData("Bread knife and board")]
    [InlineData("Loaf tin, 2 lb")]
    [InlineData("Cheesecloth")]
    [InlineData("Crab apples")]
    [InlineData("Pie tins")]
    [InlineData("Cupcake liners")]
    [InlineData("Flowering milkweed")]
    public void Are_not_found_in_words_that_only_sound_like_them(string name) => Assert.Empty(In(name));

    // Common practice, no source.
    [Theory]
    [InlineData("Gingerbread", Allergen.Wheat)]
    [InlineData("Corn bread", Allergen.Wheat)]
    [InlineData("Cornbread mix", Allergen.Wheat)]
    [InlineData("Cookies", Allergen.Wheat)]
    [InlineData("Brownies", Allergen.Wheat)]
    [InlineData("Pie crusts", Allergen.Wheat)]
    [InlineData("Panko", Allergen.Wheat)]
    [InlineData("Ramen", Allergen.Wheat)]
    [InlineData("Shortbread", Allergen.Milk, Allergen.Wheat)]
    [InlineData("Pizza", Allergen.Milk, Allergen.Wheat)]
    [InlineData("Cheesecake", Allergen.Milk, Allergen.Eggs, Allergen.Wheat)]
    [InlineData("Cupcakes", Allergen.Milk, Allergen.Eggs, Allergen.Wheat)]
    [InlineData("Pesto", Allergen.Milk, Allergen.TreeNuts)]
    [InlineData("Buttercream", Allergen.Milk)]
    [InlineData("Crème fraîche", Allergen.Milk)]
    [InlineData("Creme for the filling", Allergen.Milk)]
    public void Are_found_in_what_is_baked_and_mixed(string name, params Allergen[] allergens) => Assert.Equal(allergens.Order(), In(name).Order());

    // Plurals as English spells them; couscous, arachis and their like have none.
    [Fact]
    public void Are_found_in_the_plural_of_every_word_of_the_table() => Assert.All(AllergenWords.All, w =>
        Assert.Contains(w.Allergen, In(Plural(w.Words))));

    private static string Plural(string words) =>
        words.EndsWith("us", StringComparison.Ordinal) || words.EndsWith("is", StringComparison.Ordinal) ? words
        : words.EndsWith("loaf", StringComparison.Ordinal) ? words[..^1] + "ves"
        : words[^1] == 'y' && !"aeiou".Contains(words[^2], StringComparison.Ordinal) ? words[..^1] + "ies"
        : words.EndsWith('s') || words.EndsWith('x') || words.EndsWith("sh", StringComparison.Ordinal) || words.EndsWith("ch", StringComparison.Ordinal) ? words + "es"
        : words + "s";

    [Fact]
    public void Are_told_together_by_child_and_activity_and_not_by_its_title()
    {
        var robin = new CautionedLearner(Guid.NewGuid(), "Robin", 9, [Allergen.Wheat, Allergen.Sesame]);
        SupplyWarning Marked(params Allergen[] allergens) => Assert.Single(SupplyWarnings.OfGood([robin], ["Crumbs"], "Bake", [new Ingredient("Crumbs", allergens)]));
        var (one, other) = (Guid.NewGuid(), Guid.NewGuid());
        Assert.Equal([[Allergen.Wheat], [Allergen.Sesame]], SupplyWarnings.Together([(one, Marked(Allergen.Wheat)), (other, Marked(Allergen.Sesame))]).Select(w => w.Met.Met));
        Assert.Equal([Allergen.Wheat, Allergen.Sesame], Assert.Single(SupplyWarnings.Together([(one, Marked(Allergen.Wheat)), (one, Marked(Allergen.Sesame))])).Met.Met);
        Assert.Single(SupplyWarnings.Together([(one, Marked(Allergen.Wheat)), (other, Marked(Allergen.Wheat))]));
    }

    [Fact]
    public void Are_told_apart_in_peanuts_and_tree_nuts()
    {
        Assert.Equal([Allergen.Peanuts], In("Peanuts"));
        Assert.Equal([Allergen.TreeNuts, Allergen.Peanuts], In("Mixed nuts").Order());
    }

    [Fact]
    public void Are_named_with_child_good_and_activity()
    {
        var warning = Assert.Single(SupplyWarnings.OfGood([Dove, Teal], ["Semolina"], "Bake", []));
        Assert.Equal(("Dove", "Semolina", "Bake", "semolina"), (warning.Met.Learner.Name, warning.Met.Ingredient, warning.For, Assert.Single(warning.Because).Word));
        Assert.Equal([Allergen.Wheat], warning.Met.Met);
    }

    [Fact]
    public void Are_taken_from_what_the_activity_marks_as_well()
    {
        var dough = new Ingredient("Bread dough", [Allergen.Wheat, Allergen.Milk]);
        var warnings = SupplyWarnings.OfGood([Dove, Teal], ["Dough from yesterday"], "Shape", [new Ingredient("Dough from yesterday", [Allergen.Wheat, Allergen.Milk])]);
        Assert.Equal([("Dove", Allergen.Wheat), ("Teal", Allergen.Milk)], warnings.SelectMany(w => w.Met.Met.Select(m => (w.Met.Learner.Name, m))));
        Assert.Equal(2, SupplyWarnings.OfIngredients([Dove, Teal], ["Loaf tin"], "Shape", [dough]).Count);
        Assert.Empty(SupplyWarnings.OfIngredients([Dove, Teal], ["Bread dough"], "Shape", [dough]));
    }

    [Fact]
    public void Have_neighbours_of_which_one_asks_and_that_are_no_warnings()
    {
        Assert.Empty(SupplyWarnings.OfGood([Dove], ["Rye flour"], "Bake", []));
        Assert.Equal("rye", Assert.Single(SupplyWarnings.Asides([Dove], "Rye flour")).Word.Words);
        Assert.Empty(SupplyWarnings.Asides([Teal], "Rye flour"));
        Assert.Equal("coconut", Assert.Single(AllergenWords.BesideIn("Coconut milk", Allergen.TreeNuts)).Words);
    }
}
