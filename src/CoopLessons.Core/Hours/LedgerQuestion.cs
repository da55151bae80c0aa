using System.Globalization;

namespace CoopLessons.Core.Hours;

/// <summary>Something in the log that a reader would ask about. Never trimmed, never corrected: the parent answers.</summary>
public abstract record LedgerQuestion(DateOnly Date)
{
    /// <summary>The question in one plain sentence without the learner's name.</summary>
    public abstract string Sentence { get; }
}

/// <summary>More than sixteen hours on one day.</summary>
public sealed record LongDay(DateOnly Date, Minutes Minutes) : LedgerQuestion(Date)
{
    public override string Sentence => string.Create(CultureInfo.InvariantCulture, $"{Date:d MMMM yyyy} holds {Minutes.Clock} hours. Is that right?");
}

/// <summary>Two entries of one learner that share time.</summary>
/// <param name="Date">The date of the entry that begins later, which may be the day after the other's.</param>
/// <param name="From">Minutes after that date's midnight, inclusive.</param>
/// <param name="To">Minutes after that date's midnight, exclusive; above 1440 where both entries run past the next.</param>
public sealed record CountedTwice(DateOnly Date, int From, int To, Guid FirstEntryId, Guid SecondEntryId) : LedgerQuestion(Date)
{
    public override string Sentence => string.Create(CultureInfo.InvariantCulture,
        $"{Date:d MMMM yyyy}: {new Minutes(From).Clock}–{new Minutes(To).Clock} is counted twice. Is that right?");
}
