namespace CoopLessons.Core.Requirements.Duties;

/// <summary>What a date stands for where the event itself is not what is counted from.</summary>
internal enum StandsFor
{
    TheEvent,

    /// <summary>The school year's first day, since instruction began in an earlier one.</summary>
    AnEarlierBeginning,

    /// <summary>The day on which the law's ages begin for the learner.</summary>
    TheAges,

    /// <summary>The day on which the learner came under the pathway, having been taught at home before.</summary>
    ComingUnderThePathway,
}

/// <summary>A day from which a due date is counted.</summary>
internal sealed record EventDay(LegalEvent Event, DateOnly On, StandsFor For = StandsFor.TheEvent);
