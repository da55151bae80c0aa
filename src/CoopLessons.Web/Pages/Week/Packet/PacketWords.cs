using System.Globalization;
using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Data.Families;
using CoopLessons.Data.Prepare;
using CoopLessons.Data.Prepare.Printing;
using CoopLessons.Documents.Packets;
using CoopLessons.Web.Pages.Today;
using CoopLessons.Web.Pages.Units;

namespace CoopLessons.Web.Pages.Packet;

/// <summary>The words in which a packet is spoken of, on the page and on its dividers.</summary>
public static class PacketWords
{
    /// <summary><c>14 sheets</c>.</summary>
    public static string Sheets(int count) => UnitWords.Count(count, "sheet", "sheets");

    /// <summary><c>26 sides: 17 grey, 1 in colour, 8 left blank</c>.</summary>
    public static string Sides(PacketPlan plan)
    {
        var parts = new List<string>();
        if (plan.GreySides > 0)
            parts.Add(string.Create(CultureInfo.InvariantCulture, $"{plan.GreySides:#,0} grey"));
        if (plan.ColourSides > 0)
            parts.Add(string.Create(CultureInfo.InvariantCulture, $"{plan.ColourSides:#,0} in colour"));
        if (plan.BlankSides > 0)
            parts.Add(string.Create(CultureInfo.InvariantCulture, $"{plan.BlankSides:#,0} left blank"));
        return $"{UnitWords.Count(plan.Sides.Count, "side", "sides")}: {string.Join(", ", parts)}";
    }

    /// <summary>Why a packet is not made; null where it is.</summary>
    public static string? TooLong(PacketPlan plan) => !plan.IsTooLong ? null
        : string.Create(CultureInfo.InvariantCulture, $"This would be {plan.Sides.Count:#,0} sides; {PacketPlan.MostSides:#,0} are the most that go into one packet. Print fewer copies or fewer pages of what is longest.");

    /// <summary>Cents as dollars: <c>$0.33</c>.</summary>
    public static string Money(int cents) => string.Create(CultureInfo.InvariantCulture, $"${cents / 100:#,0}.{cents % 100:00}");

    /// <summary>A price in tenths of a cent, as it is typed: <c>2.5</c>.</summary>
    public static string Cents(int tenths) => (tenths / 10m).ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>A piece of print: <c>2 pages each for Heron and Wren, two on a side</c>.</summary>
    public static string Of(PacketPiece piece, IReadOnlyList<Learner> learners)
    {
        var named = piece.Copies.Where(c => c.LearnerId is not null).Select(c => learners.FirstOrDefault(l => l.Id == c.LearnerId)?.Name ?? c.Name ?? "").ToList();
        var pages = UnitWords.Count(piece.Pages.Count, "page", "pages");
        var whom = named.Count > 0 ? $"{pages}{(named.Count > 1 ? " each" : "")} for {UnitWords.Joined(named)}"
            : piece.Copies.Count == 1 ? $"{pages} for the family"
            : $"{pages}, {piece.Copies.Count} copies";
        return whom + (piece.Up == 2 ? ", two on a side" : "") + (piece.Colour ? ", in colour" : "");
    }

    /// <summary>What a section's divider says.</summary>
    /// <param name="section">Whose copies are printed.</param>
    public static Divider DividerOf(PacketSection section, WeekPacket packet, string family, DateOnly today)
    {
        var subject = packet.Parts.First(p => p.Subject.Id == section.SubjectId).Subject;
        var activities = section.Pieces.Where(p => p.Copies.Count > 0).GroupBy(p => p.ActivityId).Select(g => ActivityOf(
            packet.Week.Activities.First(a => a.Activity.Id == g.Key), [.. g], packet.Week, today));
        return new Divider(subject.Name, $"Packet for the week of {packet.Week.Week.Monday.InWords(today)} · {family}", [.. activities], CautionWords.Judgement);
    }

    private static DividerActivity ActivityOf(ReadyActivity ready, IReadOnlyList<PacketPiece> pieces, ReadyWeek week, DateOnly today) => new(
        ready.Activity.Title,
        ready.Date is { } date ? date.InWords(today) : "No day yet",
        $"for {UnitWords.Joined(ready.Learners.Select(l => l.Name))}",
        [.. pieces.Select(p => $"{p.Printable}, {Of(p, week.Learners)}")],
        [.. CautionsOf(ready, week)]);

    /// <summary>What meets a child first, then what is written of hazards; and where nothing is written, that this means nothing.</summary>
    private static IEnumerable<DividerCaution> CautionsOf(ReadyActivity ready, ReadyWeek week)
    {
        var details = ready.Activity.Details;
        foreach (var told in CautionWords.Told(week.CautionsOf(ready)))
            yield return new DividerCaution("Look", told);

        foreach (var hazard in details.Hazards)
            yield return new DividerCaution(Capital(UnitWords.Of(hazard.Kind)), hazard.Caution);
        if (details.Hazards.Count == 0)
            yield return new DividerCaution("Hazards", "None are written down for this. That does not mean that there are none.");
        foreach (var learner in week.Learners.Where(l => l.AllergyNote.Length > 0 && details.Ingredients.Count > 0))
            yield return new DividerCaution("Look", $"{learner.Name}, in your own words: {learner.AllergyNote}. Nothing here is compared with that.");
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
