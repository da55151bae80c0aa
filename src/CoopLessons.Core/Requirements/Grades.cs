using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace CoopLessons.Core.Requirements;

/// <summary>A set of grades as the catalog writes it: <c>K-6</c>, <c>3,5,8</c>. Kindergarten is 0; both ends of a span are included.</summary>
[JsonConverter(typeof(Converter))]
public sealed record Grades
{
    private readonly bool[] _holds = new bool[13];

    private Grades(string text) => Text = text;

    /// <summary>As written.</summary>
    public string Text { get; }

    public bool Hold(int grade) => grade is >= 0 and <= 12 && _holds[grade];

    /// <exception cref="FormatException">Not a list of grades and spans, or a span that runs backwards.</exception>
    public static Grades Parse(string text)
    {
        var grades = new Grades(text);
        foreach (var span in text.Split(','))
        {
            var ends = span.Split('-');
            var first = Grade(ends[0]);
            var last = ends.Length == 1 ? first : Grade(ends[1]);
            if (ends.Length > 2 || last < first)
                throw new FormatException($"“{span}” is no span of grades.");
            for (var grade = first; grade <= last; grade++)
                grades._holds[grade] = true;
        }

        return grades;
    }

    public bool Equals(Grades? other) => other?.Text == Text;

    public override int GetHashCode() => Text.GetHashCode(StringComparison.Ordinal);

    public override string ToString() => Text;

    private static int Grade(string text)
    {
        if (text == "K")
            return 0;
        return int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var grade) && grade is >= 1 and <= 12
            ? grade
            : throw new FormatException($"“{text}” is no grade.");
    }

    internal sealed class Converter : JsonConverter<Grades>
    {
        public override Grades Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
        {
            try
            {
                return Parse(reader.GetString() ?? "");
            }
            catch (FormatException fault)
            {
                throw new JsonException(fault.Message, fault);
            }
        }

        public override void Write(Utf8JsonWriter writer, Grades value, JsonSerializerOptions options) => writer.WriteStringValue(value.Text);
    }
}
