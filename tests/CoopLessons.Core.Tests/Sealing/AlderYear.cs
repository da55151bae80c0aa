using CoopLessons.Core.Hours;
using CoopLessons.Core.Prepare.Books;
using CoopLessons.Core.Sealing;
using CoopLessons.Core.Units;
using static CoopLessons.Core.Tests.AlderLog;

namespace CoopLessons.Core.Tests.Sealing;

/// <summary>Wren's year in small, as it is sealed.</summary>
internal static class AlderYear
{
    public static readonly DateTime Written = new(2026, 11, 3, 17, 4, 5, DateTimeKind.Utc);

    public static readonly SealedHeading Heading = new("Alder", "Wren", "We count the minutes.", 60, [new RecordPathway("Missouri", "Home school", "The whole year.", [new RecordFigure(0, "Hours", "1:35 hours", "1,000 hours", "not met", "RSMo 167.012")])]);

    public static readonly LoggedEntry Bread = Entry(1, Tuesday, 40, split: [2.Of(Arithmetic), 1.Of(Science)], touches: [Art.Id], start: At(9)) with { What = "Baked bread" };

    public static readonly LoggedEntry Reading = Entry(2, Tuesday.AddDays(1), 55, AlderLog.Reading, place: Place.Elsewhere) with { What = "Read by the brook" };

    public static YearFacts Facts(params LoggedEntry[] log) => new(
        "2026–27", WrensLedger(log), log.ToDictionary(e => e.Id, _ => new EntryInstants(null, Written)), new Dictionary<DateOnly, bool> { [Tuesday] = true },
        [new ReadingListLine("The Miller’s Year", "I. Alder", "", BookUse.Heard, Tuesday, null, false, "", "")],
        [new RecordPiece(new string('a', 64), Tuesday, "My loaf")]);

    public static YearRecord Record(params LoggedEntry[] log) => Facts(log).Record(Heading);

    public static YearRecord Record() => Record(Bread, Reading);
}
