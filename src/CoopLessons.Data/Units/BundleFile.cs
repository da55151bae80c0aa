using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using CoopLessons.Core.Units;
using Json.Schema;

namespace CoopLessons.Data.Units;

/// <summary>What came of reading a bundle: the unit, or everything that is wrong with the file.</summary>
public sealed record BundleReading(UnitBundle? Bundle, IReadOnlyList<BundleFault> Faults);

/// <summary>Reads and writes the JSON bundle by which units travel.</summary>
public static class BundleFile
{
    /// <summary>Bytes above which a bundle is refused unread.</summary>
    public const int LargestBytes = 2_000_000;

    private const int MostFaults = 20;
    private static readonly JsonSerializerOptions Reading = new(UnitBundle.Json) { Converters = { new BundleText.WholeNumbers() } };
    private static readonly Lazy<JsonSchema> Schema = new(() => JsonSchema.FromText(SchemaText()));

    /// <summary>The schema as it is published, UTF-8 JSON.</summary>
    public static string SchemaText()
    {
        using var stream = typeof(UnitBundle).Assembly.GetManifestResourceStream("unit-bundle.schema.json")!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }

    /// <summary>Reads a bundle; it is taken whole or not at all.</summary>
    public static BundleReading Read(ReadOnlySpan<byte> utf8)
    {
        if (utf8.StartsWith("\uFEFF"u8))
            utf8 = utf8[3..];
        try
        {
            var node = JsonNode.Parse(utf8, documentOptions: new JsonDocumentOptions { MaxDepth = 32, AllowDuplicateProperties = false });
            // Half a character shows only when the tree is first walked.
            node?.ToJsonString();
            return Judge(node);
        }
        catch (JsonException fault)
        {
            return Refused(new BundleFault("", fault.LineNumber is { } line ? $"This is not JSON: line {line + 1}, byte {fault.BytePositionInLine + 1}." : "A member stands twice in one object."));
        }
        catch (InvalidOperationException)
        {
            return Refused(new BundleFault("", "A text holds half a character (a surrogate without its other half)."));
        }
    }

    public static byte[] Write(UnitBundle bundle) => JsonSerializer.SerializeToUtf8Bytes(bundle, UnitBundle.Json);

    private static BundleReading Judge(JsonNode? node)
    {
        var result = Schema.Value.Evaluate(JsonSerializer.SerializeToElement(node), new EvaluationOptions { OutputFormat = OutputFormat.List });
        if (!result.IsValid)
            return Refused([.. Faults(result).Distinct().Take(MostFaults)]);
        var bundle = node.Deserialize<UnitBundle>(Reading)!;
        BundleFault[] faults = [.. BundleText.Faults(node).Concat(BundleRules.Faults(bundle)).Take(MostFaults)];
        return faults.Length > 0 ? Refused(faults) : new BundleReading(bundle, []);
    }

    private static BundleReading Refused(params BundleFault[] faults) => new(null, faults);

    private static IEnumerable<BundleFault> Faults(EvaluationResults results) =>
        (results.Details ?? []).Where(d => d.Errors is not null)
            .SelectMany(d => d.Errors!.Select(e => new BundleFault(d.InstanceLocation.ToString(), $"{e.Key}: {e.Value}")));
}
