namespace CoopLessons.Core.Sharing;

/// <summary>
/// A spot of a unit that may change by itself. The unit's own fields have no activity; an activity as a whole has no
/// field; a list has entries, known by what their list is known by; an entry may have parts. Names are those of the bundle,
/// with the exceptions of <see cref="Place"/>, <see cref="Waiting"/>, <see cref="Amount"/> and <see cref="Sequence"/>.
/// </summary>
/// <param name="Activity">The activity's code; null for the unit itself.</param>
/// <param name="Field">Such as <c>does</c> or <c>supplies</c>; null for the activity as a whole.</param>
/// <param name="Entry">Such as a subject's code, or a supply's name in capitals, a hazard's kind, “5-8” for ages; null where the field is no list, or for the list's order.</param>
/// <param name="Part">Such as <c>note</c>, or <see cref="Sequence"/>; null for the whole.</param>
public sealed record UnitSpot(string? Activity, string? Field, string? Entry = null, string? Part = null)
{
    /// <summary>An activity's week and its order in it: one field, since either means little without the other.</summary>
    public const string Place = "place";

    /// <summary>An activity's waiting minutes and what is waited for: one field, since a wait must say what for.</summary>
    public const string Waiting = "waiting";

    /// <summary>A supply's quantity, unit and for whom: one part, since 3 of one unit are not 3 of another.</summary>
    public const string Amount = "amount";

    /// <summary>The order of a list's entries.</summary>
    public const string Sequence = "sequence";

    /// <summary>The text is written by people and may be replaced by one's own.</summary>
    public bool IsText => Activity is null
        ? Field is "title" or "summary"
        : (Field, Part) is ("title" or "does", null) or (_, "does" or "note" or "caution");

    internal bool IsSequence => Part == Sequence && Entry is null;

    internal IReadOnlyList<string> Path
    {
        get
        {
            string?[] all = Activity is null ? [Field, Entry] : [UnitTree.Activities, Activity, Field, Entry, IsSequence ? null : Part];
            return [.. all.TakeWhile(s => s is not null).Select(s => s!)];
        }
    }

    internal static UnitSpot At(IReadOnlyList<string> path, bool sequence = false)
    {
        string? Step(int i) => i < path.Count ? path[i] : null;
        return Step(0) == UnitTree.Activities
            ? new UnitSpot(Step(1), Step(2), Step(3), sequence ? Sequence : Step(4))
            : new UnitSpot(null, Step(0), Step(1));
    }

    /// <summary>The other spot is this one or a part of it.</summary>
    internal bool Holds(UnitSpot other) => this == other || (!IsSequence && Path.Count < other.Path.Count + (other.IsSequence ? 1 : 0) && Path.SequenceEqual(other.Path.Take(Path.Count)));
}
