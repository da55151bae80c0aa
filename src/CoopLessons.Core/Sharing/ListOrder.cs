namespace CoopLessons.Core.Sharing;

/// <summary>
/// The order of a list after a merge. What all three know stands as the side has it that moved something, as mine where
/// both did; what only one side knows follows the entry that it follows there. Two additions at one place stand by their
/// first keys, so that it makes no difference whose they are.
/// </summary>
internal static class ListOrder
{
    /// <param name="kept">The keys that the merged list holds.</param>
    /// <param name="conflict">Both sides moved the entries that all know, each in another way.</param>
    public static IReadOnlyList<string> Of(Branch @base, Branch mine, Branch theirs, IReadOnlySet<string> kept, out bool conflict)
    {
        var common = kept.Where(k => @base[k] is not null && mine[k] is not null && theirs[k] is not null).ToHashSet(StringComparer.Ordinal);
        string[] Common(Branch of) => [.. of.Keys.Where(common.Contains)];
        var (before, here, there) = (Common(@base), Common(mine), Common(theirs));
        var movedHere = !here.SequenceEqual(before);
        conflict = movedHere && !there.SequenceEqual(before) && !here.SequenceEqual(there);

        var (fromHere, fromThere) = (Runs(mine, common, kept), Runs(theirs, common, kept));
        IEnumerable<string> all = Both("", fromHere, fromThere);
        foreach (var key in movedHere ? here : there)
            all = all.Append(key).Concat(Both(key, fromHere, fromThere));
        return [.. all.Distinct(StringComparer.Ordinal)];
    }

    /// <summary>A list in its own order, with what it did not know where another list has it.</summary>
    public static IReadOnlyList<string> Placed(Branch list, Branch from, IEnumerable<string> kept) =>
        Of(from, list, from, kept.ToHashSet(StringComparer.Ordinal), out _);

    /// <summary>What follows each common key, and what stands before the first (under the empty key).</summary>
    private static Dictionary<string, List<string>> Runs(Branch of, HashSet<string> common, IReadOnlySet<string> kept)
    {
        var runs = new Dictionary<string, List<string>>(StringComparer.Ordinal) { [""] = [] };
        var at = "";
        foreach (var key in of.Keys.Where(kept.Contains))
        {
            if (common.Contains(key))
                runs[at = key] = [];
            else
                runs[at].Add(key);
        }

        return runs;
    }

    private static IEnumerable<string> Both(string after, Dictionary<string, List<string>> here, Dictionary<string, List<string>> there)
    {
        var (a, b) = (here.GetValueOrDefault(after, []), there.GetValueOrDefault(after, []));
        return b.Count > 0 && (a.Count == 0 || string.CompareOrdinal(b[0], a[0]) < 0) ? b.Concat(a) : a.Concat(b);
    }
}
