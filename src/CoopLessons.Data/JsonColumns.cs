using System.Text.Json;
using CoopLessons.Core.Units;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace CoopLessons.Data;

/// <summary>A small list or record kept as one text column, the same on both databases.</summary>
internal static class JsonColumns
{
    private static readonly JsonSerializerOptions Json = new(UnitBundle.Json) { WriteIndented = false };

    public static PropertyBuilder<T> AsJson<T>(this PropertyBuilder<T> property)
        where T : class? =>
        property.HasConversion(
            new ValueConverter<T, string>(v => JsonSerializer.Serialize(v, Json), s => JsonSerializer.Deserialize<T>(s, Json)!),
            new ValueComparer<T>(
                (a, b) => JsonSerializer.Serialize(a, Json) == JsonSerializer.Serialize(b, Json),
                v => JsonSerializer.Serialize(v, Json).GetHashCode(StringComparison.Ordinal),
                v => JsonSerializer.Deserialize<T>(JsonSerializer.Serialize(v, Json), Json)!));
}
