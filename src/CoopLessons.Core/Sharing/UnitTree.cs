namespace CoopLessons.Core.Sharing;

/// <summary>A bundle as a tree of what may change by itself: values at its ends, entries by their keys in between.</summary>
internal abstract record UnitTree
{
    public const string Activities = "activities";
    public const string Subjects = "subjects";
    public const string After = "after";

    /// <summary>Nothing on either side, or the same; in lists whose order counts, in the same order.</summary>
    public static bool Same(UnitTree? a, UnitTree? b) => (a, b) switch
    {
        (null, null) => true,
        (Leaf x, Leaf y) => x.Json == y.Json,
        (Branch x, Branch y) => x.Count == y.Count && x.Keys.All(k => Same(x[k], y[k])) && (!x.Ordered || x.Keys.SequenceEqual(y.Keys)),
        _ => false,
    };

    public UnitTree? Get(params ReadOnlySpan<string> path)
    {
        UnitTree? at = this;
        foreach (var key in path)
            at = (at as Branch)?[key];
        return at;
    }

    public UnitTree? Get(UnitSpot spot)
    {
        var found = Get([.. spot.Path]);
        return spot.IsSequence && found is Branch list ? new Leaf(list.Sequence) : found;
    }

    /// <summary>This tree with another value at a spot, or without one; unchanged where what would hold the spot is not there.</summary>
    public UnitTree With(UnitSpot spot, UnitTree? value) =>
        spot.IsSequence
            ? Get([.. spot.Path]) is Branch list && value is Leaf keys ? With([.. spot.Path], list.InSequence(keys.Json)) : this
            : With([.. spot.Path], value);

    private UnitTree With(ReadOnlySpan<string> path, UnitTree? value)
    {
        if (path.Length == 0)
            return value ?? this;
        if (this is not Branch branch || (path.Length > 1 && branch[path[0]] is null))
            return this;
        return branch.With(path[0], path.Length == 1 ? value : branch[path[0]]!.With(path[1..], value));
    }
}

/// <summary>A value, as canonical JSON.</summary>
internal sealed record Leaf(string Json) : UnitTree;
