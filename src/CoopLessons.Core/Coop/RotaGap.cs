namespace CoopLessons.Core.Coop;

/// <summary>The rule that leaves a place empty.</summary>
public enum GapRule
{
    /// <summary>Nobody may have the role.</summary>
    NobodyMay,

    /// <summary>All who may have it are away.</summary>
    AllAway,

    /// <summary>Roles with more places together than there are adults for them.</summary>
    TooFew,

    /// <summary>A room stays shut for want of unrelated adults.</summary>
    Unrelated,

    /// <summary>A room stays shut for want of adults for its children.</summary>
    AdultsForChildren,

    /// <summary>The rules of several rooms together.</summary>
    Rooms,
}

/// <summary>What would help.</summary>
public enum GapHelpKind { OneMoreAdult, ComesAfterAll, OpenTheRole, SmallerClass }

/// <summary>Something that would fill more places at the meeting.</summary>
/// <param name="About">The adult who would come, the role, or the room; null for adults from outside.</param>
/// <param name="Left">Places that would still be empty at the meeting.</param>
public sealed record GapHelp(GapHelpKind Kind, Guid? About, int Count, int Left, string Sentence);

/// <summary>Places of one role at one meeting that nobody has.</summary>
/// <param name="Places">1 and more.</param>
/// <param name="Sentence">Which rule stands in the way, with names.</param>
/// <param name="Helps">Each tried, and each by itself; empty where none of them fills a place.</param>
public sealed record RotaGap(DateOnly Meeting, Guid Role, int Places, GapRule Rule, string Sentence, IReadOnlyList<GapHelp> Helps);
