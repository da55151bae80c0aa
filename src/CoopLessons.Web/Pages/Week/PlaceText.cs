using System.Text.Json;
using System.Text.Json.Serialization;
using CoopLessons.Core.Schedule;
using CoopLessons.Core.Units;

namespace CoopLessons.Web.Pages.Week;

/// <summary>Places and changes of the plan as a form or the note of a taken change carries them: short, and complete.</summary>
public static class PlaceText
{
    private static readonly JsonSerializerOptions Json = new(UnitBundle.Json) { WriteIndented = false, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingDefault };

    public static string Write(PlanPlace place) => JsonSerializer.Serialize(place, Json);

    /// <summary>Null where the text is none of a place.</summary>
    public static PlanPlace? Read(string? text) => Read<PlanPlace>(text) is { IsSound: true } place ? place : null;

    public static string WriteAll(IReadOnlyList<PlanChange> changes) => JsonSerializer.Serialize(changes, Json);

    /// <summary>Empty where the text is none of changes.</summary>
    public static IReadOnlyList<PlanChange> ReadAll(string? text) => Read<List<PlanChange>>(text) ?? [];

    private static T? Read<T>(string? text)
        where T : class
    {
        try
        {
            return text is null ? null : JsonSerializer.Deserialize<T>(text, Json);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
