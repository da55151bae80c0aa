using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Documents.Placing;

namespace CoopLessons.Documents.Packets;

/// <summary>Everything that a week's packet holds, in words and with the files it is made of.</summary>
/// <param name="Title">Of the document: <c>Packet for the week of 30 November 2026</c>.</param>
/// <param name="Plan">Side by side, reckoned with as many divider sides as <see cref="DividerPaper.Sides"/> says.</param>
/// <param name="Dividers">One for each section of the plan, in its order.</param>
/// <param name="Sources">The files by the hash that the plan's pieces name.</param>
public sealed record PacketPapers(
    string Title, string Family, DateOnly MadeOn, PaperSize Paper, PacketPlan Plan, IReadOnlyList<Divider> Dividers, IReadOnlyDictionary<string, PageSource> Sources);

/// <summary>What a section's divider says.</summary>
/// <param name="Subject">Stands largest.</param>
/// <param name="Week">A line above: which packet this is.</param>
/// <param name="Judgement">The sentence that stands under cautions; never that something is safe.</param>
public sealed record Divider(string Subject, string Week, IReadOnlyList<DividerActivity> Activities, string Judgement);

/// <summary>An activity on a divider.</summary>
/// <param name="When">Its day, or that it has none yet.</param>
/// <param name="Who">For whom it is.</param>
/// <param name="Prints">A line for each printable: what, how many pages, for whom.</param>
/// <param name="Cautions">The usual cautions; empty where none are written down.</param>
public sealed record DividerActivity(string Title, string When, string Who, IReadOnlyList<string> Prints, IReadOnlyList<DividerCaution> Cautions);

/// <param name="Lead">What it is about: <c>Raw flour</c>.</param>
public sealed record DividerCaution(string Lead, string Text);
