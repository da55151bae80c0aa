namespace CoopLessons.Core.Sharing;

/// <summary>How many entries a bundle's lists hold at most, as <c>unit-bundle.schema.json</c> has it.</summary>
internal static class ListRoom
{
    public const int Activities = 400;

    /// <summary>The unit's own subjects.</summary>
    public const int Subjects = 30;

    /// <summary>By the member's name in an activity.</summary>
    public static IReadOnlyDictionary<string, int> OfActivity { get; } = new Dictionary<string, int>(StringComparer.Ordinal)
    {
        ["subjects"] = 8,
        ["touches"] = 8,
        ["after"] = 8,
        ["ahead"] = 8,
        ["variants"] = 6,
        ["supplies"] = 40,
        ["printables"] = 10,
        ["books"] = 10,
        ["hazards"] = 10,
        ["ingredients"] = 40,
    };
}
