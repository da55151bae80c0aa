using CoopLessons.Core.Prepare.Printing;
using CsCheck;

namespace CoopLessons.Core.Tests.Prepare;

public class A_packet_side_by_side
{
    private static readonly PacketCopy Wren = new(AnyPacket.Learners[0], "Wren");
    private static readonly PacketCopy Heron = new(AnyPacket.Learners[1], "Heron");

    [Fact]
    public void Begins_each_section_and_each_copy_on_a_fresh_sheet()
    {
        var plan = PacketPlan.Of([Section(Piece(1, Wren, Heron)), Section(Piece(3, Wren))], bothSides: true);

        Assert.Equal("D.|C.|C.|D.|CC|C", Drawn(plan));
        Assert.Equal([1, 7], plan.Starts);
        Assert.Equal(6, plan.Sheets);
        Assert.Equal((7, 0, 4), (plan.GreySides, plan.ColourSides, plan.BlankSides));
    }

    [Fact]
    public void Has_no_blank_sides_when_it_is_printed_on_one_side()
    {
        var plan = PacketPlan.Of([Section(Piece(1, Wren, Heron)), Section(Piece(3, Wren))], bothSides: false);

        Assert.Equal("DCCDCCC", Drawn(plan).Replace("|", "", StringComparison.Ordinal));
        Assert.Equal(7, plan.Sheets);
    }

    [Fact]
    public void Puts_two_pages_on_a_side_when_asked_to_and_an_odd_one_alone()
    {
        var plan = PacketPlan.Of([Section(Piece(5, Wren) with { Up = 2 })], bothSides: true);

        Assert.Equal("D.|CC|C", Drawn(plan));
        Assert.Equal([[1, 2], [3, 4], [5]], plan.Sides.OfType<PacketSide.Copy>().Select(c => c.Pages.ToArray()));
    }

    [Fact]
    public void Is_empty_where_nobody_gets_anything()
    {
        var plan = PacketPlan.Of([Section(Piece(2))], bothSides: true);

        Assert.Empty(plan.Sides);
        Assert.Equal(0, plan.Sheets);
        Assert.Equal(0, PrintPrices.SharedLaser.CentsFor(plan));
    }

    // By hand: 7 grey sides at 2.5 c, 1 in colour at 9.5 c, 7 sheets at 1 c = 17.5 + 9.5 + 7 = 34 c.
    [Fact]
    public void Costs_what_is_printed_and_the_paper_and_blanks_cost_no_ink()
    {
        var plan = PacketPlan.Of([Section(Piece(1, Wren, Heron)), Section(Piece(3, Wren), Piece(1, Heron) with { Colour = true })], bothSides: true);

        Assert.Equal((7, 1, 7), (plan.GreySides, plan.ColourSides, plan.Sheets));
        Assert.Equal(34, PrintPrices.SharedLaser.CentsFor(plan));
        Assert.Equal(1, new PrintPrices(0, 0, 1).CentsFor(plan));
    }

    // A divider and its blank back, and for each copy 300 pages on both sides of 150 sheets.
    [Theory]
    [InlineData(6, 1802, false)]
    [InlineData(7, 2102, true)]
    public void Is_too_long_from_two_thousand_sides_on(int copies, int sides, bool tooLong)
    {
        var plan = PacketPlan.Of([Section(Piece(300, [.. Enumerable.Repeat(Wren, copies)]))], bothSides: true);
        Assert.Equal((sides, tooLong), (plan.Sides.Count, plan.IsTooLong));
    }

    [Fact]
    public void Keeps_its_laws_whatever_is_chosen() => AnyPacket.Sections.Sample(sections =>
    {
        var plan = PacketPlan.Of(sections, bothSides: true);
        var printed = sections.Where(s => s.Pieces.Any(p => p.Copies.Count > 0)).ToList();

        Assert.Equal(printed.Count, plan.Starts.Count);
        Assert.All(plan.Starts, start => Assert.Equal(1, start % 2));
        Assert.All(plan.Starts, start => Assert.IsType<PacketSide.Divider>(plan.Sides[start - 1]));

        // Reckoned anew, section by section: whole sheets for the divider and for each copy.
        var sheets = printed.Sum(s => Half(s.DividerSides) + s.Pieces.Sum(p => p.Copies.Count * Half((p.Pages.Count + p.Up - 1) / p.Up)));
        Assert.Equal(sheets, plan.Sheets);
        Assert.Equal(plan.Sides.Count, plan.GreySides + plan.ColourSides + plan.BlankSides);

        // No sheet holds what belongs to two copies, and no blank side is a front.
        foreach (var sheet in plan.Sides.Chunk(2))
        {
            Assert.IsNotType<PacketSide.Blank>(sheet[0]);
            if (sheet is [PacketSide.Copy front, PacketSide.Copy back])
                Assert.True(ReferenceEquals(front.Piece, back.Piece) && ReferenceEquals(front.For, back.For));
        }
    });

    [Fact]
    public void Prints_every_page_of_every_copy_in_order() => Gen.Select(AnyPacket.Sections, Gen.Bool).Sample((sections, bothSides) =>
    {
        var plan = PacketPlan.Of(sections, bothSides);
        var wanted = sections.SelectMany(s => s.Pieces).SelectMany(p => p.Copies.SelectMany(c => p.Pages.Select(page => (p.Printable, c.LearnerId, page))));
        Assert.Equal(wanted, plan.Sides.OfType<PacketSide.Copy>().SelectMany(s => s.Pages.Select(page => (s.Piece.Printable, s.For.LearnerId, page))));
        if (!bothSides)
            Assert.Equal(0, plan.BlankSides);
    });

    private static int Half(int sides) => (sides + 1) / 2;

    private static PacketSection Section(params PacketPiece[] pieces) => new(Guid.Empty, pieces);

    private static PacketPiece Piece(int pages, params PacketCopy[] copies) =>
        new(Guid.Empty, "Record sheet", "a", [.. Enumerable.Range(1, pages)], Colour: false, Up: 1, copies);

    private static string Drawn(PacketPlan plan) => string.Join('|', plan.Sides.Chunk(2).Select(sheet => string.Concat(sheet.Select(s => s switch
    {
        PacketSide.Divider => 'D',
        PacketSide.Copy => 'C',
        _ => '.',
    }))));
}
