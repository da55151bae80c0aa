using System.Text.Json;
using System.Text.Json.Nodes;
using CoopLessons.Core.Requirements;
using Json.Schema;

namespace CoopLessons.Core.Tests.Requirements;

public sealed class The_catalogs_files
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(Catalog.SchemaText);

    // JSON Schema 2020-12 leaves it open whether a format is asserted: here it is, so that a date is a date.
    private static readonly EvaluationOptions Strictly = new() { OutputFormat = OutputFormat.List, RequireFormatValidation = true };

    public static TheoryData<string> Names => [.. Catalog.Files().Select(f => f.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Pass_the_schema(string name) => Assert.Empty(Faults(JsonNode.Parse(TextOf(name))!));

    [Theory]
    [MemberData(nameof(Names))]
    public void Pass_it_still_when_they_are_written_again(string name)
    {
        var written = JsonSerializer.SerializeToNode(Catalog.Read(TextOf(name)), Catalog.Json)!;
        written["$schema"] = "jurisdiction.schema.json";
        Assert.Empty(Faults(written));
    }

    [Theory]
    [InlineData("/pathways/0/source/cite", "")]
    [InlineData("/pathways/0/source/checked", "2026-02-30")]
    [InlineData("/pathways/0/requirements/0/status", "binding")]
    [InlineData("/pathways/0/year/begins", "07-32")]
    public void Would_not_pass_it_with_a_fault(string place, string value)
    {
        var file = JsonNode.Parse(TextOf("us-mo.json"))!;
        var at = place.Split('/', StringSplitOptions.RemoveEmptyEntries);
        var parent = at[..^1].Aggregate(file, (node, step) => int.TryParse(step, out var i) ? node[i]! : node[step]!);
        parent[at[^1]] = value;
        Assert.Contains(Faults(file), f => f.StartsWith(place + ":", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Are_read_and_written_back_without_loss(string name)
    {
        var read = Catalog.Read(TextOf(name));
        var written = JsonSerializer.Serialize(read, Catalog.Json);
        var differences = new List<string>();
        Compare("", JsonNode.Parse(TextOf(name))!, JsonNode.Parse(written)!, differences);
        Assert.Empty(differences);
        Assert.Equal(written, JsonSerializer.Serialize(Catalog.Read(written), Catalog.Json));
    }

    [Theory]
    [InlineData("""{ "code": "US-XX", "name": "Nowhere" }""")]
    [InlineData("""{ "code": "US-XX", "name": null, "pathways": [] }""")]
    [InlineData("null")]
    [InlineData("{")]
    public void Are_refused_where_they_are_none(string text) => Assert.ThrowsAny<JsonException>(() => Catalog.Read(text));

    private static string TextOf(string name) => Catalog.Files().Single(f => f.Name == name).Text;

    // Where one of several shapes fits, the others leave errors behind: they are faults only where the whole is one.
    private static List<string> Faults(JsonNode file)
    {
        var result = Schema.Evaluate(JsonSerializer.SerializeToElement(file), Strictly);
        return result.IsValid ? [] : [.. result.Details!.Where(d => d.Errors is not null).SelectMany(d => d.Errors!.Select(e => $"{d.InstanceLocation}: {e.Value}"))];
    }

    // What stands in the file stands in the writing, and what the writing adds says only what holds unsaid.
    private static void Compare(string place, JsonNode file, JsonNode written, List<string> differences)
    {
        switch (file, written)
        {
            case (JsonObject a, JsonObject b):
                foreach (var (key, value) in a.Where(p => p.Key != "$schema"))
                {
                    if (b[key] is { } other)
                        Compare($"{place}/{key}", value!, other, differences);
                    else
                        differences.Add($"{place}/{key} is lost");
                }

                differences.AddRange(b.Where(p => !a.ContainsKey(p.Key) && p.Value!.ToJsonString() is not ("false" or "\"year\"" or "\"birthday\"")).Select(p => $"{place}/{p.Key} is added"));
                break;
            case (JsonArray a, JsonArray b) when a.Count == b.Count:
                for (var i = 0; i < a.Count; i++)
                    Compare($"{place}/{i}", a[i]!, b[i]!, differences);
                break;
            case (JsonValue a, JsonValue b) when JsonNode.DeepEquals(a, b):
                break;
            default:
                differences.Add($"{place}: {file.ToJsonString()} became {written.ToJsonString()}");
                break;
        }
    }
}
