using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using CoopLessons.Core.Units;

namespace CoopLessons.Data.Units;

/// <summary>
/// What the schema's language cannot say about the texts and numbers of a bundle. The databases count a text in code
/// points and keep no control characters, while the schema's reader counts letters with all their accents as one.
/// </summary>
internal static class BundleText
{
    /// <summary>Members that may hold line breaks and tabs; every other text is one line.</summary>
    private static readonly HashSet<string> Several = ["summary", "does", "note", "caution"];

    /// <summary>Every fault of the texts in a bundle that has passed the schema.</summary>
    public static IEnumerable<BundleFault> Faults(JsonNode? node, string path = "", string member = "") => node switch
    {
        JsonObject all => all.SelectMany(m => Faults(m.Value, $"{path}/{m.Key}", m.Key)),
        JsonArray all => all.SelectMany((item, i) => Faults(item, $"{path}/{i}", member)),
        JsonValue value when value.GetValueKind() == JsonValueKind.String => Faults(value.GetValue<string>(), path, member),
        JsonValue value when member == "quantity" && value.GetValue<decimal>() == 0 => [new BundleFault(path, "A quantity is more than nothing.")],
        _ => [],
    };

    private static IEnumerable<BundleFault> Faults(string text, string path, string member)
    {
        if (text.Any(c => char.IsControl(c) && !(Several.Contains(member) && c is '\n' or '\r' or '\t')))
            yield return new BundleFault(path, "This text holds control characters or line breaks that have no place here.");
        if (text.EnumerateRunes().Count() > Longest(path, member))
            yield return new BundleFault(path, $"This text is longer than {Longest(path, member)} characters.");
        if (member is "title" or "name" or "does" or "summary" && string.IsNullOrWhiteSpace(text))
            yield return new BundleFault(path, "This text is blank.");
    }

    private static int Longest(string path, string member) => member switch
    {
        "summary" => 2000,
        "does" => path.Contains("/variants/", StringComparison.Ordinal) ? 1000 : 4000,
        "note" or "caution" => 500,
        _ => 120,
    };

    /// <summary>Reads <c>4.0</c> where a whole number is meant, as the schema does.</summary>
    internal sealed class WholeNumbers : JsonConverter<int>
    {
        public override int Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.TryGetInt32(out var whole) ? whole : decimal.ToInt32(reader.GetDecimal());

        public override void Write(Utf8JsonWriter writer, int value, JsonSerializerOptions options) => writer.WriteNumberValue(value);
    }
}
