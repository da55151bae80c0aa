using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using CoopLessons.Core.Units;

namespace CoopLessons.Core.Sharing;

/// <summary>
/// By what a published revision is known: its content alone. The canonical text is a bundle as the schema describes it,
/// written as RFC 8785 says, after three things that say nothing have been taken out:
/// <list type="number">
/// <item>Whatever is known by a code and placed by nothing else stands by that code (UTF-16 code units): the unit's
/// subjects and activities, an activity's subjects, what it touches and what it comes after. So do the allergens of an
/// ingredient. Variants, supplies, printables, books, hazards, ingredients and things begun ahead keep their order.</item>
/// <item>An optional list or text that is empty is left out, as one that is missing.</item>
/// <item>A number is its value: 2.50 is 2.5. Digits beyond those of a double (IEEE 754, as RFC 8785 asks) do not count.</item>
/// </list>
/// </summary>
public static class UnitHash
{
    private static readonly string[] ByCode = ["subjects", "activities"];
    private static readonly string[] ByName = ["touches", "after", "allergens"];
    private static readonly string[] Optional = ["waitingFor", "note", "author", "isbn", "touches", "variants", "supplies", "printables", "books", "hazards", "ingredients", "after", "ahead"];

    /// <summary>SHA-256 of the canonical text in UTF-8: 64 lower-case hexadecimal digits.</summary>
    /// <exception cref="ArgumentException">A text holds half a character (a surrogate without its other half).</exception>
    public static string Of(UnitBundle bundle) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(Text(bundle))));

    /// <summary>The canonical text, which reads back as a bundle of the same content.</summary>
    /// <exception cref="ArgumentException">A text holds half a character (a surrogate without its other half).</exception>
    public static string Text(UnitBundle bundle) => CanonicalJson.Of(Settled(JsonSerializer.SerializeToNode(bundle, UnitBundle.Json)));

    private static JsonNode? Settled(JsonNode? node, string name = "")
    {
        switch (node)
        {
            case JsonObject members:
                return new JsonObject(members
                    .Select(m => KeyValuePair.Create(m.Key, Settled(m.Value, m.Key)))
                    .Where(m => !(Optional.Contains(m.Key) && IsEmpty(m.Value))));
            case JsonArray items:
                var settled = items.Select(i => Settled(i));
                if (ByCode.Contains(name))
                    settled = settled.OrderBy(i => i!["code"]!.GetValue<string>(), StringComparer.Ordinal);
                else if (ByName.Contains(name))
                    settled = settled.OrderBy(i => i!.GetValue<string>(), StringComparer.Ordinal);
                return new JsonArray([.. settled]);
            default:
                return node?.DeepClone();
        }
    }

    private static bool IsEmpty(JsonNode? value) => value is JsonArray { Count: 0 } || (value?.GetValueKind() == JsonValueKind.String && value.GetValue<string>().Length == 0);
}
