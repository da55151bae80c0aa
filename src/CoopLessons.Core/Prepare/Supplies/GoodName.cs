using System.Text;

namespace CoopLessons.Core.Prepare.Supplies;

/// <summary>
/// When two names mean one good: case, hyphens, plurals, and what stands after a comma, in brackets or after "for the" make
/// no difference; every other word does.
/// </summary>
public static class GoodName
{
    private static readonly Dictionary<string, string> Odd = new(StringComparer.Ordinal)
    {
        ["loaves"] = "loaf",
        ["leaves"] = "leaf",
        ["knives"] = "knife",
        ["shelves"] = "shelf",
        ["halves"] = "half",
        ["mice"] = "mouse",
        ["geese"] = "goose",
        ["feet"] = "foot",
        ["teeth"] = "tooth",
        ["potatoes"] = "potato",
        ["tomatoes"] = "tomato",
        ["mangoes"] = "mango",
        ["matzoes"] = "matzo",
        ["couscous"] = "couscous",
        ["quiches"] = "quiche",
        ["brioches"] = "brioche",
        // After i and u an s mostly belongs to the word (iris, hummus), but not in these.
        ["aiolis"] = "aioli",
        ["biscottis"] = "biscotti",
        ["gnocchis"] = "gnocchi",
        ["halloumis"] = "halloumi",
        ["macaronis"] = "macaroni",
        ["raviolis"] = "ravioli",
        ["scampis"] = "scampi",
        ["shoyus"] = "shoyu",
        ["spaghettis"] = "spaghetti",
        ["surimis"] = "surimi",
        ["tahinis"] = "tahini",
        ["tamaris"] = "tamari",
        ["tofus"] = "tofu",
        // Those whose one ends on "ie" and not on "y".
        ["blondies"] = "blondie",
        ["bries"] = "brie",
        ["brownies"] = "brownie",
        ["cookies"] = "cookie",
        ["smoothies"] = "smoothie",
        ["veggies"] = "veggie",
        ["goodies"] = "goodie",
        ["hoagies"] = "hoagie",
        ["potpies"] = "potpie",
        ["magpies"] = "magpie",
        ["pinkies"] = "pinkie",
        ["pierogies"] = "pierogi",
    };

    /// <summary>
    /// The name as it is compared. Empty only where the name has no letter or digit outside what is left aside; then the
    /// whole text is taken.
    /// </summary>
    public static string Key(string name)
    {
        var key = string.Join(' ', Words(Proper(name)));
        return key.Length > 0 ? key : string.Join(' ', Words(name));
    }

    /// <summary>The name without what is left aside, as one would write it on a list.</summary>
    public static string Proper(string name)
    {
        var plain = new StringBuilder(name.Length);
        var depth = 0;
        foreach (var c in name)
        {
            if (c is '(' or '[')
                depth++;
            else if (c is ')' or ']')
                depth = Math.Max(0, depth - 1);
            else if (depth == 0)
                plain.Append(c);
        }

        var text = plain.ToString();
        foreach (var end in (ReadOnlySpan<string>)[",", ";", ":", " for the "])
        {
            if (text.IndexOf(end, StringComparison.OrdinalIgnoreCase) is var at and > 0)
                text = text[..at];
        }

        text = string.Join(' ', text.Split(' ', StringSplitOptions.RemoveEmptyEntries));
        return text.Length > 0 ? text : name.Trim();
    }

    /// <summary>The words of a text in small letters, each in the singular.</summary>
    public static IReadOnlyList<string> Words(string text)
    {
        var words = new List<string>();
        var word = new StringBuilder();
        foreach (var c in text.Normalize())
        {
            if (char.IsLetterOrDigit(c))
                word.Append(char.ToLowerInvariant(c));
            else if (c is not ('\'' or '’') && word.Length > 0)
                End();
        }

        End();
        return words;

        void End()
        {
            if (word.Length > 0)
                words.Add(Singular(word.ToString()));
            word.Clear();
        }
    }

    /// <summary>
    /// Whether two names speak of the same stuff: all words of one stand in the other, or they end on the same word, such as
    /// "slices of bread" and "wheat bread". Wide on purpose: it finds the ingredients behind a supply.
    /// </summary>
    public static bool Touches(string one, string other)
    {
        var (a, b) = (Words(Proper(one)), Words(Proper(other)));
        return a.Count > 0 && b.Count > 0 && (a[^1] == b[^1] || a.All(b.Contains) || b.All(a.Contains));
    }

    private static string Singular(string word)
    {
        if (Odd.TryGetValue(word, out var odd))
            return odd;
        if (word.Length > 4 && word.EndsWith("ies", StringComparison.Ordinal))
            return word[..^3] + "y";
        if (word.Length > 4 && (EndsWith("sses") || EndsWith("shes") || EndsWith("ches") || EndsWith("xes")))
            return word[..^2];
        return word.Length > 3 && EndsWith("s") && !EndsWith("ss") && !EndsWith("us") && !EndsWith("is") ? word[..^1] : word;

        bool EndsWith(string end) => word.EndsWith(end, StringComparison.Ordinal);
    }
}
