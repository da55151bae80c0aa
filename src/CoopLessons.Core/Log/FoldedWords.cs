using System.Globalization;
using System.Text;

namespace CoopLessons.Core.Log;

/// <summary>
/// Words as they are compared: in small letters, taken apart as NFKD does (Unicode Standard Annex #15), without marks that
/// stand over or under a letter. An apostrophe joins; everything else that is neither letter nor digit parts.
/// </summary>
public static class FoldedWords
{
    /// <summary>The words in their order, none of them empty; empty for a text without a letter or digit.</summary>
    public static IReadOnlyList<string> Of(string text)
    {
        var words = new List<string>();
        var word = new StringBuilder();
        foreach (var rune in text.EnumerateRunes())
        {
            if (rune.Value is '\'' or '’' or 'ʼ')
                continue;
            var category = Rune.GetUnicodeCategory(rune);
            var bare = BareLetters.Of(Rune.ToLowerInvariant(rune));
            if (Rune.IsLetterOrDigit(rune) || category == UnicodeCategory.SpacingCombiningMark || bare != rune.ToString())
                word.Append(bare);
            else if (category is not (UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark))
                End();
        }

        End();
        return words;

        void End()
        {
            if (word.Length > 0)
                words.Add(word.ToString());
            word.Clear();
        }
    }

    /// <summary>One text for everything that folds alike: the words with one space between.</summary>
    public static string Key(string text) => string.Join(' ', Of(text));
}
