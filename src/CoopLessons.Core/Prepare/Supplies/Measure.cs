namespace CoopLessons.Core.Prepare.Supplies;

/// <summary>What is measured: only measures of one dimension turn into each other without knowing the good.</summary>
public enum Dimension { Count, Sheets, Mass, Volume, Length }

/// <summary>A unit of measure that the bundle's schema knows.</summary>
/// <param name="Word">As the bundle writes it.</param>
/// <param name="Size">In the smallest measure of its dimension: piece, sheet, gram, millilitre, centimetre. Exact.</param>
/// <param name="Source">Where the size is published.</param>
public sealed record Measure(string Word, Dimension Dimension, decimal Size, string Source)
{
    /// <summary>Pieces and sheets are bought and laid out whole.</summary>
    public bool IsWhole => Dimension is Dimension.Count or Dimension.Sheets;

    /// <summary>An amount of this measure in another one.</summary>
    /// <exception cref="ArgumentException">The other measures something else.</exception>
    public decimal To(Measure other, decimal quantity) =>
        other.Dimension != Dimension ? throw new ArgumentException($"{Word} does not turn into {other.Word}.", nameof(other))
        : other == this ? quantity : quantity * Size / other.Size;

    public override string ToString() => Word;
}

/// <summary>The measures of the bundle, each with its exact size.</summary>
public static class Measures
{
    private const string Metric = "SI prefixes (NIST SP 811, table 5)";

    // The pound is defined in grams and the gallon as 231 cubic inches of 2.54 cm; all that follows from them is exact.
    // The kitchen's cup is the half of a liquid pint, and not the 240 mL of food labels (21 CFR 101.9(b)(5)(viii)).
    private const string Pound = "NIST Handbook 44, Appendix C, Units of Mass: 1 pound avoirdupois = 453.592 37 grams, exactly";
    private const string Cup = "NIST Handbook 44, Appendix C: 1 gallon = 231 cubic inches = 3.785 411 784 liters, exactly; SP 811, B.8: cup (U.S.) = 2.365 882 E+02 mL";

    public static Measure Piece { get; } = new("piece", Dimension.Count, 1, "counted");
    public static Measure Sheet { get; } = new("sheet", Dimension.Sheets, 1, "counted");
    public static Measure Gram { get; } = new("g", Dimension.Mass, 1, Metric);
    public static Measure Kilogram { get; } = new("kg", Dimension.Mass, 1000, Metric);
    public static Measure Millilitre { get; } = new("ml", Dimension.Volume, 1, Metric);
    public static Measure Litre { get; } = new("l", Dimension.Volume, 1000, Metric);
    public static Measure UsCup { get; } = new("cup", Dimension.Volume, 236.588_236_5m, Cup);
    public static Measure Tablespoon { get; } = new("tbsp", Dimension.Volume, 14.786_764_781_25m, "NIST Handbook 44, Appendix C: 1 cup = 16 tablespoons; SP 811, B.8: tablespoon = 1.478 676 E+01 mL");
    public static Measure Teaspoon { get; } = new("tsp", Dimension.Volume, 4.928_921_593_75m, "NIST Handbook 44, Appendix C: 1 tablespoon = 3 teaspoons; SP 811, B.8: teaspoon = 4.928 922 E+00 mL");
    public static Measure Ounce { get; } = new("oz", Dimension.Mass, 28.349_523_125m, Pound + "; 16 ounces; SP 811, B.8: ounce (avoirdupois) = 2.834 952 E+01 g");
    public static Measure PoundAvoirdupois { get; } = new("lb", Dimension.Mass, 453.592_37m, Pound);
    public static Measure Centimetre { get; } = new("cm", Dimension.Length, 1, Metric);
    public static Measure Metre { get; } = new("m", Dimension.Length, 100, Metric);

    /// <summary>In the order in which forms offer them.</summary>
    public static IReadOnlyList<Measure> All { get; } =
        [Piece, Sheet, Gram, Kilogram, Millilitre, Litre, UsCup, Tablespoon, Teaspoon, Ounce, PoundAvoirdupois, Centimetre, Metre];

    /// <summary>The measure of a word of the bundle; null for any other word.</summary>
    public static Measure? Find(string? word) => All.FirstOrDefault(m => m.Word == word);

    /// <summary>The measure of a dimension in which amounts of different measures are told.</summary>
    public static Measure Plain(Dimension dimension) => dimension switch
    {
        Dimension.Count => Piece,
        Dimension.Sheets => Sheet,
        Dimension.Mass => Gram,
        Dimension.Volume => Millilitre,
        _ => Centimetre,
    };
}

/// <summary>So much of something.</summary>
/// <param name="Quantity">In the measure; zero or more.</param>
public readonly record struct Amount(decimal Quantity, Measure Measure)
{
    /// <summary>
    /// The same amount in another measure. Weight and volume turn into each other where a cup of the good has a weight.
    /// </summary>
    /// <param name="gramsPerCup">Grams in a US cup of the good; above zero, or null where nobody knows.</param>
    /// <returns>The quantity in <paramref name="measure"/>; null where the two do not turn into each other.</returns>
    public decimal? In(Measure measure, decimal? gramsPerCup)
    {
        if (Measure.Dimension == measure.Dimension)
            return Measure.To(measure, Quantity);
        return (Measure.Dimension, measure.Dimension, gramsPerCup) switch
        {
            (Dimension.Volume, Dimension.Mass, { } grams) => Quantity * Measure.Size * grams / Measures.UsCup.Size / measure.Size,
            (Dimension.Mass, Dimension.Volume, { } grams) => Quantity * Measure.Size * Measures.UsCup.Size / grams / measure.Size,
            _ => null,
        };
    }
}
