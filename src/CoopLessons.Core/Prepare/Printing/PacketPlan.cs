namespace CoopLessons.Core.Prepare.Printing;

/// <summary>The chosen pages of one printable, in as many copies as are asked for.</summary>
/// <param name="FileHash">Names the file by its content.</param>
/// <param name="Pages">Numbers of the file's pages from 1, in the order of print; at least one.</param>
/// <param name="Up">Pages on a side: 1 or 2.</param>
public sealed record PacketPiece(
    Guid ActivityId, string Printable, string FileHash, IReadOnlyList<int> Pages, bool Colour, int Up, IReadOnlyList<PacketCopy> Copies)
{
    /// <summary>Sides of one copy.</summary>
    public int SidesEach => (Pages.Count + Up - 1) / Up;
}

/// <summary>What a subject prints for the week.</summary>
/// <param name="DividerSides">How many sides its divider takes: 1, or more where much is to be said on it.</param>
public sealed record PacketSection(Guid SubjectId, IReadOnlyList<PacketPiece> Pieces, int DividerSides = 1);

/// <summary>One side of a sheet.</summary>
public abstract record PacketSide
{
    /// <summary>A side of a section's divider.</summary>
    /// <param name="Section">The section's place in the packet, from 0.</param>
    /// <param name="Number">From 0.</param>
    public sealed record Divider(int Section, int Number) : PacketSide;

    /// <summary>One or two pages of a copy.</summary>
    public sealed record Copy(int Section, PacketPiece Piece, PacketCopy For, IReadOnlyList<int> Pages) : PacketSide;

    /// <summary>The back of a sheet on which nothing is printed, since what comes next begins on a fresh one.</summary>
    public sealed record Blank : PacketSide;
}

/// <summary>
/// A packet side by side, as it comes out of the printer. Printed on both sides, each section and each copy begins on a
/// fresh sheet, since two children cannot share one: blank backs are added. Printed on one side, a side is a sheet.
/// </summary>
public sealed record PacketPlan
{
    /// <summary>Most sides of a packet: two reams of paper printed on both. Nobody prints more for a week, and a longer file is not made.</summary>
    public const int MostSides = 2_000;

    private PacketPlan(IReadOnlyList<PacketSide> sides, IReadOnlyList<int> starts, bool bothSides) => (Sides, Starts, BothSides) = (sides, starts, bothSides);

    public IReadOnlyList<PacketSide> Sides { get; }

    /// <summary>The side on which each section begins, counted from 1 as page numbers are.</summary>
    public IReadOnlyList<int> Starts { get; }

    public bool BothSides { get; }

    public int Sheets => BothSides ? (Sides.Count + 1) / 2 : Sides.Count;

    /// <summary>Whether it has more than <see cref="MostSides"/>.</summary>
    public bool IsTooLong => Sides.Count > MostSides;

    public int BlankSides => Sides.Count(s => s is PacketSide.Blank);

    public int ColourSides => Sides.Count(s => s is PacketSide.Copy { Piece.Colour: true });

    /// <summary>Sides with grey or black on them, dividers among them.</summary>
    public int GreySides => Sides.Count - BlankSides - ColourSides;

    /// <param name="sections">In the family's order; one without copies is passed over.</param>
    public static PacketPlan Of(IEnumerable<PacketSection> sections, bool bothSides)
    {
        var sides = new List<PacketSide>();
        var starts = new List<int>();
        foreach (var section in sections.Where(s => s.Pieces.Any(p => p.Copies.Count > 0)))
        {
            FreshSheet(sides, bothSides);
            var number = starts.Count;
            starts.Add(sides.Count + 1);
            sides.AddRange(Enumerable.Range(0, section.DividerSides).Select(n => new PacketSide.Divider(number, n)));
            foreach (var (piece, copy) in section.Pieces.SelectMany(p => p.Copies.Select(c => (p, c))))
            {
                FreshSheet(sides, bothSides);
                sides.AddRange(piece.Pages.Chunk(piece.Up).Select(pages => new PacketSide.Copy(number, piece, copy, pages)));
            }
        }

        return new PacketPlan(sides, starts, bothSides);
    }

    private static void FreshSheet(List<PacketSide> sides, bool bothSides)
    {
        if (bothSides && sides.Count % 2 == 1)
            sides.Add(new PacketSide.Blank());
    }
}
