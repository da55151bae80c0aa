using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace CoopLessons.Core.Requirements;

/// <summary>Every jurisdiction's pathways, read once from the files beside this one.</summary>
public sealed class Catalog
{
    private static readonly Lazy<Catalog> Whole = new(() => new Catalog(Files().Select(f => Read(f.Text))));
    private readonly Dictionary<string, Jurisdiction> _byCode;

    private Catalog(IEnumerable<Jurisdiction> all)
    {
        All = [.. all.OrderBy(j => j.Name, StringComparer.Ordinal)];
        _byCode = All.ToDictionary(j => j.Code);
    }

    /// <summary>How catalog files and a family's own pathway are read and written.</summary>
    public static JsonSerializerOptions Json { get; } = new(JsonSerializerDefaults.Web)
    {
        AllowOutOfOrderMetadataProperties = true,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false) },
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        WriteIndented = true,
    };

    public static Catalog Of50AndDc => Whole.Value;

    /// <summary>By name.</summary>
    public IReadOnlyList<Jurisdiction> All { get; }

    /// <param name="code">ISO 3166-2, such as US-MO.</param>
    public Jurisdiction? this[string code] => _byCode.GetValueOrDefault(code);

    /// <summary>The jurisdiction with the two-letter code of a state, or null.</summary>
    public Jurisdiction? OfState(string state) => this["US-" + state];

    /// <summary>The schema that every file passes, JSON.</summary>
    public static string SchemaText => Text("jurisdiction.schema.json");

    /// <summary>The files as they stand in the program: name and JSON text.</summary>
    public static IEnumerable<(string Name, string Text)> Files() =>
        typeof(Catalog).Assembly.GetManifestResourceNames()
            .Where(n => n.StartsWith("us-", StringComparison.Ordinal)).Order(StringComparer.Ordinal).Select(n => (n, Text(n)));

    /// <exception cref="JsonException">The text has not the shape of a jurisdiction.</exception>
    public static Jurisdiction Read(string json) =>
        JsonSerializer.Deserialize<Jurisdiction>(json, Json) ?? throw new JsonException("The file is empty.");

    private static string Text(string name)
    {
        using var stream = typeof(Catalog).Assembly.GetManifestResourceStream(name)!;
        var utf8 = new byte[stream.Length];
        stream.ReadExactly(utf8);
        return Encoding.UTF8.GetString(utf8);
    }
}
