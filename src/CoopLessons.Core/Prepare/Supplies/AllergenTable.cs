using CoopLessons.Core.Families;

namespace CoopLessons.Core.Prepare.Supplies;

/// <summary>The words behind <see cref="AllergenWords"/>, each group with its source.</summary>
internal static class AllergenTable
{
    private const string Law = "21 U.S.C. § 321(qq)(1), the food itself or an example of the statute";
    private const string FdaTable1 = "FDA, Questions and Answers Regarding Food Allergens, Edition 5 (January 2025), table 1";
    private const string FdaWheat = "FDA, Questions and Answers Regarding Food Allergens: wheat is every species of Triticum, triticale included (from memory)";
    private const string Minnesota = "Minnesota Department of Agriculture, Food Ingredients That May Cause Allergies";
    private const string Nebraska = "Nebraska Department of Agriculture, Allergens";
    private const string WheatCard = "Food allergy quick guide on wheat, Great Neck Public Schools";
    private const string Practice = "common practice, no source";
    private const string Memory = "from memory";
    private const string FdaGone = "FDA, Questions and Answers Regarding Food Allergens, Edition 5 (January 2025), which takes it from the tree nuts";

    public static IReadOnlyList<AllergenWord> Words { get; } =
    [
        .. Of(Allergen.Milk, Law, "milk"),
        .. Of(Allergen.Milk, Minnesota, "butter", "buttermilk", "butterfat", "butter oil", "casein", "caseinate", "cheese", "cream", "half and half", "custard", "ghee", "lactalbumin", "lactose", "lactulose", "lactoglobulin", "lactoferrin", "pudding", "tagatose", "whey", "yogurt"),
        .. Of(Allergen.Milk, Nebraska, "curd", "nougat", "milkfat"),
        .. Of(Allergen.Milk, Practice, "yoghurt", "dairy", "kefir", "quark", "ricotta", "mozzarella", "cheddar", "parmesan", "paneer", "mascarpone", "ice cream", "milk chocolate"),
        .. Of(Allergen.Milk, Practice, "buttercream", "crème", "creme", "cheesecake", "cheeseburger", "milkshake", "butterscotch", "brie", "feta", "gouda", "halloumi", "pesto", "pizza", "lasagna", "lasagne", "quiche", "brioche", "shortbread", "cupcake", "gelato"),
        .. Of(Allergen.Eggs, Law, "egg"),
        .. Of(Allergen.Eggs, Minnesota, "albumin", "albumen", "ovalbumin", "eggnog", "globulin", "ovoglobulin", "livetin", "vitellin", "ovovitellin", "lysozyme", "mayonnaise", "meringue", "ovomucoid", "ovomucin", "ovotransferrin"),
        .. Of(Allergen.Eggs, Practice, "eggshell", "yolk", "egg wash", "egg noodle", "aioli", "mayo", "omelet", "omelette", "frittata", "quiche", "brioche", "cheesecake", "cupcake", "macaron", "macaroon"),
        .. Of(Allergen.Fish, Law, "fish", "bass", "flounder", "cod"),
        .. Of(Allergen.Fish, Practice, "anchovy", "salmon", "tuna", "trout", "herring", "sardine", "haddock", "halibut", "mackerel", "tilapia", "pollock", "dover sole", "lemon sole", "catfish", "fish sauce", "fish oil", "fish cake", "isinglass", "surimi"),
        .. Of(Allergen.Shellfish, Law, "shellfish", "crab", "lobster", "shrimp", "crustacean"),
        .. Of(Allergen.Shellfish, Practice, "prawn", "crayfish", "crawfish", "krill", "langoustine", "scampi"),
        .. Of(Allergen.TreeNuts, Law, "almond", "pecan", "walnut", "tree nut"),
        .. Of(Allergen.TreeNuts, FdaTable1, "brazil nut", "cashew", "filbert", "hazelnut", "heartnut", "macadamia", "pine nut", "pinon nut", "pistachio"),
        .. Of(Allergen.TreeNuts, Practice, "marzipan", "almond paste", "almond milk", "almond butter", "almond flour", "cashew butter", "hazelnut butter", "praline", "gianduja", "frangipane", "amaretto", "mixed nut", "nut butter", "nut flour", "nut", "pesto", "macaron"),
        .. Of(Allergen.Peanuts, Law, "peanut"),
        .. Of(Allergen.Peanuts, Nebraska, "peanut butter", "peanut flour", "peanut oil", "beer nut", "monkey nut", "ground nut", "mixed nut"),
        .. Of(Allergen.Peanuts, Practice, "groundnut", "arachis", "goober", "nut butter", "nut"),
        .. Of(Allergen.Wheat, Law, "wheat"),
        .. Of(Allergen.Wheat, FdaWheat, "durum", "spelt", "semolina", "einkorn", "emmer", "kamut", "triticale", "club wheat"),
        .. Of(Allergen.Wheat, WheatCard, "bread crumb", "bulgur", "couscous", "cracker meal", "farina", "flour", "matzo", "matzoh", "matzah", "pasta", "seitan", "wheat gluten", "vital gluten", "wheatgrass"),
        .. Of(Allergen.Wheat, Practice, "bread", "breadcrumb", "loaf", "cracker", "farro", "graham", "noodle", "macaroni", "spaghetti", "pastry", "pretzel", "tortilla", "dough", "playdough", "sourdough", "gluten", "wheatmeal", "cake", "cookie", "biscuit", "muffin", "bagel", "bun", "pancake", "waffle", "doughnut"),
        .. Of(Allergen.Wheat, Practice, "gingerbread", "cornbread", "corn bread", "flatbread", "shortbread", "breadstick", "crispbread", "shortcake", "cupcake", "cheesecake", "brownie", "blondie", "donut", "pizza", "pie", "piecrust", "pie crust", "potpie", "panko", "ramen", "udon", "orzo", "lasagna", "lasagne", "ravioli", "gnocchi", "dumpling", "wonton", "crouton", "croissant", "brioche", "baguette", "quiche", "pita", "naan", "scone", "crumpet", "rusk", "crepe", "crêpe", "biscotti", "strudel", "filo", "phyllo", "cheeseburger"),
        .. Of(Allergen.Soybeans, Law, "soybean", "soy"),
        .. Of(Allergen.Soybeans, Practice, "soya", "edamame", "miso", "natto", "shoyu", "soy sauce", "soy milk", "soy flour", "tamari", "tempeh", "tofu", "bean curd", "textured vegetable protein"),
        .. Of(Allergen.Sesame, Law, "sesame"),
        .. Of(Allergen.Sesame, Practice, "tahini", "tahina", "halvah", "halva", "benne", "benne seed", "gingelly", "gomasio", "hummus", "sesame oil", "za atar", "zaatar"),
    ];

    /// <summary>
    /// Phrases with a word of the table in them that mean something else. Whole words never match parts of words, so that
    /// buckwheat, eggplant, nutmeg, coconut, butternut and chestnut need no row. Common practice, no source, but for those
    /// that the plain sense of the words gives.
    /// </summary>
    public static IReadOnlyList<string> NearMisses { get; } =
    [
        // Butter, cream, milk and cheese that no animal gave, and things that touch none.
        "cocoa butter", "shea butter", "apple butter", "butter bean", "butter lettuce", "butter knife", "butter dish", "butter muslin",
        "cream of tartar", "cream of coconut", "coconut cream", "coconut creme", "shaving cream", "sun cream", "hand cream", "cold cream",
        "coconut milk", "oat milk", "rice milk", "hemp milk", "milk of magnesia",
        "cheese cloth", "cheese grater", "dairy free", "milk free",
        // Vessels and tools; not the cartons and jugs in which eggs and milk were, for something of them may cling to those.
        "egg cup", "egg timer", "egg free", "fish tank", "fish hook", "fish net", "fish bowl",
        "bread knife", "bread board", "bread tin", "bread bin", "bread pan", "loaf tin", "loaf pan", "pasta machine", "flour sifter", "flour sieve", "cake tin", "cake pan", "cake stand", "cookie cutter", "cookie sheet", "muffin tin", "biscuit cutter",
        "pie tin", "pie pan", "pie plate", "pie dish", "pie weight", "pie chart", "pizza stone", "pizza cutter", "pizza wheel", "pizza pan", "cupcake tin", "cupcake pan", "cupcake liner",
        "crab apple", "crab grass", "bass drum", "bass clef", "bass guitar",
        "nut and bolt", "nut bolt", "wing nut", "hex nut", "nut cracker", "nut free", "tree nut free", "peanut free", "soy free", "sesame free",
        // Nuts that the guidance of January 2025 takes from the list; see Beside.
        "water chestnut", "beech nut", "cola nut", "kola nut", "ginkgo nut", "hickory nut", "palm nut", "pili nut", "shea nut", "lichee nut", "tiger nut",
        // Flours and noodles of other plants, and dough that is no food.
        "rice flour", "corn flour", "rye flour", "oat flour", "barley flour", "buckwheat flour", "chickpea flour", "gram flour", "potato flour", "tapioca flour",
        "coconut flour", "millet flour", "sorghum flour", "teff flour", "quinoa flour", "cassava flour", "amaranth flour", "lentil flour", "arrowroot flour",
        "gluten free flour", "gluten free bread", "gluten free pasta", "gluten free", "wheat free", "rice noodle", "rice cracker", "rice pasta", "glass noodle", "corn tortilla",
        "sugar loaf", "rice cake",
    ];

    public static IReadOnlyList<BesideAllergen> Beside { get; } =
    [
        .. BesideOf(Allergen.TreeNuts, "is a fruit that FDA’s guidance of January 2025 no longer counts among the tree nuts", FdaGone, "coconut"),
        .. BesideOf(Allergen.TreeNuts, "is a nut that FDA’s guidance of January 2025 no longer counts among the major allergens", FdaGone, "chestnut", "beech nut", "butternut", "chinquapin", "cola nut", "kola nut", "ginkgo nut", "hickory nut", "palm nut", "pili nut", "shea nut"),
        .. BesideOf(Allergen.Wheat, "holds gluten, which by itself is none of the nine", Practice, "rye", "barley", "malt"),
        .. BesideOf(Allergen.Wheat, "is often milled or packed beside wheat", Practice, "oat", "oatmeal"),
        .. BesideOf(Allergen.Shellfish, "is a mollusk; the law’s shellfish are crustaceans alone", Law, "clam", "mussel", "oyster", "scallop", "squid"),
        .. BesideOf(Allergen.Soybeans, "may be made from soy", Memory, "vegetable protein", "lecithin"),
        .. BesideOf(Allergen.Wheat, "is mostly brewed with wheat", Memory, "soy sauce"),
        .. BesideOf(Allergen.Wheat, "may still be made with wheat starch, of which the label must tell", "21 CFR 101.91 (from memory)", "gluten free"),
    ];

    private static IEnumerable<AllergenWord> Of(Allergen allergen, string source, params string[] words) => words.Select(w => new AllergenWord(w, allergen, source));

    private static IEnumerable<BesideAllergen> BesideOf(Allergen allergen, string why, string source, params string[] words) => words.Select(w => new BesideAllergen(w, allergen, why, source));
}
