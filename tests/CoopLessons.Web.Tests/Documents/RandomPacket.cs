using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Documents.Packets;
using SkiaSharp;

namespace CoopLessons.Web.Tests.Documents;

/// <summary>A packet by lot, from files of every kind; the same seed gives the same one.</summary>
internal sealed record RandomPacket(PacketPapers Papers)
{
    public static RandomPacket Of(int seed, Workbench bench)
    {
        var lot = new Random(seed);
        var files = new (string Hash, byte[] Bytes)[]
        {
            ("numbered", SamplePages.Numbered()), ("visit", SamplePages.Sheet("mill-visit")), ("map", SamplePages.Sheet("world-outline")),
            ("png", SamplePages.Picture(SKEncodedImageFormat.Png)), ("photo", SamplePages.Sideways()),
        };
        var kept = files.ToDictionary(f => f.Hash, f => SamplePages.Kept(bench, f.Hash, f.Bytes));
        var learners = new[] { "Heron", "Linnet", "Wren Ünë" }.Select(name => new PacketCopy(Guid.NewGuid(), name)).ToArray();
        var sections = new List<PacketSection>();
        for (var s = lot.Next(1, 5); s > 0; s--)
        {
            var pieces = new List<PacketPiece>();
            for (var p = lot.Next(1, 4); p > 0; p--)
            {
                var hash = files[lot.Next(files.Length)].Hash;
                var pages = Enumerable.Range(1, kept[hash].Pages).Where(_ => lot.Next(3) > 0).DefaultIfEmpty(1).ToList();
                PacketCopy[] copies = lot.Next(4) == 0 ? [.. Enumerable.Repeat(PacketCopy.Nobodys, lot.Next(1, 4))] : [.. learners.Take(lot.Next(1, 4)).Select(c => lot.Next(4) == 0 ? c with { Name = null } : c)];
                pieces.Add(new PacketPiece(Guid.NewGuid(), $"Sheet {hash}", hash, pages, lot.Next(4) == 0, lot.Next(1, 3), copies));
            }

            sections.Add(new PacketSection(Guid.NewGuid(), pieces));
        }

        var dividers = sections.Select((_, i) => Divider($"Subject {(char)('A' + i)}", lot.Next(1, 60))).ToList();
        var size = lot.Next(3) == 0 ? PaperSize.A4 : PaperSize.Letter;
        var plan = PacketPlan.Of(sections.Select((s, i) => s with { DividerSides = DividerPaper.Sides(dividers[i], size) }), lot.Next(4) > 0);
        return new RandomPacket(new PacketPapers("Packet for the week", "Alder", new DateOnly(2026, 11, 29), size, plan, dividers, kept.ToDictionary(k => k.Key, k => k.Value.Source)));
    }

    /// <param name="cautions">How many; many fill more than one side.</param>
    public static Divider Divider(string subject, int cautions) => new(
        subject, "Packet for the week of 30 November 2026 · Alder",
        [
            new DividerActivity(
                "Grind wheat by hand", "Monday 30 November", "for Heron, Linnet and Wren", ["Three ways to grind, record sheet, 1 page each for Heron, Linnet and Wren"],
                [.. Enumerable.Range(1, cautions).Select(i => new DividerCaution("Raw flour", $"Caution {i}: raw flour is not eaten or tasted, since it can carry germs that only cooking kills. Wash hands and the table afterwards."))]),
        ],
        "These cautions do not replace your own judgement.");

    public byte[] Write()
    {
        using var to = new MemoryStream();
        using var aside = new MemoryStream();
        PacketPdf.Write(Papers, to, aside, CancellationToken.None);
        return to.ToArray();
    }
}
