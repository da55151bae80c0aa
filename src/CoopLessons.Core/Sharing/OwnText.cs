
namespace CoopLessons.Core.Sharing;

/// <summary>A text of one's own in the place of two others.</summary>
public static class OwnText
{
    /// <summary>What is wrong with a text at a spot, in a sentence; null where it can stand.</summary>
    public static string? Fault(UnitSpot spot, string text)
    {
        if (!spot.IsText)
            return "Only a text can be replaced by one of your own.";
        var length = text.EnumerateRunes().Count();
        var most = Longest(spot);
        // A note may be nothing; everything else says something.
        if (string.IsNullOrWhiteSpace(text) && spot.Part != "note")
            return "Write a text, or choose one of the two.";
        if (length > most)
            return $"The text has {length} characters; at most {most} have room here.";
        for (var i = 0; i < text.Length; i++)
        {
            if (char.IsHighSurrogate(text[i]) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
                i++;
            else if (char.IsSurrogate(text[i]))
                return "The text holds half a character.";
        }

        return null;
    }

    /// <summary>Characters (Unicode scalar values) at most, as the bundle's schema has it; for a spot that <see cref="UnitSpot.IsText"/>.</summary>
    public static int Longest(UnitSpot spot) => (spot.Field, spot.Part) switch
    {
        ("title", _) => 120,
        ("summary", _) => 2000,
        ("does", null) => 4000,
        (_, "does") => 1000,
        _ => 500,
    };

    internal static Leaf? Of(string text) => text.Length == 0 ? null : new Leaf(CanonicalJson.Exactly(text));
}
