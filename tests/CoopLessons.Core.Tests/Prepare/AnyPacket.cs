using CoopLessons.Core.Prepare.Printing;
using CsCheck;

namespace CoopLessons.Core.Tests.Prepare;

/// <summary>Packets by lot.</summary>
internal static class AnyPacket
{
    public static readonly Guid[] Learners = [.. Enumerable.Range(1, 4).Select(Id)];

    private static readonly Gen<PacketCopy> Copies =
        Gen.Select(Gen.Int[0, 4], Gen.Bool, (who, named) => who == 4 ? PacketCopy.Nobodys : new PacketCopy(Learners[who], named ? $"Bird {who}" : null));

    private static readonly Gen<PacketPiece> Pieces =
        Gen.Select(Gen.Int[1, 3], Gen.Int[1, 3], Gen.Int[1, 9], Gen.Bool, Gen.Int[1, 2], Copies.List[0, 5],
            (activity, file, pages, colour, up, copies) => new PacketPiece(Id(100 + activity), $"Sheet {file}", $"{file}", [.. Enumerable.Range(1, pages)], colour, up, copies));

    public static readonly Gen<List<PacketSection>> Sections =
        Gen.Select(Pieces.List[0, 4], Gen.Int[1, 3], (pieces, divider) => (pieces, divider)).List[0, 6]
            .Select(all => all.Select((s, i) => new PacketSection(Id(200 + i), s.pieces, s.divider)).ToList());

    private static Guid Id(int number) => new(number, 0, 0, new byte[8]);
}
