using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace CoopLessons.Core.Sharing;

/// <summary>What parents call a spot of a unit, and what stands there.</summary>
public static class SpotWords
{
    private static readonly Dictionary<string, string> Names = new(StringComparer.Ordinal)
    {
        ["title"] = "title",
        ["summary"] = "what it is about",
        ["weeks"] = "weeks",
        ["kind"] = "kind of work",
        ["does"] = "what you do",
        ["handsOnMinutes"] = "minutes",
        ["adultNeed"] = "adult",
        [UnitSpot.Place] = "place",
        [UnitSpot.Waiting] = "wait",
        ["name"] = "spelling",
        ["what"] = "spelling",
        [UnitSpot.Amount] = "amount",
        ["pages"] = "pages",
        ["use"] = "how it is read",
        ["author"] = "author",
        ["isbn"] = "ISBN",
        ["note"] = "note",
        ["caution"] = "caution",
        ["takesDays"] = "days it takes",
        ["keepsDays"] = "days it keeps",
        ["tendEveryDays"] = "days from one look to the next",
        ["ages"] = "ages",
    };

    private static readonly Dictionary<string, (string One, string Many)> Lists = new(StringComparer.Ordinal)
    {
        [UnitTree.Subjects] = ("subject", "subjects"),
        ["variants"] = ("ages", "ages"),
        ["supplies"] = ("supply", "supplies"),
        ["printables"] = ("print", "prints"),
        ["books"] = ("book", "books"),
        ["hazards"] = ("hazard", "hazards"),
        ["ingredients"] = ("ingredient", "ingredients"),
        ["ahead"] = ("begun ahead:", "things begun ahead"),
    };

    /// <summary>Texts too long for a line: that they differ is told, and they are shown beside each other.</summary>
    internal static bool IsLong(UnitSpot spot) => (spot.Field, spot.Part) is ("summary" or "does", null) or (_, "does" or "note" or "caution");

    /// <summary>A list for its order, such as “supplies”; an entry, such as “supply string”; its part after it, such as “supply string, amount”; else the field.</summary>
    internal static string Name(UnitSpot spot, string? entry)
    {
        if (spot.Entry is null)
            return spot.IsSequence ? Lists[spot.Field!].Many : Names[spot.Field!];
        if (spot.Field == UnitTree.After)
            return $"“after {entry}”";
        var of = spot.Field is "variants" or "hazards" ? Apart(spot.Entry.Split(" #")[0]).Replace("-", " to ", StringComparison.Ordinal) : entry;
        // An allergen is called by its own name.
        return $"{Lists[spot.Field!].One} {of}" + (spot.Part is null ? "" : $", {Names.GetValueOrDefault(spot.Part, Apart(spot.Part))}");
    }

    /// <summary>What stands at a spot, in words; “none” for nothing. A whole activity is its title, an entry what is known of it first.</summary>
    /// <param name="json">A value of a <see cref="UnitDifference"/> or <see cref="Collision"/> at this spot.</param>
    public static string Value(UnitSpot spot, string? json)
    {
        var value = json is null ? null : JsonNode.Parse(json);
        return (spot, value) switch
        {
            (_, null) => "none",
            ({ IsSequence: true }, JsonArray keys) => string.Join(", ", keys.Select(k => ((string)k!).ToLowerInvariant())),
            ({ Field: null }, JsonObject activity) => $"“{(string?)activity["title"]}”",
            ({ Field: UnitSpot.Place }, JsonObject place) => $"week {place["week"]}, number {place["order"]}",
            ({ Field: UnitSpot.Waiting }, JsonObject wait) => (int?)wait["waitingMinutes"] is null or 0 ? "none" : $"{wait["waitingMinutes"]} min ({wait["waitingFor"]})",
            ({ Part: UnitSpot.Amount }, JsonObject amount) => Amount(amount),
            ({ Part: null, Field: "supplies" }, JsonObject supply) => Amount(supply),
            ({ Part: null, Field: "variants" }, JsonObject variant) => $"“{(string?)variant["does"]}”",
            ({ Part: null, Field: "hazards" }, JsonObject hazard) => $"“{(string?)hazard["caution"]}”",
            ({ Part: null, Field: "ingredients" }, JsonObject ingredient) => ingredient["allergens"] is JsonArray { Count: > 0 } met ? string.Join(", ", met.Select(a => Apart((string)a!))) : "no major allergen",
            ({ Part: null, Field: "printables" }, JsonObject print) => $"{print["pages"]} pages",
            ({ Part: null, Field: "books" }, JsonObject book) => Apart((string)book["use"]!),
            ({ Part: null, Field: "ahead" }, JsonObject ahead) => $"{ahead["takesDays"]} days",
            ({ Activity: not null, Field: UnitTree.Subjects }, JsonValue weight) => (int)weight == 0 ? "touched" : $"share {weight}",
            ({ Field: "kind" or "adultNeed" } or { Part: "kind" or "use" }, JsonValue word) => Apart((string)word!),
            (_, JsonValue text) when text.GetValueKind() == JsonValueKind.String => $"“{(string?)text}”",
            (_, JsonValue truth) when truth.GetValueKind() == JsonValueKind.True => "in it",
            _ => value!.ToJsonString(),
        };
    }

    private static string Amount(JsonObject of) =>
        $"{((decimal)of["quantity"]!).ToString("0.####", CultureInfo.InvariantCulture)} {of["unit"]} " + ((string)of["per"]! == "group" ? "for all" : $"for each {of["per"]}");

    /// <summary>The words of the bundle, set apart: <c>smallParts</c> is small parts.</summary>
    internal static string Apart(string word)
    {
        var text = new StringBuilder();
        foreach (var c in word)
            text.Append(char.IsAsciiLetterUpper(c) ? $" {char.ToLowerInvariant(c)}" : c);
        return text.ToString().Trim();
    }
}
