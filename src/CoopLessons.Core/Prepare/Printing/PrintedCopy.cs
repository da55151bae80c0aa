using System.Globalization;

namespace CoopLessons.Core.Prepare.Printing;

/// <summary>A copy that lies on paper, and everything by which another one would look different.</summary>
/// <param name="Pages">Numbers of the pages with commas.</param>
/// <param name="Count">How many of this very copy there are.</param>
public sealed record PrintedCopy(Guid ActivityId, string Printable, string FileHash, string Pages, bool Colour, int Up, Guid? LearnerId, string? Name, int Count);

/// <summary>What changed since a packet was printed.</summary>
public static class PacketChange
{
    /// <summary>Every copy of a packet, like ones counted together; in its order.</summary>
    public static IReadOnlyList<PrintedCopy> Copies(IEnumerable<PacketSection> sections) =>
        [.. sections.SelectMany(s => s.Pieces).SelectMany(p => p.Copies.Select(c => Of(p, c, 1))).GroupBy(c => c).Select(g => g.Key with { Count = g.Count() })];

    /// <summary>
    /// The sections with the copies alone that are not on paper yet: new ones, and those whose pages, file, look or name
    /// changed. A section without any is left out. A copy that is no longer wanted changes nothing, since it need not be
    /// printed.
    /// </summary>
    /// <param name="printed">The whole of the week's packet when it was last printed.</param>
    public static IReadOnlyList<PacketSection> Since(IReadOnlyList<PrintedCopy> printed, IEnumerable<PacketSection> sections)
    {
        var left = printed.GroupBy(c => c with { Count = 1 }).ToDictionary(g => g.Key, g => g.Sum(c => c.Count));
        var changed = new List<PacketSection>();
        foreach (var section in sections)
        {
            var pieces = section.Pieces.Select(p => p with { Copies = [.. p.Copies.Where(c => !Take(left, Of(p, c, 1)))] }).Where(p => p.Copies.Count > 0).ToList();
            if (pieces.Count > 0)
                changed.Add(section with { Pieces = pieces });
        }

        return changed;
    }

    private static bool Take(Dictionary<PrintedCopy, int> left, PrintedCopy copy)
    {
        if (!left.TryGetValue(copy, out var count) || count == 0)
            return false;
        left[copy] = count - 1;
        return true;
    }

    private static PrintedCopy Of(PacketPiece piece, PacketCopy copy, int count) => new(
        piece.ActivityId, piece.Printable, piece.FileHash, string.Join(',', piece.Pages.Select(p => p.ToString(CultureInfo.InvariantCulture))),
        piece.Colour, piece.Up, copy.LearnerId, copy.Name, count);
}
