using System.Text;
using CoopLessons.Data.Sealing;

namespace CoopLessons.Web.Sealing;

/// <summary>The field by which any form says that it corrects a sealed year, and why.</summary>
public static class LateWhy
{
    public const string Field = "LateWhy";

    /// <summary>What a form says; null where it says nothing, or more than is kept.</summary>
    public static string? Read(HttpRequest request) => Typed(request) is { Length: > 0 and <= Amendment.LongestWhy } why ? why : null;

    /// <summary>What is wrong with what a form says; null for a form without the field, or a good one.</summary>
    public static string? Fault(HttpRequest request) => Typed(request) switch
    {
        null => null,
        { Length: 0 } => "Say why it is corrected late.",
        { Length: > Amendment.LongestWhy } => $"At most {Amendment.LongestWhy} signs.",
        _ => null,
    };

    /// <summary>As typed, on one line; null for a form without the field.</summary>
    public static string? Typed(HttpRequest request)
    {
        if (!HttpMethods.IsPost(request.Method) || !request.HasFormContentType || !request.Form.TryGetValue(Field, out var values))
            return null;
        var text = new StringBuilder();
        foreach (var rune in values.ToString().EnumerateRunes())
            text.Append(Rune.IsControl(rune) ? " " : rune.ToString());
        return text.ToString().Trim();
    }
}
