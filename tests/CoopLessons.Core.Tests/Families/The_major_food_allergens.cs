using CoopLessons.Core.Families;

namespace CoopLessons.Core.Tests.Families;

public class The_major_food_allergens
{
    // 21 U.S.C. § 321(qq): milk, eggs, fish, crustacean shellfish, tree nuts, peanuts, wheat, soybeans; and sesame since
    // the FASTER Act of 2021. Listed at https://www.dailyintakeblog.com/2021/04/sesame-allergen-labeling-becomes-law/.
    [Fact]
    public void Are_the_nine_of_the_statute() =>
        Assert.Equal(
            ["Milk", "Eggs", "Fish", "Shellfish", "TreeNuts", "Peanuts", "Wheat", "Soybeans", "Sesame"],
            Enum.GetNames<Allergen>());
}
