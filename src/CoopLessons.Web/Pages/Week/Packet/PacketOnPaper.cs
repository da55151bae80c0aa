using System.Security.Cryptography;
using System.Text.Json;
using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Data;
using CoopLessons.Data.Files;
using CoopLessons.Data.Prepare;
using CoopLessons.Data.Prepare.Printing;
using CoopLessons.Documents.Packets;
using CoopLessons.Documents.Placing;
using CoopLessons.Web.Files;
using CoopLessons.Web.Pages.Today;
using CoopLessons.Web.Pages.Units;
using IsoWeek = CoopLessons.Core.Calendar.Week;

namespace CoopLessons.Web.Pages.Packet;

/// <summary>A week's packet as it will lie on paper, with what is told of it before it is printed.</summary>
/// <param name="Sections">Those alone that print something, each with as many divider sides as it takes.</param>
/// <param name="Dividers">One a section.</param>
public sealed record PacketOnPaper(WeekPacket Packet, IReadOnlyList<PacketSection> Sections, IReadOnlyList<Divider> Dividers, PacketPlan Plan)
{
    /// <summary>The week's packet without what is not on the shelf any more, which is told as missing.</summary>
    public static async Task<WeekPacket> LoadAsync(AppDb db, FileShelf shelf, IsoWeek week, CancellationToken ct)
    {
        var packet = await WeekPacket.LoadAsync(db, await ReadyWeek.LoadAsync(db, week, ct), ct);
        var held = await shelf.HeldForPrintAsync(db, ct);
        return packet.WithFiles(held.Contains);
    }

    /// <param name="changed">What is not on paper yet alone.</param>
    public static PacketOnPaper Of(WeekPacket packet, bool changed, string family, DateOnly today)
    {
        var sections = (changed ? packet.Changed : packet.Sections).Where(s => s.Pieces.Any(p => p.Copies.Count > 0)).ToList();
        var dividers = sections.ConvertAll(s => PacketWords.DividerOf(s, packet, family, today));
        sections = [.. sections.Select((s, i) => s with { DividerSides = DividerPaper.Sides(dividers[i], packet.Habits.Paper) })];
        return new PacketOnPaper(packet, sections, dividers, PacketPlan.Of(sections, packet.Habits.BothSides));
    }

    public int Cents => Packet.Habits.Prices.CentsFor(Plan);

    /// <summary>What a section takes by itself; a packet's sheets are those of its sections.</summary>
    public PacketPlan PlanOf(PacketSection section) => PacketPlan.Of([section], Packet.Habits.BothSides);

    /// <summary>Names the whole packet by its copies, so that a page that was opened before something changed is recognised.</summary>
    public static string PrintOf(WeekPacket packet) =>
        Convert.ToHexStringLower(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes(PacketChange.Copies(packet.Sections)))[..8]);

    /// <summary>What is printed from a file, in words: <c>“Record sheet” and “Outline map”</c>.</summary>
    public string PrintedFrom(string hash) =>
        UnitWords.Joined(Packet.Parts.SelectMany(p => p.Entries).Where(e => e.File.Hash == hash).Select(e => $"“{e.Source.Printable}”").Distinct());

    /// <summary>The files that the packet is printed from, each once.</summary>
    public IEnumerable<StoredFile> Files => Packet.Parts.SelectMany(p => p.Entries).Select(e => e.File).DistinctBy(f => f.Hash);

    /// <param name="paths">Where each of <see cref="Files"/> lies, by its hash; one that is gone meanwhile has none.</param>
    public PacketPapers Papers(IReadOnlyDictionary<string, string> paths, string family, DateOnly today) => new(
        $"Packet for the week of {Packet.Week.Week.Monday.InWords(today)}", family, today, Packet.Habits.Paper, Plan, Dividers,
        Files.ToDictionary(f => f.Hash, f => new PageSource(paths.GetValueOrDefault(f.Hash, f.Hash), UploadWords.Taken(f.Kind))));
}
