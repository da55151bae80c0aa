using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Requirements.Standing;

/// <summary>One learner's log as it is held against a pathway.</summary>
/// <param name="Ledger">Counted over at least <see cref="LegalWindow.Reach"/>: days outside are not seen.</param>
/// <param name="Marks">Days marked by hand; true for a school day.</param>
/// <param name="FamilyMinimum">Minutes from which a day counts where the law sets no length.</param>
/// <param name="School">The family's school year with its breaks.</param>
/// <param name="AsOf">Today in the family's own time zone.</param>
public sealed record StandingQuestion(
    LearnerFacts Learner,
    HoursLedger Ledger,
    IReadOnlyDictionary<DateOnly, bool> Marks,
    Minutes FamilyMinimum,
    TeachingCalendar School,
    DateOnly AsOf);
