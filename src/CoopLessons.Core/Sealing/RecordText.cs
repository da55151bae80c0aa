using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace CoopLessons.Core.Sealing;

/// <summary>
/// JSON (RFC 8259) in the one form that <c>jq -jcS .</c> writes: members by the code points of their names, nothing between
/// them, whole numbers only, no line end. In a text the quotation mark, the backslash, the control characters below U+0020
/// and DEL are escaped, <c>\b \t \n \f \r</c> so and the others as <c>\u00xx</c>; every other sign stands for itself. Lists
/// keep their order. Its bytes are its UTF-8.
/// </summary>
public static class RecordText
{
    /// <exception cref="ArgumentException">A number that is not whole, or a text with half a character (a surrogate without its other half).</exception>
    public static string Of(JsonNode? value)
    {
        var text = new StringBuilder();
        Write(value, text);
        return text.ToString();
    }

    private static void Write(JsonNode? value, StringBuilder text)
    {
        switch (value)
        {
            case null:
                text.Append("null");
                break;
            case JsonObject members:
                Join(members.OrderBy(m => m.Key, CodePoints.Order), '{', '}', text, m =>
                {
                    Write(m.Key, text);
                    text.Append(':');
                    Write(m.Value, text);
                });
                break;
            case JsonArray items:
                Join(items, '[', ']', text, i => Write(i, text));
                break;
            default:
                WriteOne(value, text);
                break;
        }
    }

    private static void Join<T>(IEnumerable<T> all, char open, char close, StringBuilder text, Action<T> write)
    {
        text.Append(open);
        var first = true;
        foreach (var one in all)
        {
            if (!first)
                text.Append(',');
            first = false;
            write(one);
        }

        text.Append(close);
    }

    private static void WriteOne(JsonNode value, StringBuilder text)
    {
        switch (value.GetValueKind())
        {
            case JsonValueKind.String:
                Write(value.GetValue<string>(), text);
                break;
            case JsonValueKind.Number:
                // Beyond 2⁵³ a reader that keeps numbers as doubles would write others.
                if (!long.TryParse(value.ToJsonString(), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var whole) || Math.Abs(whole) > 1L << 53)
                    throw new ArgumentException($"{value.ToJsonString()} is no whole number of at most 2⁵³.", nameof(value));
                text.Append(whole.ToString(CultureInfo.InvariantCulture));
                break;
            default:
                text.Append(value.ToJsonString());
                break;
        }
    }

    private static void Write(string value, StringBuilder text)
    {
        text.Append('"');
        for (var i = 0; i < value.Length; i++)
        {
            var c = value[i];
            if (char.IsSurrogate(c) && !(char.IsHighSurrogate(c) ? i + 1 < value.Length && char.IsLowSurrogate(value[i + 1]) : i > 0 && char.IsHighSurrogate(value[i - 1])))
                throw new ArgumentException("A text holds half a character (a surrogate without its other half).", nameof(value));
            text.Append(c switch
            {
                '"' => "\\\"",
                '\\' => "\\\\",
                '\b' => "\\b",
                '\t' => "\\t",
                '\n' => "\\n",
                '\f' => "\\f",
                '\r' => "\\r",
                < ' ' or '\u007f' => $"\\u{(int)c:x4}",
                _ => c.ToString(),
            });
        }

        text.Append('"');
    }

    /// <summary>By code points, which is the order of the bytes in UTF-8; that of UTF-16 differs above U+FFFF.</summary>
    private sealed class CodePoints : IComparer<string>
    {
        public static readonly CodePoints Order = new();

        public int Compare(string? x, string? y) => Encoding.UTF8.GetBytes(x ?? "").AsSpan().SequenceCompareTo(Encoding.UTF8.GetBytes(y ?? ""));
    }
}
