using System.Text.Json;
using System.Text.Json.Nodes;
using CoopLessons.Core.Units;

namespace CoopLessons.Core.Sharing;

/// <summary>A bundle read as a tree, and a tree written as a bundle: what it holds is the same, to the last digit.</summary>
internal static class BundleTree
{
    /// <summary>An activity's lists whose entries have parts, and the member by which an entry is known.</summary>
    public static IReadOnlyList<(string Field, string Key)> Lists { get; } =
    [
        ("variants", "ages"), ("supplies", "name"), ("printables", "title"), ("books", "title"), ("hazards", "kind"), ("ingredients", "name"), ("ahead", "what"),
    ];

    private static readonly (string Field, string[] Members)[] Together =
    [
        (UnitSpot.Place, ["week", "order"]), (UnitSpot.Waiting, ["waitingMinutes", "waitingFor"]), (UnitSpot.Amount, ["quantity", "unit", "per"]), ("ages", ["fromAge", "toAge"]),
    ];

    public static Branch Of(UnitBundle bundle, KnownBooks books)
    {
        var unit = JsonSerializer.SerializeToNode(bundle, UnitBundle.Json)!.AsObject();
        return new Branch(false,
        [
            .. Values(unit, ["title", "summary", "weeks"]),
            (UnitTree.Subjects, new Branch(false, bundle.Subjects.Select(s => (s.Code, (UnitTree?)ToLeaf(s.Name))))),
            (UnitTree.Activities, new Branch(false, bundle.Activities.Zip(unit[UnitTree.Activities]!.AsArray(), (a, json) => (a.Code, (UnitTree?)Of(a, json!.AsObject(), books))))),
        ]);
    }

    public static UnitBundle ToBundle(UnitTree tree)
    {
        var unit = ToJson((Branch)tree);
        unit["format"] = UnitBundle.FormatName;
        unit["version"] = UnitBundle.CurrentVersion;
        unit[UnitTree.Subjects] = new JsonArray([.. Entries(tree, UnitTree.Subjects).Select(s => new JsonObject { ["code"] = s.Key, ["name"] = ToJson((Leaf)s.Value) })]);
        unit[UnitTree.Activities] = new JsonArray(
        [
            .. Entries(tree, UnitTree.Activities).Select(a => ToActivity(a.Key, (Branch)a.Value))
                .OrderBy(a => (int)a["week"]!).ThenBy(a => (int)a["order"]!).ThenBy(a => (string)a["code"]!, StringComparer.Ordinal),
        ]);
        return unit.Deserialize<UnitBundle>(UnitBundle.Json)!;
    }

    /// <summary>What stands at a spot, as JSON that <see cref="Read"/> reads back; null for nothing.</summary>
    public static string? Json(UnitSpot spot, UnitTree? value) => value switch
    {
        null => null,
        Leaf leaf => leaf.Json,
        Branch activity when spot.Field is null => CanonicalJson.Exactly(ToActivity(spot.Activity!, activity)),
        Branch entry => CanonicalJson.Exactly(ToEntry(spot.Field!, entry)),
        _ => throw new ArgumentOutOfRangeException(nameof(value)),
    };

    /// <exception cref="JsonException">The text is not what <see cref="Json"/> wrote.</exception>
    public static UnitTree? Read(UnitSpot spot, string? json, KnownBooks books)
    {
        if (json is null)
            return null;
        var node = JsonNode.Parse(json);
        if (spot is { Activity: not null, Field: null })
            return Of(node.Deserialize<BundleActivity>(UnitBundle.Json)!, node!.AsObject(), books);
        var isEntry = spot.Entry is not null && spot.Part is null && Lists.Any(l => l.Field == spot.Field);
        return isEntry ? Parts(node!.AsObject()) : new Leaf(json);
    }

    /// <summary>The entries of a list, in their order; none where the list is not there.</summary>
    public static IEnumerable<(string Key, UnitTree Value)> Entries(UnitTree? of, string list) =>
        of?.Get(list) is Branch branch ? branch.Keys.Select(k => (k, branch[k]!)) : [];

    /// <summary>A subject's weight in an activity; 0 where it is only touched, null where it is not there.</summary>
    public static int? Weight(UnitTree? subject) => subject is Leaf leaf ? JsonSerializer.Deserialize<int>(leaf.Json) : null;

    private static Branch Of(BundleActivity activity, JsonObject json, KnownBooks books) => new(false,
    [
        .. Values(json, ["title", "kind", "does", "handsOnMinutes", "adultNeed"]),
        (UnitSpot.Place, Joined(json, UnitSpot.Place)),
        (UnitSpot.Waiting, Joined(json, UnitSpot.Waiting)),
        (UnitTree.Subjects, new Branch(false,
        [
            .. activity.Subjects.Select(s => (s.Code, (UnitTree?)ToLeaf(s.Weight))),
            .. (activity.Touches ?? []).Select(t => (t, (UnitTree?)ToLeaf(0))),
        ])),
        (UnitTree.After, new Branch(false, (activity.After ?? []).Distinct().Select(a => (a, (UnitTree?)ToLeaf(true))))),
        .. Lists.Select(l => (l.Field, (UnitTree?)Of(l.Field, l.Key, activity.Code, json[l.Field] as JsonArray ?? [], books))),
    ]);

    private static Branch Of(string field, string key, string activity, JsonArray all, KnownBooks books)
    {
        var met = new Dictionary<string, int>(StringComparer.Ordinal);
        return new Branch(true, all.Select(e => e!.AsObject()).Select(entry =>
        {
            // A name in capitals is the same name; a word of the bundle has one spelling.
            var name = key switch
            {
                "ages" => $"{entry["fromAge"]}-{entry["toAge"]}",
                "kind" => (string)entry[key]!,
                _ => ((string)entry[key]!).ToUpperInvariant(),
            };
            if (field == "books")
                name = books.Key(activity, name, (string?)entry["isbn"]);
            // Nothing forbids two lines of one name: the second is known as the second.
            met[name] = met.GetValueOrDefault(name) + 1;
            return (met[name] == 1 ? name : $"{name} #{met[name]}", (UnitTree?)Parts(entry));
        }));
    }

    private static Branch Parts(JsonObject entry)
    {
        var together = Together.Where(t => entry.ContainsKey(t.Members[0])).ToList();
        return new Branch(false,
        [
            .. together.Select(t => (t.Field, Joined(entry, t.Field))),
            .. Values(entry, entry.Select(m => m.Key).Where(m => m != "allergens" && !together.Any(t => t.Members.Contains(m)))),
            .. (entry["allergens"] as JsonArray ?? []).Select(a => (string)a!).Distinct().Select(a => (a, (UnitTree?)ToLeaf(true))),
        ]);
    }

    private static IEnumerable<(string Key, UnitTree? Value)> Values(JsonObject of, IEnumerable<string> members) =>
        members.Where(m => !IsEmpty(of[m])).Select(m => (m, (UnitTree?)ToLeaf(of[m])));

    private static Leaf Joined(JsonObject of, string field) =>
        ToLeaf(new JsonObject(Together.First(t => t.Field == field).Members.Where(m => !IsEmpty(of[m])).Select(m => KeyValuePair.Create(m, of[m]?.DeepClone()))));

    private static bool IsEmpty(JsonNode? value) => value is null || (value.GetValueKind() == JsonValueKind.String && value.GetValue<string>().Length == 0);

    private static Leaf ToLeaf(JsonNode? value) => new(CanonicalJson.Exactly(value));

    private static JsonNode? ToJson(Leaf leaf) => JsonNode.Parse(leaf.Json);

    /// <summary>The values of a branch as members; what stands together comes apart again.</summary>
    private static JsonObject ToJson(Branch branch)
    {
        var json = new JsonObject();
        foreach (var key in branch.Keys)
        {
            if (branch[key] is not Leaf leaf)
                continue;
            if (ToJson(leaf) is JsonObject together)
            {
                foreach (var (member, value) in together)
                    json[member] = value?.DeepClone();
            }
            else
            {
                json[key] = ToJson(leaf);
            }
        }

        return json;
    }

    private static JsonObject ToActivity(string code, Branch activity)
    {
        var json = ToJson(activity);
        json["code"] = code;
        var subjects = Entries(activity, UnitTree.Subjects).Select(s => (s.Key, Weight: Weight(s.Value)!.Value)).ToList();
        json["subjects"] = new JsonArray([.. subjects.Where(s => s.Weight > 0).Select(s => new JsonObject { ["code"] = s.Key, ["weight"] = s.Weight })]);
        AddList(json, "touches", subjects.Where(s => s.Weight == 0).Select(s => (JsonNode)s.Key));
        AddList(json, UnitTree.After, Entries(activity, UnitTree.After).Select(a => (JsonNode)a.Key));
        foreach (var (field, _) in Lists)
            AddList(json, field, Entries(activity, field).Select(e => ToEntry(field, (Branch)e.Value)));
        return json;
    }

    private static JsonObject ToEntry(string field, Branch entry)
    {
        var json = ToJson(entry);
        if (field != "ingredients")
            return json;
        string[] allergens = [.. entry.Keys.Where(k => k != "name")];
        return new JsonObject { ["name"] = json["name"]?.DeepClone(), ["allergens"] = new JsonArray([.. allergens.Select(a => (JsonNode)a)]) };
    }

    private static void AddList(JsonObject to, string field, IEnumerable<JsonNode> all)
    {
        var list = new JsonArray([.. all]);
        if (list.Count > 0)
            to[field] = list;
    }
}
