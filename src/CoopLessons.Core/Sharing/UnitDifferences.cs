using System.Text.Json;
using CoopLessons.Core.Units;

namespace CoopLessons.Core.Sharing;

/// <summary>Two versions of a unit, spot by spot.</summary>
public static class UnitDifferences
{
    /// <summary>Everything that <paramref name="to"/> has otherwise than <paramref name="from"/>; none where their <see cref="UnitHash"/> is one.</summary>
    public static IReadOnlyList<UnitDifference> Between(UnitBundle from, UnitBundle to)
    {
        var books = new KnownBooks();
        return Between(BundleTree.Of(from, books), BundleTree.Of(to, books));
    }

    internal static IReadOnlyList<UnitDifference> Between(UnitTree from, UnitTree to) =>
    [
        .. ThreeWay.Differences(from, to).Select(spot =>
        {
            var (title, entry) = Named(spot, to, from);
            return new UnitDifference(spot, title, entry, BundleTree.Json(spot, from.Get(spot)), BundleTree.Json(spot, to.Get(spot)));
        }),
    ];

    /// <summary>The activity's title and the entry's name, from the first tree that has each.</summary>
    internal static (string? Title, string? Entry) Named(UnitSpot spot, params ReadOnlySpan<UnitTree> trees)
    {
        string? title = null, entry = null;
        foreach (var tree in trees)
        {
            title ??= spot.Activity is null ? null : Text(tree.Get(UnitTree.Activities, spot.Activity, "title"));
            entry ??= spot.Entry is null ? null : EntryName(spot, tree);
        }

        return (title, entry ?? spot.Entry);
    }

    private static string? EntryName(UnitSpot spot, UnitTree tree) => spot switch
    {
        { Field: UnitTree.Subjects } => Text(tree.Get(UnitTree.Subjects, spot.Entry!)),
        { Field: UnitTree.After } => Text(tree.Get(UnitTree.Activities, spot.Entry!, "title")),
        _ when BundleTree.Lists.FirstOrDefault(l => l.Field == spot.Field) is { Key: { } key and not "ages" and not "kind" } => Text(tree.Get(UnitTree.Activities, spot.Activity!, spot.Field!, spot.Entry!, key)),
        _ => null,
    };

    private static string? Text(UnitTree? leaf) => leaf is Leaf { Json: var json } ? JsonSerializer.Deserialize<string>(json) : null;
}
