using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using CoopLessons.Core.Requirements;
using Json.Schema;

namespace CoopLessons.Web.Commands;

/// <summary>A catalog file and what is wrong with it, each a line that begins with the file's name and a place.</summary>
/// <param name="Jurisdiction">Null where there is a fault.</param>
internal sealed partial record CatalogFile(Jurisdiction? Jurisdiction, IReadOnlyList<string> Faults)
{
    private const int MostFaults = 50;

    private static readonly Lazy<JsonSchema> Schema = new(() => JsonSchema.FromText(Catalog.SchemaText));

    public static CatalogFile Check(string name, string text)
    {
        try
        {
            var file = JsonNode.Parse(text) ?? throw new JsonException("The file holds nothing.");
            string[] faults = [.. Uncited(file).Concat(AgainstSchema(file, text)).Distinct().Take(MostFaults)];
            return faults.Length > 0 ? new(null, [.. faults.Select(f => $"{name}: {f}")]) : new(Catalog.Read(text), []);
        }
        catch (JsonException fault)
        {
            return new(null, [$"{name}: {Place(fault)}{Plain(fault)}"]);
        }
    }

    // Each figure is asked for its citation by name, since it is what the files are for.
    private static IEnumerable<string> Uncited(JsonNode file)
    {
        foreach (var pathway in Items((file as JsonObject)?["pathways"]))
        {
            foreach (var figure in Items(pathway["requirements"]).SelectMany(WithParts).Where(f => string.IsNullOrWhiteSpace(Text((f["source"] as JsonObject)?["cite"]))))
                yield return $"{figure.GetPath()}: the figure “{Text(figure["id"])}” of “{Text(pathway["id"])}” has no citation";
        }
    }

    private static IEnumerable<JsonObject> Items(JsonNode? list) => (list as JsonArray ?? []).OfType<JsonObject>();

    private static IEnumerable<JsonObject> WithParts(JsonObject figure) => Items(figure["of"]).SelectMany(WithParts).Prepend(figure);

    private static string? Text(JsonNode? node) => node is JsonValue value && value.TryGetValue<string>(out var text) ? text : null;

    private static List<string> AgainstSchema(JsonNode file, string text)
    {
        var result = Schema.Value.Evaluate(JsonSerializer.SerializeToElement(file), new EvaluationOptions { OutputFormat = OutputFormat.List, RequireFormatValidation = true });
        if (result.IsValid)
            return [];
        var details = (result.Details ?? []).Where(d => d.Errors is not null).ToList();
        // A shape of another kind fails by its kind: what else it misses is no fault of the file.
        var others = details.Select(d => OtherKind().Match(d.EvaluationPath.ToString())).Where(m => m.Success).Select(m => m.Groups[1].Value).ToHashSet();
        var told = details.Where(d => !others.Any(o => d.EvaluationPath.ToString() is var path && (path == o || path.StartsWith(o + "/", StringComparison.Ordinal)))).ToList();
        var inside = told.SelectMany(d => d.Errors!.Where(e => e.Key != "oneOf").Select(e => $"{Place(d.InstanceLocation.ToString())}: {Plain(e.Key, e.Value)}")).ToList();
        if (inside.Count > 0)
            return inside;
        // Of a kind that no shape has: reading says where.
        _ = Catalog.Read(text);
        return ["$: is of no shape that the schema knows"];
    }

    private static string Plain(string keyword, string message) =>
        keyword.Length == 0 ? "has no place here" : $"{keyword}: {message}";

    private static string Place(string pointer) => pointer.Length == 0 ? "$" : pointer;

    private static string Place(JsonException fault) =>
        fault.LineNumber is { } line ? $"line {line + 1}, character {fault.BytePositionInLine + 1}: " : fault.Path is { } path ? $"{path}: " : "";

    private static string Plain(JsonException fault) => fault.Message.Split(" Path: ")[0].Split(" LineNumber: ")[0];

    [GeneratedRegex("^(.*/oneOf/[0-9]+)/properties/(kind|rule)$")]
    private static partial Regex OtherKind();
}
