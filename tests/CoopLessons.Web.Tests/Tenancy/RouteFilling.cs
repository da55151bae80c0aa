using System.Text.RegularExpressions;

namespace CoopLessons.Web.Tests.Tenancy;

/// <summary>Turns a page's route into an address.</summary>
internal static partial class RouteFilling
{
    /// <param name="id">Gives the id for a parameter's name.</param>
    public static string Fill(string template, Func<string, string> id) => "/" + Parameter().Replace(template, match =>
    {
        var name = match.Groups["name"].Value;
        return name switch
        {
            "date" => "2026-03-12",
            "week" => "2026-W11",
            "ending" => "csv",
            // The place of a pathway: here one of a family's own. Elsewhere a status.
            "code" => template.Contains("{pathwayId}", StringComparison.Ordinal) ? "own" : "404",
            "size" => "short",
            // A subject by its key: one of the family's own.
            "key" => $"own-{Guid.Parse(id("subject")):N}",
            "secret" => new string('0', 64),
            _ => id(name),
        };
    }).TrimStart('/');

    /// <summary>Names of a route's parameters.</summary>
    public static IEnumerable<string> Names(string template) => Parameter().Matches(template).Select(m => m.Groups["name"].Value);

    [GeneratedRegex(@"\{(?<name>\w+)[^}]*\}")]
    private static partial Regex Parameter();
}
