using System.Text.Json;
using System.Text.Json.Nodes;

namespace CoopLessons.Core.Sharing;

/// <summary>Entries by their keys, in the order in which they are shown; whether that order counts is the list's own matter.</summary>
internal sealed record Branch : UnitTree
{
    private readonly Dictionary<string, UnitTree> entries;

    private Branch(bool ordered, IReadOnlyList<string> keys, Dictionary<string, UnitTree> entries) => (Ordered, Keys, this.entries) = (ordered, keys, entries);

    public Branch(bool ordered, IEnumerable<(string Key, UnitTree? Value)> all)
    {
        (string Key, UnitTree? Value)[] there = [.. all.Where(e => e.Value is not null)];
        (Ordered, Keys, entries) = (ordered, [.. there.Select(e => e.Key)], there.ToDictionary(e => e.Key, e => e.Value!, StringComparer.Ordinal));
    }

    public bool Ordered { get; }

    public IReadOnlyList<string> Keys { get; }

    public int Count => Keys.Count;

    public UnitTree? this[string key] => entries.GetValueOrDefault(key);

    /// <summary>The keys in their order, as a JSON list.</summary>
    public string Sequence => CanonicalJson.Of(new JsonArray([.. Keys.Select(k => (JsonNode)k)]));

    public Branch With(string key, UnitTree? value)
    {
        var changed = new Dictionary<string, UnitTree>(entries, StringComparer.Ordinal);
        if (value is null)
        {
            changed.Remove(key);
            return new Branch(Ordered, [.. Keys.Where(k => k != key)], changed);
        }

        changed[key] = value;
        return new Branch(Ordered, entries.ContainsKey(key) ? Keys : [.. Keys, key], changed);
    }

    /// <summary>The same entries, those named in their named order; the others keep the spots they have.</summary>
    public Branch InSequence(string keys)
    {
        var named = JsonSerializer.Deserialize<string[]>(keys)!.Where(entries.ContainsKey).Distinct().ToList();
        var next = new Queue<string>(named);
        return InSequence([.. Keys.Select(k => named.Contains(k) ? next.Dequeue() : k)]);
    }

    public Branch InSequence(IReadOnlyList<string> keys) => new(Ordered, keys, entries);

    /// <summary>As <see cref="UnitTree.Same"/> has it: a record's own equality would compare where entries lie in memory.</summary>
    public bool Equals(Branch? other) => Same(this, other);

    public override int GetHashCode() => HashCode.Combine(Ordered, Count);
}
