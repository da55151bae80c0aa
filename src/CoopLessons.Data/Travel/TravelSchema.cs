using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore.Metadata;

namespace CoopLessons.Data.Travel;

/// <summary>The rules of a family's file as a JSON Schema (draft 2020-12), made from the model itself: one definition a table.</summary>
public static class TravelSchema
{
    private const string Draft = "https://json-schema.org/draft/2020-12/schema";

    public static JsonObject Of(IModel model)
    {
        var definitions = new JsonObject();
        foreach (var table in TravelTable.Of(model).OrderBy(t => t.Name, StringComparer.Ordinal))
            definitions[table.Name] = Rows(table);
        return new JsonObject
        {
            ["$schema"] = Draft,
            ["title"] = "A family's rows",
            ["description"] = $"Each file data/TABLE.json of a {FamilyFile.FormatName} file, version {FamilyFile.CurrentVersion}, is an array that keeps the definition of its table.",
            ["$defs"] = definitions,
        };
    }

    private static JsonObject Rows(TravelTable table)
    {
        var columns = new JsonObject();
        foreach (var column in table.Columns)
            columns[column.Name] = Column(column);
        return new JsonObject
        {
            ["type"] = "array",
            ["description"] = $"In the order of {string.Join(", ", table.Key.Select(k => k.Name))}; each row once.",
            ["items"] = new JsonObject
            {
                ["type"] = "object",
                ["additionalProperties"] = false,
                ["required"] = new JsonArray([.. table.Columns.Select(c => (JsonNode)c.Name)]),
                ["properties"] = columns,
            },
        };
    }

    private static JsonObject Column(IProperty column)
    {
        var (type, more) = TravelValue.FormOf(column) switch
        {
            ValueForm.Text when column.GetMaxLength() is { } most => ("string", ("maxLength", (JsonNode?)most)),
            ValueForm.Id => ("string", ("format", "uuid")),
            ValueForm.Date => ("string", ("format", "date")),
            ValueForm.Instant => ("string", ("format", "date-time")),
            ValueForm.Time => ("string", ("pattern", "^([01][0-9]|2[0-3]):[0-5][0-9]$")),
            ValueForm.Number => ("string", ("pattern", @"^-?[0-9]+(\.[0-9]+)?$")),
            ValueForm.Base64 => ("string", ("contentEncoding", "base64")),
            ValueForm.Choice => ("string", ("enum", Names(column))),
            ValueForm.Whole => ("integer", default),
            ValueForm.YesNo => ("boolean", default),
            ValueForm.Json => ("", ("description", "A list or record, kept as it is.")),
            _ => ("string", ((string, JsonNode?))default),
        };
        var rule = new JsonObject();
        if (type.Length > 0)
            rule["type"] = column.IsNullable ? new JsonArray(type, "null") : type;
        if (more.Item1 is not null)
            rule[more.Item1] = more.Item2;
        if (TravelTable.NamesCoop(column))
            rule["description"] = "Names a co-op; empty where the family is taken in.";
        return rule;
    }

    private static JsonArray Names(IProperty column)
    {
        var names = new JsonArray([.. Enum.GetNames(Nullable.GetUnderlyingType(column.ClrType) ?? column.ClrType).Select(n => (JsonNode)n)]);
        if (column.IsNullable)
            names.Add((JsonNode?)null);
        return names;
    }
}
