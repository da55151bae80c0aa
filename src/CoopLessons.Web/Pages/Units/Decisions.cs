using System.Text.Json;
using System.Text.Json.Nodes;
using CoopLessons.Core.Sharing;
using Microsoft.AspNetCore.Mvc.ModelBinding;

namespace CoopLessons.Web.Pages.Units;

/// <summary>What a form says of one collision.</summary>
public sealed class DecisionInput
{
    /// <summary>As <see cref="Collided.Key"/> wrote it.</summary>
    public string? Spot { get; set; }

    /// <summary>Null for later.</summary>
    public Choice? Choice { get; set; }
    public string? Text { get; set; }
}

/// <summary>Something to be decided, as a page shows it.</summary>
public sealed record Collided(Collision Collision, DecisionInput Input)
{
    public string Key => KeyOf(Collision.Spot);

    /// <summary>Whole texts, one above the other on a phone.</summary>
    public string Here => Shown(Collision.Spot, Collision.Mine);

    public string There => Shown(Collision.Spot, Collision.Theirs);

    public string Before => Shown(Collision.Spot, Collision.Base);

    public static string KeyOf(UnitSpot spot) => JsonSerializer.Serialize(new[] { spot.Activity, spot.Field, spot.Entry, spot.Part });

    public static IReadOnlyList<Collided> Of(UnitMerge merge, IReadOnlyCollection<DecisionInput> said) =>
        [.. merge.Collisions.Select(c => new Collided(c, said.FirstOrDefault(d => d.Spot == KeyOf(c.Spot)) ?? new DecisionInput { Spot = KeyOf(c.Spot) }))];

    /// <summary>The decisions of a form; what is wrong with one stands beside it. Something that is to be decided no longer is passed over.</summary>
    public static IReadOnlyCollection<Decision> Read(UnitMerge merge, IReadOnlyList<DecisionInput> said, ModelStateDictionary faults)
    {
        var decided = new List<Decision>();
        foreach (var (i, collided) in Of(merge, said).Index())
        {
            var (spot, input) = (collided.Collision.Spot, collided.Input);
            if (input.Choice is not { } choice)
                continue;
            var text = input.Text?.ReplaceLineEndings("\n") ?? "";
            if (!Enum.IsDefined(choice))
                faults.AddModelError($"Decisions[{i}].Choice", "Choose one of these.");
            else if (choice == Choice.OwnText && (OwnText.Fault(spot, text) ?? Control(text)) is { } fault)
                faults.AddModelError($"Decisions[{i}].Text", fault);
            else
                decided.Add(new Decision(spot, choice, choice == Choice.OwnText ? text : null));
        }

        return decided;
    }

    private static string? Control(string text) => text.Any(c => char.IsControl(c) && c is not ('\n' or '\t')) ? "The text holds signs that cannot be shown." : null;

    private static string Shown(UnitSpot spot, string? json) => (json is null ? null : JsonNode.Parse(json)) switch
    {
        null => "not there",
        JsonValue text when spot.IsText && text.GetValueKind() == JsonValueKind.String => (string)text!,
        JsonObject whole when spot is { Activity: not null, Field: null } => $"Week {whole["week"]}, {whole["handsOnMinutes"]} minutes: {(string?)whole["title"]}\n{(string?)whole["does"]}",
        _ => SpotWords.Value(spot, json),
    };
}
