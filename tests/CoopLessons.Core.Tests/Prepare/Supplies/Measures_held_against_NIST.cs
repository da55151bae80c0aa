using CoopLessons.Core.Prepare.Supplies;
using CsCheck;

namespace CoopLessons.Core.Tests.Prepare.Supplies;

public class Measures_held_against_NIST
{
    // NIST SP 811 (2008), Appendix B.8, "to convert from … to …, multiply by", seven digits as printed there; the metric
    // ones from its table 5; both from memory. The library that repeats the table as https://rdrr.io/cran/NISTunits names the same rows.
    [Theory]
    [InlineData("cup", "ml", 2.365882E+02)]
    [InlineData("tbsp", "ml", 1.478676E+01)]
    [InlineData("tsp", "ml", 4.928922E+00)]
    [InlineData("oz", "g", 2.834952E+01)]
    [InlineData("lb", "kg", 4.535924E-01)]
    [InlineData("kg", "g", 1000)]
    [InlineData("l", "ml", 1000)]
    [InlineData("m", "cm", 100)]
    public void Convert_as_the_Guide_for_the_Use_of_the_SI_prints(string from, string to, double printed)
    {
        var factor = Measures.Find(from)!.To(Measures.Find(to)!, 1);
        var digits = 6 - (int)Math.Floor(Math.Log10(printed));
        Assert.Equal((decimal)printed, Math.Round(factor, digits));
    }

    // NIST Handbook 44, Appendix C, tables of U.S. units: liquid volume and avoirdupois mass (from memory).
    [Theory]
    [InlineData("tbsp", "tsp", 3)]
    [InlineData("cup", "tbsp", 16)]
    [InlineData("cup", "tsp", 48)]
    [InlineData("lb", "oz", 16)]
    public void Stand_to_each_other_as_Handbook_44_says(string from, string to, int times) =>
        Assert.Equal(times, Measures.Find(from)!.To(Measures.Find(to)!, 1));

    // NIST SP 430, Household Weights and Measures, table 1, as nist.gov/pml/owm/metric-household prints it: to the last digit shown.
    [Theory]
    [InlineData("tsp", "ml", 4.9, 1)]
    [InlineData("tbsp", "ml", 15, 0)]
    [InlineData("cup", "ml", 237, 0)]
    [InlineData("tsp", "cup", 1.0 / 48, 10)]
    [InlineData("tsp", "tbsp", 1.0 / 3, 10)]
    [InlineData("tbsp", "cup", 1.0 / 16, 10)]
    public void Convert_as_the_card_for_the_kitchen_prints(string from, string to, double printed, int digits) =>
        Assert.Equal(Math.Round((decimal)printed, digits), Math.Round(Measures.Find(from)!.To(Measures.Find(to)!, 1), digits));

    // NIST Handbook 44, Appendix C (from memory): 1 gallon is 231 cubic inches; an inch is 2.54 cm, a pound 453.592 37 g, both exactly.
    [Fact]
    public void Are_exact_to_the_last_digit_where_they_are_defined()
    {
        Assert.Equal(231m * 2.54m * 2.54m * 2.54m / 16, Measures.UsCup.Size);
        Assert.Equal(453.59237m, Measures.PoundAvoirdupois.Size);
        Assert.Equal(28.349523125m, Measures.Ounce.Size);
    }

    [Fact]
    public void Come_back_from_any_measure_of_their_dimension() =>
        Gen.Select(Kitchen.Quantities, Kitchen.OneOf([.. Measures.All]), Kitchen.OneOf([.. Measures.All]))
            .Where(t => t.Item2.Dimension == t.Item3.Dimension)
            .Sample((quantity, from, to) => Math.Abs(to.To(from, from.To(to, quantity)) - quantity) <= quantity * 1e-20m);

    [Fact]
    public void Come_back_from_weight_to_volume_by_the_weight_of_a_cup() =>
        Gen.Select(Kitchen.Quantities, Gen.Int[20, 400]).Sample((quantity, grams) =>
            Math.Abs(new Amount(new Amount(quantity, Measures.UsCup).In(Measures.Gram, grams)!.Value, Measures.Gram).In(Measures.UsCup, grams)!.Value - quantity) <= quantity * 1e-20m);

    [Fact]
    public void Have_a_source_each_and_the_words_of_the_bundle()
    {
        Assert.All(Measures.All, m => Assert.NotEmpty(m.Source));
        Assert.Equal(13, Measures.All.Select(m => m.Word).Distinct().Count());
        Assert.Null(Measures.Find("gill"));
    }

    [Fact]
    public void Do_not_turn_into_what_measures_something_else()
    {
        Assert.Null(new Amount(1, Measures.UsCup).In(Measures.Gram, null));
        Assert.Null(new Amount(1, Measures.Piece).In(Measures.Gram, 125));
        Assert.Throws<ArgumentException>(() => Measures.UsCup.To(Measures.Gram, 1));
    }
}
