using System.Text.Json;
using CoopLessons.Core.Sharing;
using CoopLessons.Core.Units;

namespace CoopLessons.Data.Units;

/// <summary>A bundle as it was given out once, with the hash by which it is known.</summary>
public sealed class PublishedBundle
{
    private static readonly JsonSerializerOptions Short = new(UnitBundle.Json) { WriteIndented = false };

    private PublishedBundle(UnitBundle content, string text, string hash) => (Content, Text, Hash) = (content, text, hash);

    public UnitBundle Content { get; }

    /// <summary>JSON, as <see cref="Kept"/> reads it back; all digits of all numbers are in it.</summary>
    public string Text { get; }

    /// <inheritdoc cref="UnitHash" />
    public string Hash { get; }

    public static PublishedBundle Of(UnitBundle content) => new(content, JsonSerializer.Serialize(content, Short), UnitHash.Of(content));

    /// <param name="text">As <see cref="Text"/> was; read once it was judged.</param>
    public static PublishedBundle Kept(string text) => Of(JsonSerializer.Deserialize<UnitBundle>(text, Short)!);
}
