using CoopLessons.Core.Families;
using CoopLessons.Core.Units;

namespace CoopLessons.Core.Schedule;

/// <summary>
/// Whether small parts need a thought: 16 CFR 1501.2(a) and 1501.5 keep articles with small parts away from children under
/// three years of age. A family's own judgement goes further than any such line.
/// </summary>
public static class SmallPartsInTheRoom
{
    /// <summary>Whether something small enough to swallow is among them; see <see cref="Cautions.Small"/>.</summary>
    public static bool AreIn(IEnumerable<Hazard> hazards) => hazards.Any(h => Cautions.Small.Contains(h.Kind));

    /// <summary>Whether a child with one of these birth dates is under three on the date; one who is not born yet is not in the room.</summary>
    public static bool Matter(IEnumerable<DateOnly> birthDates, DateOnly date) =>
        birthDates.Any(born => born <= date && Age.On(date, born) < Cautions.SmallPartsAge);
}
