using CoopLessons.Core.Prepare.Supplies;

namespace CoopLessons.Core.Tests.Prepare.Supplies;

public class What_is_on_the_shelf
{
    private static readonly DateOnly Day = new(2026, 3, 9);

    private static DateTime At(int days, int hour) => Day.AddDays(days).ToDateTime(new TimeOnly(hour, 0), DateTimeKind.Utc);

    private static Counted Count(decimal grams, int days, int hour = 12) => new(Day.AddDays(days), At(days, hour), new Amount(grams, Measures.Gram));

    private static Bought Buy(decimal quantity, Measure measure, int days, int hour = 12) => new(Day.AddDays(days), At(days, hour), new Amount(quantity, measure));

    private static Used Use(decimal grams, int days) => new(Day.AddDays(days), new Amount(grams, Measures.Gram), "Bake");

    private static OnShelf Reckon(params ShelfEvent[] events) => ShelfReckoning.Of(events, Measures.Gram, 125);

    // By hand: 400 + 2,267.961 85 − 250 = 2,417.961 85.
    [Fact]
    public void Is_the_last_count_and_what_was_bought_less_what_was_used() =>
        Assert.Equal(2417.96185m, Reckon(Count(9, -3), Count(400, 0), Buy(5, Measures.PoundAvoirdupois, 1), Use(250, 2), Use(70, -1)).Quantity);

    [Fact]
    public void Takes_what_is_used_on_the_day_of_the_count_as_counted() => Assert.Equal(400, Reckon(Count(400, 0), Use(250, 0)).Quantity);

    [Fact]
    public void Promises_what_is_still_planned_on_the_day_of_the_count() =>
        Assert.Equal(150, Reckon(Count(400, 0), Use(250, 0) with { IsPromised = true }, Use(70, -1) with { IsPromised = true }).Quantity);

    [Fact]
    public void Adds_a_purchase_of_that_day_only_where_it_came_after_the_count()
    {
        Assert.Equal(400, Reckon(Count(400, 0, 15), Buy(100, Measures.Gram, 0, 10)).Quantity);
        Assert.Equal(500, Reckon(Count(400, 0, 15), Buy(100, Measures.Gram, 0, 16)).Quantity);
    }

    [Fact]
    public void Begins_empty_at_the_first_purchase_where_nobody_counted()
    {
        Assert.Equal(400, Reckon(Use(300, -1), Buy(500, Measures.Gram, 0), Use(100, 1)).Quantity);
        Assert.Equal(0, Reckon(Use(300, 0)).Quantity);
    }

    [Fact]
    public void Owes_nothing_to_what_is_bought_later() =>
        Assert.Equal(500, Reckon(Count(100, 0), Use(300, 1), Buy(500, Measures.Gram, 2)).Quantity);

    [Fact]
    public void Reads_cups_by_their_weight_and_leaves_out_what_it_cannot_read()
    {
        var shelf = Reckon(new Counted(Day, At(0, 9), new Amount(2, Measures.UsCup)), new Bought(Day.AddDays(1), At(1, 9), new Amount(3, Measures.Piece)));
        Assert.Equal(250, Math.Round(shelf.Quantity, 12));
        Assert.Single(shelf.Unread);
    }
}
