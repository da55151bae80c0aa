using System.Text.Json;
using CoopLessons.Core.Families;
using CoopLessons.Core.Sharing;
using CoopLessons.Core.Units;
using static CoopLessons.Core.Tests.Sharing.WhereWaterGoes;

namespace CoopLessons.Core.Tests.Sharing;

public class What_is_one_spot
{
    private static UnitBundle Weirs(Func<BundleActivity, BundleActivity> otherwise) => First.With("measure-weir", otherwise);

    private static UnitBundle Tales(params Book[] books) => First.With("mill-race-tale", a => a with { Books = books });

    private static BundleActivity Merged(string code, UnitBundle mine, UnitBundle theirs, UnitBundle? from = null)
    {
        var merge = UnitMerge.Of(from ?? First, mine, theirs);
        Assert.Empty(merge.Collisions);
        return merge.Merged.In(code);
    }

    [Fact]
    public void A_supply_keeps_its_amount_and_its_note_apart()
    {
        var merged = Merged("measure-weir",
            Weirs(a => a with { Supplies = [a.Supplies![0] with { Quantity = 3 }, a.Supplies[1]] }),
            Weirs(a => a with { Supplies = [a.Supplies![0] with { Note = "of wool" }, a.Supplies[1]] }));
        Assert.Equal(new Supply("string", 3, "m", Per.Pair, "of wool"), merged.Supplies![0]);
    }

    [Fact]
    public void An_amount_is_never_mixed_of_two()
    {
        var merge = UnitMerge.Of(First,
            Weirs(a => a with { Supplies = [a.Supplies![0] with { Quantity = 3 }, a.Supplies[1]] }),
            Weirs(a => a with { Supplies = [a.Supplies![0] with { Quantity = 200, Unit = "cm" }, a.Supplies[1]] }));
        Assert.Equal("“Measure the weir”: supply string, amount 2 m for each pair before, 3 m for each pair here, 200 cm for each pair there", SharingWords.Of(merge.Only()));
    }

    [Fact]
    public void A_quantity_keeps_every_digit_that_it_had()
    {
        const decimal Fine = 0.333333333333333333333333m;
        var merged = Merged("measure-weir", Weirs(a => a with { Supplies = [a.Supplies![0] with { Quantity = Fine }, a.Supplies[1]] }), First with { Title = "Water" });
        Assert.Equal(Fine, merged.Supplies![0].Quantity);
    }

    [Fact]
    public void A_name_in_capitals_is_the_same_name()
    {
        var merged = Merged("measure-weir",
            Weirs(a => a with { Supplies = [a.Supplies![0] with { Name = "String" }, a.Supplies[1]] }),
            Weirs(a => a with { Supplies = [a.Supplies![0] with { Quantity = 5 }, a.Supplies[1]] }));
        Assert.Equal(new Supply("String", 5, "m", Per.Pair), merged.Supplies![0]);
    }

    [Fact]
    public void Two_lines_of_one_name_are_two()
    {
        Supply[] two = [new("string", 1, "m", Per.Family, "red"), new("string", 2, "m", Per.Family, "blue")];
        var from = Weirs(a => a with { Supplies = two });
        var merged = Merged("measure-weir", Weirs(a => a with { Supplies = [two[0], two[1] with { Quantity = 9 }] }), Weirs(a => a with { Supplies = [two[0] with { Quantity = 8 }, two[1]] }), from);
        Assert.Equal([8m, 9m], merged.Supplies!.Select(s => s.Quantity));
    }

    [Fact]
    public void A_book_is_one_by_its_ISBN_or_its_title()
    {
        Book race = new("The Mill Race", BookUse.ReadAlone, Isbn: "9780000000002");
        var corrected = Merged("mill-race-tale", Tales(race with { Note = "Ours has pictures." }), Tales(race with { Title = "The Mill Race, Told Anew" }), Tales(race));
        Assert.Equal([race with { Title = "The Mill Race, Told Anew", Note = "Ours has pictures." }], corrected.Books);

        var numbered = Merged("mill-race-tale", Tales(new Book("The Mill Race", BookUse.Heard)), Tales(race));
        Assert.Equal([race with { Use = BookUse.Heard }], numbered.Books);
    }

    [Fact]
    public void Allergens_are_kept_together_from_both_sides()
    {
        static UnitBundle Paste(params Allergen[] all) => First.With("mill-wheel", a => a with { Ingredients = [new("flour paste", all)] });
        Assert.Equal([Allergen.Milk, Allergen.Eggs, Allergen.Wheat], Merged("mill-wheel", Paste(Allergen.Wheat, Allergen.Milk), Paste(Allergen.Wheat, Allergen.Eggs)).Ingredients![0].Allergens.Order());
    }

    [Fact]
    public void What_both_added_stands_where_each_has_it()
    {
        Supply chalk = new("chalk", 1, "piece", Per.Family), board = new("board", 1, "piece", Per.Family), rope = new("rope", 1, "m", Per.Family);
        var merged = Merged("measure-weir", Weirs(a => a with { Supplies = [chalk, .. a.Supplies!] }), Weirs(a => a with { Supplies = [board, a.Supplies![0], rope, a.Supplies[1]] }));
        Assert.Equal(["board", "chalk", "string", "rope", "stick"], merged.Supplies!.Select(s => s.Name));
    }

    [Fact]
    public void An_order_that_both_changed_is_asked_once()
    {
        Supply pen = new("pen", 1, "piece", Per.Learner);
        static UnitBundle Of(params Supply[] all) => Weirs(a => a with { Supplies = all });
        var (line, stick) = (Weir.Supplies![0], Weir.Supplies[1]);
        var merge = UnitMerge.Of(Of(line, stick, pen), Of(stick, line, pen), Of(line, pen, stick));
        Assert.Equal("“Measure the weir”: supplies stand in one order here and in another there", SharingWords.Of(merge.Only()));
        Assert.Equal([stick, line, pen], merge.Merged.In("measure-weir").Supplies);
        Assert.Equal([line, pen, stick], merge.Decided(new Decision(merge.Only().Spot, Choice.Theirs)).Merged.In("measure-weir").Supplies);
    }

    [Fact]
    public void A_wait_goes_with_what_is_waited_for()
    {
        var merge = UnitMerge.Of(First,
            First.With("paint-river", a => a with { WaitingMinutes = 0, WaitingFor = null }),
            First.With("paint-river", a => a with { WaitingMinutes = 60 }));
        Assert.Equal("“Paint the river”: wait 30 min (the paper dries) before, none here, 60 min (the paper dries) there", SharingWords.Of(merge.Only()));
        Assert.Empty(BundleRules.Faults(merge.Merged));
    }

    [Fact]
    public void What_was_taken_out_on_one_side_and_changed_on_the_other_is_asked_whole()
    {
        var (gone, other) = (First.Without("paint-river"), First.With("paint-river", a => a with { Title = "Paint the mill pond" }));
        var here = UnitMerge.Of(First, gone, other);
        Assert.Equal("“Paint the mill pond” was taken out here and changed there", SharingWords.Of(here.Only()));
        Same(other, here.Decided(new Decision(here.Only().Spot, Choice.Theirs)).Merged);

        var there = UnitMerge.Of(First, other, gone);
        Assert.Equal("“Paint the mill pond” was changed here and taken out there", SharingWords.Of(there.Only()));
        Same(gone, there.Decided(new Decision(there.Only().Spot, Choice.Theirs)).Merged);
    }

    [Fact]
    public void What_both_added_under_one_code_is_asked_whole()
    {
        var boat = Painting with { Code = "boat", Title = "A paper boat" };
        var merge = UnitMerge.Of(First, First.Plus(boat), First.Plus(boat with { HandsOnMinutes = 20 }));
        Assert.Equal("“A paper boat” was added here and there, each in another way", SharingWords.Of(merge.Only()));
        Assert.Empty(UnitMerge.Of(First, First.Plus(boat), First.Plus(boat)).Collisions);
    }

    [Fact]
    public void What_is_left_for_later_can_be_written_down_and_read_again() => CsCheck.Check.Sample(AnyUnit.Versions, v =>
    {
        var open = UnitMerge.Of(v.Base, v.Mine, v.Theirs).Open;
        Assert.Equal(open, JsonSerializer.Deserialize<OpenCollision[]>(JsonSerializer.Serialize(open)));
    }, iter: 100);
}
