using CoopLessons.Core.Families;

namespace CoopLessons.Core.Prepare.Supplies;

/// <summary>A word that names a major allergen or something made of it.</summary>
/// <param name="Words">As one would write it; compared word by word, without case and plural.</param>
/// <param name="Source">Who says so; "common practice, no source" or "from memory" where nobody was found.</param>
public sealed record AllergenWord(string Words, Allergen Allergen, string Source);

/// <summary>A word that names none of the nine, though somebody with that allergy may have been told to keep away from it.</summary>
/// <param name="Why">Half a sentence that goes on after the word.</param>
public sealed record BesideAllergen(string Words, Allergen Allergen, string Why, string Source);

/// <summary>A word found in a name.</summary>
/// <param name="Word">As the table writes it.</param>
public sealed record FoundAllergen(Allergen Allergen, string Word, string Source);

/// <summary>
/// Which of the nine major allergens the words of a name point to. It finds what is written, and misses what is not: an
/// empty answer says nothing about a good, and a label goes before every answer.
/// </summary>
public static class AllergenWords
{
    /// <summary>Each phrase once, the longest first, with its rows: none for a near miss, two where it names two allergens.</summary>
    private static readonly IReadOnlyList<(IReadOnlyList<string> Words, IReadOnlyList<AllergenWord> Rows)> Table =
    [
        .. AllergenTable.Words.GroupBy(w => string.Join(' ', GoodName.Words(w.Words)), StringComparer.Ordinal)
            .Select(g => (GoodName.Words(g.Key), (IReadOnlyList<AllergenWord>)[.. g]))
            .Concat(AllergenTable.NearMisses.Select(n => (GoodName.Words(n), (IReadOnlyList<AllergenWord>)[])))
            .OrderByDescending(w => w.Item1.Count),
    ];

    private static readonly IReadOnlyList<(IReadOnlyList<string> Words, BesideAllergen Row)> Beside =
        [.. AllergenTable.Beside.Select(w => (GoodName.Words(w.Words), w))];

    /// <summary>Every word that is looked for.</summary>
    public static IReadOnlyList<AllergenWord> All => AllergenTable.Words;

    /// <summary>
    /// What the words of a name point to, each allergen once, in the order of the law's list. Longer phrases are read
    /// before shorter ones, and a phrase takes its words: "peanut butter" holds no butter, "cocoa butter" no milk.
    /// </summary>
    public static IReadOnlyList<FoundAllergen> In(string name)
    {
        var words = GoodName.Words(name).Select(w => (string?)w).ToArray();
        var found = new List<FoundAllergen>();
        foreach (var (phrase, rows) in Table)
        {
            while (At(words, phrase) is { } at)
            {
                words.AsSpan(at, phrase.Count).Clear();
                found.AddRange(rows.Select(r => new FoundAllergen(r.Allergen, r.Words, r.Source)));
            }
        }

        return [.. found.OrderBy(f => f.Allergen).DistinctBy(f => f.Allergen)];
    }

    /// <summary>Words that stand beside an allergen without being one.</summary>
    public static IReadOnlyList<BesideAllergen> BesideIn(string name, Allergen allergen)
    {
        string?[] words = [.. GoodName.Words(name)];
        return [.. Beside.Where(b => b.Row.Allergen == allergen && At(words, b.Words) is not null).Select(b => b.Row)];
    }

    private static int? At(string?[] words, IReadOnlyList<string> phrase)
    {
        for (var i = 0; i + phrase.Count <= words.Length; i++)
        {
            if (Enumerable.Range(0, phrase.Count).All(j => words[i + j] == phrase[j]))
                return i;
        }

        return null;
    }
}
