using CoopLessons.Data.Sealing;

namespace CoopLessons.Web.Sealing;

/// <summary>A form that came back because it would have changed a sealed year, with everything that it said.</summary>
/// <param name="Says">In a parent's words.</param>
/// <param name="Action">Where the form was sent.</param>
/// <param name="Fields">All of them, to be sent once more.</param>
/// <param name="Files">Names of the fields that held files, which a browser does not give back.</param>
/// <param name="MayCorrect">A guardian sent it, and it can be sent again as a late correction.</param>
/// <param name="Why">As typed before; empty at first.</param>
/// <param name="Fault">What is wrong with it; null for nothing.</param>
public sealed record SealRefusal(
    string Says, Guid YearId, string Action, IReadOnlyList<KeyValuePair<string, string>> Fields, IReadOnlyList<string> Files, bool MayCorrect, string Why, string? Fault)
{
    private static readonly string[] Unsaid = ["Version", "From", "handler", "OtherBefore"];

    public static SealRefusal Of(SealedYearException refused, HttpRequest request, bool isGuardian)
    {
        var form = HttpMethods.IsPost(request.Method) && request.HasFormContentType ? request.Form : null;
        var fields = form is null ? [] : form.Where(f => f.Key is not ("__RequestVerificationToken" or LateWhy.Field))
            .SelectMany(f => f.Value.Select(v => new KeyValuePair<string, string>(f.Key, v ?? ""))).ToList();
        return new SealRefusal(
            refused.Message, refused.SchoolYearId, request.PathBase + request.Path + request.QueryString, fields,
            form is null ? [] : [.. form.Files.Where(f => f.Length > 0).Select(f => f.Name).Distinct()],
            form is not null && isGuardian && refused.MayCorrect, LateWhy.Typed(request) ?? "", LateWhy.Fault(request));
    }

    /// <summary>What somebody typed or chose, in words, without what a form carries for itself or lists row by row.</summary>
    public IEnumerable<(string Name, string Value)> Typed => Fields
        .Where(f => f.Value.Length > 0 && f.Value is not ("true" or "false") && !Guid.TryParse(f.Value, out _) && !f.Key.StartsWith("__", StringComparison.Ordinal) && !f.Key.Contains('['))
        .Select(f => (Name: f.Key.Split('.')[^1], f.Value)).Where(f => !Unsaid.Contains(f.Name)).Select(f => (InWords(f.Name), f.Value));

    // OtherLength is a field, "Other length" a word.
    private static string InWords(string name) =>
        string.Concat(name.Select((c, i) => i == 0 ? char.ToUpperInvariant(c).ToString() : char.IsUpper(c) ? $" {char.ToLowerInvariant(c)}" : c.ToString()));
}
