using CoopLessons.Core.Prepare.Supplies;

namespace CoopLessons.Core.Tests.Prepare.Supplies;

public class Names_of_one_good
{
    [Theory]
    [InlineData("Whole-wheat flour", "whole wheat flour")]
    [InlineData("Wheat berries", "Wheat berry")]
    [InlineData("Baking paper, tray size", "Baking paper")]
    [InlineData("Oats (rolled)", "oat")]
    [InlineData("Whole-wheat flour for the two feeds", "Whole-wheat flour")]
    [InlineData("Loaves", "loaf")]
    [InlineData("Oat cookies", "Oat cookie")]
    [InlineData("Brownies", "brownie")]
    [InlineData("Cherries", "cherry")]
    [InlineData("Drinking glasses", "drinking glass")]
    [InlineData("Paint brushes", "paint brush")]
    [InlineData("  Cow's   milk ", "Cows milk")]
    public void Have_one_key(string one, string other) => Assert.Equal(GoodName.Key(one), GoodName.Key(other));

    [Theory]
    [InlineData("Whole-wheat flour", "Plain wheat flour")]
    [InlineData("Plain wheat flour", "Wheat flour")]
    [InlineData("Bread flour", "Rye flour")]
    [InlineData("Brown sugar", "Sugar")]
    [InlineData("Glass", "Glas")]
    [InlineData("Salt", "Salt dough")]
    [InlineData("Baking soda", "Baking powder")]
    public void Differ_where_the_goods_do(string one, string other) => Assert.NotEqual(GoodName.Key(one), GoodName.Key(other));

    [Theory]
    [InlineData("(large)")]
    [InlineData(", red")]
    [InlineData("!")]
    public void Are_never_lost_in_their_notes(string name) => Assert.NotEmpty(GoodName.Proper(name));

    [Theory]
    [InlineData("Slices of bread, without preservatives", "Wheat bread", true)]
    [InlineData("Fine salt", "Salt", true)]
    [InlineData("Rolling pin", "Wheat flour", false)]
    public void Touch_the_ingredients_that_they_stand_for(string supply, string ingredient, bool touches) =>
        Assert.Equal(touches, GoodName.Touches(supply, ingredient));
}
