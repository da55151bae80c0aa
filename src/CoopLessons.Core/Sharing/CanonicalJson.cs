using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace CoopLessons.Core.Sharing;

/// <summary>
/// JSON in the one form that RFC 8785 (JSON Canonicalization Scheme, June 2020) gives it: members by their UTF-16 code
/// units, nothing between them, strings and numbers as ECMAScript writes them. Lists keep their order.
/// </summary>
public static class CanonicalJson
{
    /// <summary>The text of a value; null is the JSON literal.</summary>
    /// <exception cref="ArgumentException">A text holds half a character (a surrogate without its other half).</exception>
    public static string Of(JsonNode? value) =>
        // By way of its digits: a decimal turned into a double by division may miss the nearest one.
        Of(value, digits => Of(double.Parse(digits, NumberStyles.Float, CultureInfo.InvariantCulture)));

    /// <summary>The same form, but each number keeps every digit that a decimal holds: for values that are read back.</summary>
    internal static string Exactly(JsonNode? value) =>
        Of(value, digits => decimal.Parse(digits, NumberStyles.Float, CultureInfo.InvariantCulture).ToString("0.############################", CultureInfo.InvariantCulture));

    private static string Of(JsonNode? value, Func<string, string> number)
    {
        var text = new StringBuilder();
        Write(value, text, number);
        return text.ToString();
    }

    /// <summary>A number as section 3.2.2.3 of RFC 8785 writes it: the fewest digits from which the same double is read.</summary>
    /// <exception cref="ArgumentException">Not a number, or without end: JSON has no word for either.</exception>
    public static string Of(double number)
    {
        if (!double.IsFinite(number))
            throw new ArgumentException("JSON has no word for what is not a finite number.", nameof(number));
        if (number == 0)
            return "0";
        // The platform's shortest form gives the digits; only their layout is ours.
        var plain = Math.Abs(number).ToString("R", CultureInfo.InvariantCulture);
        var mark = plain.IndexOf('E', StringComparison.Ordinal);
        var mantissa = mark < 0 ? plain : plain[..mark];
        var point = mantissa.IndexOf('.', StringComparison.Ordinal);
        var whole = point < 0 ? mantissa.Length : point;
        var all = mantissa.Replace(".", "", StringComparison.Ordinal);
        var lead = all.Length - all.TrimStart('0').Length;
        var digits = all.Trim('0');
        // The place of the point, counted from before the first digit.
        var n = whole - lead + (mark < 0 ? 0 : int.Parse(plain.AsSpan(mark + 1), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture));
        return (number < 0 ? "-" : "") + LaidOut(digits, n);
    }

    /// <summary>ECMA-262, Number::toString: plain from a millionth up to below 10²¹, else with an exponent.</summary>
    private static string LaidOut(string digits, int n)
    {
        var k = digits.Length;
        if (n is > 0 and <= 21)
            return k <= n ? digits + new string('0', n - k) : $"{digits[..n]}.{digits[n..]}";
        if (n is > -6 and <= 0)
            return "0." + new string('0', -n) + digits;
        var exponent = (n - 1).ToString("+0;-0", CultureInfo.InvariantCulture);
        return k == 1 ? $"{digits}e{exponent}" : $"{digits[..1]}.{digits[1..]}e{exponent}";
    }

    private static void Write(JsonNode? value, StringBuilder text, Func<string, string> number)
    {
        switch (value)
        {
            case JsonObject members:
                Join(members.OrderBy(m => m.Key, StringComparer.Ordinal), '{', '}', text, m =>
                {
                    Write(m.Key, text);
                    text.Append(':');
                    Write(m.Value, text, number);
                });
                break;
            case JsonArray items:
                Join(items, '[', ']', text, i => Write(i, text, number));
                break;
            case null:
                text.Append("null");
                break;
            default:
                WriteOne(value, text, number);
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

    private static void WriteOne(JsonNode value, StringBuilder text, Func<string, string> number)
    {
        switch (value.GetValueKind())
        {
            case JsonValueKind.String:
                Write(value.GetValue<string>(), text);
                break;
            case JsonValueKind.Number:
                text.Append(number(value.ToJsonString()));
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
                < ' ' => $"\\u{(int)c:x4}",
                _ => c.ToString(),
            });
        }

        text.Append('"');
    }
}
