using CoopLessons.Core.Prepare.Printing;
using CsCheck;

namespace CoopLessons.Core.Tests.Prepare;

public class What_changed_since_the_last_packet
{
    private static readonly PacketCopy Wren = new(AnyPacket.Learners[0], "Wren");
    private static readonly PacketCopy Heron = new(AnyPacket.Learners[1], "Heron");
    private static readonly PacketPiece Sheet = new(Guid.Empty, "Record sheet", "a", [1, 2], Colour: false, Up: 1, [Wren, Heron]);
    private static readonly PacketPiece Map = Sheet with { Printable = "Map", FileHash = "b", Copies = [PacketCopy.Nobodys] };

    [Fact]
    public void Is_nothing_when_nothing_did() => Assert.Empty(Since([Section(Sheet, Map)], [Section(Sheet, Map)]));

    [Fact]
    public void Is_a_copy_for_a_child_who_joined_and_no_other()
    {
        var changed = Since([Section(Sheet with { Copies = [Wren] }), Section(Map)], [Section(Sheet), Section(Map)]);
        Assert.Equal([Heron], Assert.Single(Assert.Single(changed).Pieces).Copies);
    }

    [Theory]
    [InlineData("file")]
    [InlineData("pages")]
    [InlineData("colour")]
    [InlineData("two on a side")]
    [InlineData("name")]
    public void Is_every_copy_that_would_look_different(string what)
    {
        var now = what switch
        {
            "file" => Sheet with { FileHash = "c" },
            "pages" => Sheet with { Pages = [1] },
            "colour" => Sheet with { Colour = true },
            "two on a side" => Sheet with { Up = 2 },
            _ => Sheet with { Copies = [Wren with { Name = "Jenny" }, Heron with { Name = null }] },
        };
        Assert.Equal(2, Assert.Single(Assert.Single(Since([Section(Sheet, Map)], [Section(now, Map)])).Pieces).Copies.Count);
    }

    [Fact]
    public void Is_nothing_when_a_copy_is_no_longer_wanted() =>
        Assert.Empty(Since([Section(Sheet, Map)], [Section(Sheet with { Copies = [Heron] })]));

    [Fact]
    public void Is_the_copies_that_are_more_than_before() =>
        Assert.Equal(2, Since([Section(Map)], [Section(Map with { Copies = [.. Enumerable.Repeat(PacketCopy.Nobodys, 3)] })]).Single().Pieces.Single().Copies.Count);

    [Fact]
    public void Is_the_whole_packet_when_none_was_printed_and_nothing_once_it_was() => AnyPacket.Sections.Sample(sections =>
    {
        Assert.Equal(sections.Sum(Count), PacketChange.Since([], sections).Sum(Count));
        Assert.Empty(PacketChange.Since(PacketChange.Copies(sections), sections));
    });

    [Fact]
    public void Together_with_what_stayed_makes_the_packet() => Gen.Select(AnyPacket.Sections, AnyPacket.Sections).Sample((before, now) =>
    {
        var printed = PacketChange.Copies(before).ToDictionary(c => c with { Count = 1 }, c => c.Count);
        var wanted = PacketChange.Copies(now).ToDictionary(c => c with { Count = 1 }, c => c.Count);
        var missing = wanted.Sum(w => Math.Max(0, w.Value - printed.GetValueOrDefault(w.Key)));
        Assert.Equal(missing, PacketChange.Since(PacketChange.Copies(before), now).Sum(Count));
    });

    private static int Count(PacketSection section) => section.Pieces.Sum(p => p.Copies.Count);

    private static PacketSection Section(params PacketPiece[] pieces) => new(Guid.Empty, pieces);

    private static IReadOnlyList<PacketSection> Since(PacketSection[] before, PacketSection[] now) => PacketChange.Since(PacketChange.Copies(before), now);
}
