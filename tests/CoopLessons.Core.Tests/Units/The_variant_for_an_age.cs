using CoopLessons.Core.Units;
using CsCheck;

namespace CoopLessons.Core.Tests.Units;

public class The_variant_for_an_age
{
    private static readonly LevelVariant Young = new(4, 6, "Draws the mill.");
    private static readonly LevelVariant Old = new(9, 12, "Labels the gears.");

    [Theory]
    [InlineData(4)]
    [InlineData(6)]
    public void Is_the_one_whose_ages_hold_it_ends_included(int age) => Assert.Same(Young, new[] { Old, Young }.For(age));

    [Theory]
    [InlineData(2, "Draws the mill.")]
    [InlineData(7, "Draws the mill.")]
    [InlineData(8, "Labels the gears.")]
    [InlineData(15, "Labels the gears.")]
    public void Is_the_nearest_where_none_holds_it(int age, string does) => Assert.Equal(does, new[] { Old, Young }.For(age)!.Does);

    [Fact]
    public void Is_the_younger_where_two_are_as_near()
    {
        LevelVariant[] variants = [Old with { FromAge = 10 }, Young];

        Assert.Same(Young, variants.For(8));
    }

    [Fact]
    public void Is_the_younger_where_two_hold_it()
    {
        LevelVariant[] variants = [new(7, 12, "Labels the gears."), new(5, 9, "Draws the mill.")];

        Assert.Equal("Draws the mill.", variants.For(8)!.Does);
    }

    [Fact]
    public void Is_none_where_there_are_none() => Assert.Null(Array.Empty<LevelVariant>().For(8));

    [Fact]
    public void Is_never_farther_off_than_another()
    {
        var variants = Gen.Select(Gen.Int[1, 18], Gen.Int[0, 6], (from, more) => new LevelVariant(from, from + more, "Reads.")).Array[1, 6];

        static int Away(LevelVariant v, int age) => Enumerable.Range(v.FromAge, v.ToAge - v.FromAge + 1).Min(a => Math.Abs(a - age));

        Gen.Select(variants, Gen.Int[0, 20]).Sample((all, age) => Away(all.For(age)!, age) == all.Min(v => Away(v, age)));
    }
}
