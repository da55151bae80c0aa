namespace CoopLessons.Core.Credits;

/// <summary>Where a course stands on a transcript, in the order in which one lists them.</summary>
public enum CourseArea
{
    English,
    Mathematics,
    Science,
    SocialStudies,
    Language,
    Arts,
    HealthAndMovement,
    Other,
}

/// <summary>How far a course goes. Only the weighted average knows a difference.</summary>
public enum CourseLevel
{
    Usual,
    Honors,
    College,
}

/// <summary>What a credit rests on; printed with it.</summary>
public enum CreditBasis
{
    /// <summary>Hours of study, as the log has them.</summary>
    Hours,

    /// <summary>The parent found the content mastered.</summary>
    Mastery,

    /// <summary>A book or a course of lessons was finished.</summary>
    FinishedWork,

    /// <summary>A college gave credit for it.</summary>
    CollegeCourse,
}
