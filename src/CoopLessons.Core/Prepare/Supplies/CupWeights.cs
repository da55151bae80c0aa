namespace CoopLessons.Core.Prepare.Supplies;

/// <summary>What a US cup of a good weighs.</summary>
/// <param name="Grams">Above zero.</param>
/// <param name="Source">Where the weight was published, and how it was seen.</param>
public sealed record CupWeight(decimal Grams, string Source);

/// <summary>
/// Weights of a US cup of common goods, from the household measures of the U.S. Department of Agriculture (FoodData Central,
/// SR Legacy). They are how such a cup usually turns out: how flour is filled in changes it by a tenth and more, and a weight
/// of the family's own goes before them. Names that stand here only are joined; a flour that nobody named is not guessed at.
/// </summary>
public static class CupWeights
{
    private static readonly Dictionary<string, CupWeight> ByKey = Table();

    /// <summary>The weight of a cup of a good; null for one that the table does not name.</summary>
    /// <param name="key">As <see cref="GoodName.Key"/> makes it.</param>
    public static CupWeight? Of(string key) => ByKey.GetValueOrDefault(key);

    private static Dictionary<string, CupWeight> Table()
    {
        var table = new Dictionary<string, CupWeight>(StringComparer.Ordinal);
        // Seen in a copy of the data: NDB 20081, 1 cup = 125 g.
        Add(125, "USDA SR Legacy, NDB 20081, wheat flour, white, all-purpose: 1 cup = 125 g", "Flour", "Plain flour", "White flour", "Wheat flour", "Plain wheat flour", "White wheat flour", "All-purpose flour", "All-purpose wheat flour");
        AddFromMemory(120, "20080, wheat flour, whole-grain", "Whole-wheat flour", "Wholemeal flour", "Wholemeal wheat flour", "Whole-grain wheat flour");
        AddFromMemory(137, "20083, wheat flour, white, bread", "Bread flour", "Strong flour", "White bread flour");
        AddFromMemory(137, "20084, wheat flour, white, cake", "Cake flour");
        AddFromMemory(102, "20064, rye flour, medium", "Rye flour");
        AddFromMemory(200, "19335, sugars, granulated", "Sugar", "White sugar", "Granulated sugar");
        AddFromMemory(220, "19334, sugars, brown, packed", "Brown sugar");
        AddFromMemory(292, "02047, salt, table", "Salt", "Fine salt", "Table salt");
        AddFromMemory(81, "20038, oats, regular or quick, dry", "Oats", "Rolled oats", "Oat flakes");
        AddFromMemory(185, "20444, rice, white, long-grain, raw", "Rice", "White rice", "Long-grain rice");
        AddFromMemory(192, "20071, wheat, hard red spring", "Wheat berries", "Whole wheat berries", "Wheat grains");
        AddFromMemory(227, "01145, butter, without salt", "Butter", "Soft butter", "Unsalted butter");
        AddFromMemory(216, "04053, oil, olive", "Olive oil");
        AddFromMemory(218, "04506, oil, sunflower", "Oil", "Vegetable oil", "Cooking oil", "Sunflower oil");
        AddFromMemory(244, "01077, milk, whole", "Milk", "Whole milk", "Cow's milk");
        AddFromMemory(339, "19296, honey", "Honey");
        AddFromMemory(192, "18375, yeast, active, dry (12 g a tablespoon)", "Dried yeast", "Dry yeast", "Yeast", "Active dry yeast");
        AddFromMemory(128, "20027, cornstarch", "Cornstarch");
        AddFromMemory(237, "14429, water, tap", "Water", "Tap water");
        return table;

        void Add(decimal grams, string source, params string[] names)
        {
            foreach (var name in names)
                table.Add(GoodName.Key(name), new CupWeight(grams, source));
        }

        void AddFromMemory(decimal grams, string what, params string[] names) => Add(grams, $"USDA SR Legacy, NDB {what}: 1 cup = {grams:0} g (from memory)", names);
    }
}
