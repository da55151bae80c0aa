using CoopLessons.Core.Units;

namespace CoopLessons.Core.Prepare.Supplies;

/// <summary>One supply of one activity, or something that the family put on the list itself.</summary>
/// <param name="ActivityId">Null where it was put on the list by hand.</param>
/// <param name="For">Title of the activity, or empty.</param>
/// <param name="Day">The day on which it is needed; null while the activity has none.</param>
/// <param name="Learners">How many do the activity; at least 0.</param>
/// <param name="IsIngredient">Whether it stands among what is eaten, touched or breathed.</param>
public sealed record SupplyAsk(Guid? ActivityId, string For, DateOnly? Day, Supply Supply, int Learners, bool IsIngredient)
{
    /// <summary>What it stands in for, where the family uses something else.</summary>
    public string? InsteadOf { get; init; }

    /// <summary>Others have done the activity already: what serves all was used by them, and the learners are those still to come.</summary>
    public bool IsLaterSitting { get; init; }

    /// <summary>The measure of the supply; pieces for a word that nobody knows.</summary>
    public Measure Measure => Measures.Find(Supply.Unit) ?? Measures.Piece;

    /// <summary>How many times the supply is taken: by learner, by two learners begun, once for the family or the group.</summary>
    public int Times => IsLaterSitting && Supply.Per is not (Per.Learner or Per.Pair) ? 0 : TimesFor(Supply.Per, Learners);

    /// <summary>How much of it is needed, in its own measure.</summary>
    public Amount Amount => new(Supply.Quantity * Times, Measure);

    /// <param name="learners">At least 0.</param>
    public static int TimesFor(Per per, int learners)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(learners);
        return per switch { Per.Learner => learners, Per.Pair => (learners + 1) / 2, _ => 1 };
    }

    /// <summary>
    /// Whether it is gone afterwards unless the family says otherwise: what is weighed, poured, cut from a roll or written
    /// on; pieces only where they are eaten. A rolling pin is there next week too (common practice, no source).
    /// </summary>
    public bool IsUsedUp => Measure.Dimension != Dimension.Count || IsIngredient;
}
