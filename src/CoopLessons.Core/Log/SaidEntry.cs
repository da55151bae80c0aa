using System.Globalization;
using System.Text.RegularExpressions;

namespace CoopLessons.Core.Log;

/// <summary>
/// What is heard in a sentence such as “forty minutes baking bread with Linnet”: lengths and names of the family's children.
/// It only proposes: the sentence stays as it was said.
/// </summary>
/// <param name="Lengths">Every length that was named, in minutes, 1–1440, in the order of the sentence.</param>
/// <param name="Learners">The children named, in the order in which they were given.</param>
/// <param name="Rest">The folded words that are neither, nor only join them to the rest; by these a thing is looked up.</param>
public sealed partial record SaidEntry(IReadOnlyList<int> Lengths, IReadOnlyList<Guid> Learners, IReadOnlyList<string> Rest)
{
    private const int LongestInMinutes = 1440;
    private static readonly string[] s_minutes = ["min", "mins", "minute", "minutes"];
    private static readonly string[] s_hours = ["h", "hr", "hrs", "hour", "hours"];

    /// <summary>Words that only join a length or a name to the rest.</summary>
    private static readonly string[] s_joining = ["with", "for", "and", "about", "took", "by", "together"];

    private static readonly Dictionary<string, int> s_ones = Numbered(
        "one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen", 1, 1);
    private static readonly Dictionary<string, int> s_tens = Numbered("twenty thirty forty fifty sixty seventy eighty ninety", 20, 10);

    /// <summary>The one length that was named; null where there is none, or where it is not clear which is meant.</summary>
    public int? Minutes => Lengths.Distinct().Take(2).ToList() is [var only] ? only : null;

    public bool UnderstoodAnything => Lengths.Count + Learners.Count > 0;

    /// <param name="text">As it was typed or dictated.</param>
    /// <param name="learners">The family's children by the names they are called.</param>
    public static SaidEntry Of(string text, IReadOnlyList<(Guid Id, string Name)> learners)
    {
        var words = Parted(text);
        var taken = new bool[words.Count];
        var lengths = new List<int>();
        for (var i = 0; i < words.Count; i++)
        {
            if (LengthAt(words, i) is not { } length)
                continue;
            // Half of a length misread is worse than none.
            if (length.Minutes is >= 1 and <= LongestInMinutes)
            {
                lengths.Add((int)length.Minutes);
                Array.Fill(taken, true, i, length.Words);
            }

            i += length.Words - 1;
        }

        var named = learners.Where(l => Named(words, FoldedWords.Of(l.Name), taken)).Select(l => l.Id).ToList();
        return new SaidEntry(lengths, named, [.. words.Where((w, i) => !taken[i] && !OnlyJoins(words, taken, i))]);
    }

    private static bool OnlyJoins(List<string> words, bool[] taken, int at) =>
        s_joining.Contains(words[at]) && (at + 1 < words.Count && (taken[at + 1] || OnlyJoins(words, taken, at + 1)) || at > 0 && taken[at - 1]);

    private static bool Named(List<string> words, IReadOnlyList<string> name, bool[] taken)
    {
        var found = false;
        for (var i = 0; name.Count > 0 && i + name.Count <= words.Count; i++)
        {
            if (!words.Skip(i).Take(name.Count).SequenceEqual(name))
                continue;
            Array.Fill(taken, true, i, name.Count);
            found = true;
        }

        return found;
    }

    /// <summary>Folded words, where a number and its unit written as one are two, and 1.5 stays one.</summary>
    private static List<string> Parted(string text) =>
    [
        .. Decimal().Split(text).SelectMany(part => Decimal().IsMatch(part) ? [part.Replace(',', '.')] : FoldedWords.Of(part).SelectMany(Loosened)),
    ];

    private static IEnumerable<string> Loosened(string word) =>
        NumberAndUnit().Match(word) is { Success: true } m ? m.Groups.Values.Skip(1).Where(g => g.Length > 0).Select(g => g.Value) : [word];

    private static (decimal Minutes, int Words)? LengthAt(List<string> words, int at)
    {
        if (QuartersAt(words, at) is { } quarters)
            return quarters;
        if (NumberAt(words, at) is not { } number)
            return null;
        var next = at + number.Words;
        // “Two and a half hours”.
        if (Are(words, next, "and", "a", "half") && IsOneOf(words, next + 3, s_hours))
            return (number.Value * 60 + 30, number.Words + 4);
        if (IsOneOf(words, next, s_minutes) && decimal.IsInteger(number.Value))
            return (number.Value, number.Words + 1);
        if (!IsOneOf(words, next, s_hours) || !decimal.IsInteger(number.Value * 60))
            return null;
        var (minutes, used) = (number.Value * 60, number.Words + 1);
        var after = at + used;
        if (Are(words, after, "and", "a", "half"))
            return (minutes + 30, used + 3);
        if (Are(words, after, "and", "a", "quarter"))
            return (minutes + 15, used + 3);
        var joined = Are(words, after, "and") ? 1 : 0;
        if (NumberAt(words, after + joined) is not { } more || more.Value >= 60 || !decimal.IsInteger(more.Value))
            return (minutes, used);
        if (IsOneOf(words, after + joined + more.Words, s_minutes))
            return (minutes + more.Value, used + joined + more.Words + 1);
        // “1 h 30”, as a length is written; “2 hours, 3 birds” is not.
        return words[at + number.Words] == "h" && joined == 0 && words[after].Length == 2 && char.IsAsciiDigit(words[after][0]) ? (minutes + more.Value, used + more.Words) : (minutes, used);
    }

    /// <summary>“Half an hour”, “a quarter of an hour”, “three quarters of an hour”, “half hour”.</summary>
    private static (decimal Minutes, int Words)? QuartersAt(List<string> words, int at)
    {
        var from = at + (Are(words, at, "a") ? 1 : 0);
        var (minutes, used) = Are(words, from, "half") ? (30, 1) : Are(words, from, "quarter") ? (15, 1) : Are(words, at, "three", "quarters") ? (45, 2) : (0, 0);
        if (used == 0)
            return null;
        var end = from + used;
        end += Are(words, end, "of") ? 1 : 0;
        end += Are(words, end, "an") ? 1 : 0;
        return Are(words, end, "hour") ? (minutes, end + 1 - at) : null;
    }

    private static (decimal Value, int Words)? NumberAt(List<string> words, int at)
    {
        if (at >= words.Count)
            return null;
        var word = words[at];
        if (char.IsAsciiDigit(word[0]))
            return word.Length <= 6 && decimal.TryParse(word, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var digits) ? (digits, 1) : null;
        if (s_tens.TryGetValue(word, out var tens))
            return at + 1 < words.Count && s_ones.TryGetValue(words[at + 1], out var ones) && ones < 10 ? (tens + ones, 2) : (tens, 1);
        if (s_ones.TryGetValue(word, out var number))
            return (number, 1);
        return word is "a" or "an" && (IsOneOf(words, at + 1, s_hours) || IsOneOf(words, at + 1, s_minutes)) ? (1, 1) : null;
    }

    private static bool Are(List<string> words, int at, params string[] these) => at + these.Length <= words.Count && these.Select((t, i) => words[at + i] == t).All(same => same);

    private static bool IsOneOf(List<string> words, int at, string[] these) => at < words.Count && these.Contains(words[at]);

    private static Dictionary<string, int> Numbered(string words, int first, int step) =>
        words.Split(' ').Select((w, i) => (w, i)).ToDictionary(p => p.w, p => first + p.i * step);

    [GeneratedRegex(@"(?<![\d.,])(\d{1,3}[.,]\d{1,2})(?![\d.,]*\d)", RegexOptions.CultureInvariant)]
    private static partial Regex Decimal();

    [GeneratedRegex(@"^(\d{1,4})(min|mins|minutes|h|hr|hrs)(\d{2})?(min|mins|minutes)?$", RegexOptions.CultureInvariant)]
    private static partial Regex NumberAndUnit();
}
