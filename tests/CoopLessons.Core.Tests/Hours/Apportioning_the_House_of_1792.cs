using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Tests.Hours;

/// <summary>Hamilton's method on the numbers for which it was made: the states' populations in the census of 1790.</summary>
public class Apportioning_the_House_of_1792
{
    // Populations as published at https://tutorsglobe.com/question/the-first-apportionment-of-the-house-of-representatives---52333663.aspx
    // (read; total 3,615,920). Virginia's, New York's and Delaware's stand alike at https://old.maa.org/node/117258 (read).
    // Seats of 120: "The Vetoed Apportionment Bill by Hamilton's Method", table 14.5,
    // http://digfir-published.macmillanusa.com/fapp10e/asset/ch14/supp_wins/examples/example_6.html (read).
    // Seats of the act of 14 April 1792, by another method: St. George Tucker's table,
    // https://www.constitution.org/1-Constitution/tb/t1d04056.htm (read; its total of 106 counts Tennessee's later seat).
    private static readonly (string State, int Population, int SeatsOf120, int SeatsOfTheAct)[] Published =
    [
        ("Connecticut", 236_841, 8, 7),
        ("Delaware", 55_540, 2, 1),
        ("Georgia", 70_835, 2, 2),
        ("Kentucky", 68_705, 2, 2),
        ("Maryland", 278_514, 9, 8),
        ("Massachusetts", 475_327, 16, 14),
        ("New Hampshire", 141_822, 5, 4),
        ("New Jersey", 179_570, 6, 5),
        ("New York", 331_589, 11, 10),
        ("North Carolina", 353_523, 12, 10),
        ("Pennsylvania", 432_879, 14, 13),
        ("Rhode Island", 68_446, 2, 2),
        ("South Carolina", 206_236, 7, 6),
        ("Vermont", 85_533, 3, 2),
        ("Virginia", 630_560, 21, 19),
    ];

    private static readonly int[] Populations = [.. Published.Select(p => p.Population)];

    [Fact]
    public void The_published_populations_add_up_to_the_published_total() => Assert.Equal(3_615_920, Populations.Sum());

    [Fact]
    public void A_house_of_120_comes_out_as_in_the_bill_that_was_vetoed() =>
        Assert.Equal(Published.Select(p => p.SeatsOf120), LargestRemainder.Divide(120, Populations));

    // M. J. Caulfield, "Apportioning Representatives in the United States Congress",
    // https://old.maa.org/press/periodicals/convergence/apportioning-representatives-in-the-united-states-congress-jeffersons-method-of-apportionment
    // (read): in a house of 105 Hamilton's method agrees with the act in thirteen of the fifteen states; Delaware would
    // have had the seat that went to Virginia.
    [Fact]
    public void A_house_of_105_differs_from_the_act_in_one_seat_that_is_Delawares_and_not_Virginias()
    {
        var expected = Published.Select(p => p.State switch
        {
            "Delaware" => p.SeatsOfTheAct + 1,
            "Virginia" => p.SeatsOfTheAct - 1,
            _ => p.SeatsOfTheAct,
        });

        Assert.Equal(expected, LargestRemainder.Divide(105, Populations));
    }

    // https://old.maa.org/node/117258 (read): Virginia's exact share of 105 is 18.31036 and Delaware's 1.61278.
    [Fact]
    public void Only_the_larger_remainder_is_rounded_up()
    {
        var seats = LargestRemainder.Divide(105, Populations);

        Assert.Equal(18, seats[Array.FindIndex(Published, p => p.State == "Virginia")]);
        Assert.Equal(2, seats[Array.FindIndex(Published, p => p.State == "Delaware")]);
    }
}
