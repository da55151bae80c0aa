using CoopLessons.Core.Families;
using CoopLessons.Core.Units;

namespace CoopLessons.Core.Schedule;

/// <summary>
/// Whether small parts need a thought: 16 CFR 1501.2(a) and 1501.5 keep articles with small parts away from children under
/// three years of age. A family's own judgement goes further than any such line.
/// </summary>
public static class SmallPartsInTheRoom
{
    /// <summary>16 CFR part 1501: "children under 3 years of age".</summary>
    public const int UnderAge = 3;

    /// <summary>
    /// What is kept out of a small child's reach in the same way: besides small parts, button cells and small magnets, which
    /// are swallowed as easily and do more harm (common practice, no source).
    /// </summary>
    public static IReadOnlyList<HazardKind> Kinds { get; } = [HazardKind.SmallParts, HazardKind.ButtonCells, HazardKind.Magnets];

    public static bool AreIn(IEnumerable<Hazard> hazards) => hazards.Any(h => Kinds.Contains(h.Kind));

    /// <summary>Whether a child with one of these birth dates is under three on the date; one who is not born yet is not in the room.</summary>
    public static bool Matter(IEnumerable<DateOnly> birthDates, DateOnly date) =>
        birthDates.Any(born => born <= date && Age.On(date, born) < UnderAge);
}
