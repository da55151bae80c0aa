using CoopLessons.Data.OwnLists;

namespace CoopLessons.Web.Pages.Mine;

/// <summary>Where a thing on a child's list stands.</summary>
public enum ThingState
{
    /// <summary>It can be said to be done.</summary>
    Open,

    /// <summary>The child said so; a grown-up looks at it.</summary>
    Waiting,

    /// <summary>Not yet, with a word.</summary>
    NotYet,
    Done,

    /// <summary>It stands at its time and is not said.</summary>
    Fixed,
}

/// <summary>One thing on a child's list, in the words that this child reads.</summary>
/// <param name="SessionId">Null for what the child did besides, and for what stands at its time.</param>
/// <param name="At">Minutes after midnight; null without an hour.</param>
/// <param name="Lines">Beneath the title.</param>
/// <param name="With">Who is there, such as "with Iris"; empty where it is done alone.</param>
/// <param name="OnlyWithGrownUp">Something in it can hurt.</param>
/// <param name="Said">What the child said of it last.</param>
public sealed record Thing(
    Guid? SessionId, int? At, string Icon, string Title, IReadOnlyList<string> Lines, string With, bool OnlyWithGrownUp, ThingState State, ChildSaid? Said)
{
    /// <summary>Minted with the page: a second sending is known by it.</summary>
    public Guid NewId { get; } = Guid.CreateVersion7();
}
