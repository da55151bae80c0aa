namespace CoopLessons.Core.Sharing;

/// <summary>Something that one version has otherwise than another: raw material for a sentence.</summary>
/// <param name="Title">The activity's title; null for the unit itself.</param>
/// <param name="Entry">The entry as it is written, such as a supply's name or the title of the activity that comes before; null where the spot has none.</param>
/// <param name="From">The value before, as JSON; null where there was none. An activity or an entry as a whole is an object.</param>
/// <param name="To">The value after, likewise.</param>
public sealed record UnitDifference(UnitSpot Spot, string? Title, string? Entry, string? From, string? To);

/// <summary>Why something is asked instead of brought in.</summary>
public enum CollisionKind
{
    /// <summary>Both sides changed it, each in another way; of a list, its order.</summary>
    ChangedOnBothSides,

    /// <summary>Mine changed it, theirs took it out.</summary>
    ChangedHereTakenOutThere,

    /// <summary>Mine took it out, theirs changed it.</summary>
    TakenOutHereChangedThere,

    /// <summary>Both sides added it under one code or name, with other content.</summary>
    AddedOnBothSides,

    /// <summary>Theirs took out a subject or an activity that mine still names.</summary>
    StillNamedHere,

    /// <summary>Theirs names a subject or an activity that mine has not.</summary>
    NotHere,

    /// <summary>Activities would come after themselves.</summary>
    Circle,

    /// <summary>An activity would stand in a week after the unit's last.</summary>
    AfterTheLastWeek,

    /// <summary>An activity would be left without a subject, or the unit without an activity.</summary>
    NothingWouldBeLeft,

    /// <summary>The list would become longer than a bundle holds.</summary>
    NoRoom,
}

/// <summary>Something to be decided. Until it is, the merged bundle has it as <paramref name="Mine"/>.</summary>
/// <param name="Title">The activity's title; null for the unit itself.</param>
/// <param name="Entry">The entry as it is written; null where the spot has none.</param>
/// <param name="Base">The value from which both sides went out, as JSON; null where there was none.</param>
/// <param name="Beside">The title of the activity that stands in the way; null where none does.</param>
public sealed record Collision(UnitSpot Spot, CollisionKind Kind, string? Title, string? Entry, string? Base, string? Mine, string? Theirs, string? Beside = null)
{
    /// <summary>What the next merge needs to know of it while it waits.</summary>
    public OpenCollision Open => new(Spot, Base);
}

/// <summary>A collision left for later: its spot, and the value from which both sides went out, as JSON (null for none).</summary>
public sealed record OpenCollision(UnitSpot Spot, string? Base);

/// <summary>What somebody chose.</summary>
public enum Choice { Mine, Theirs, OwnText }

/// <summary>A choice about one collision.</summary>
/// <param name="Text">For <see cref="Choice.OwnText"/> alone, at a spot that <see cref="UnitSpot.IsText"/>.</param>
public sealed record Decision(UnitSpot Spot, Choice Choice, string? Text = null);
