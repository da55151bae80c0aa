using CoopLessons.Data.OwnLists;

namespace CoopLessons.Web.Pages.Families.Lists;

/// <summary>How the pages about children's lists say things.</summary>
public static class ListWords
{
    public static string Of(ReadingLevel level) => level switch
    {
        ReadingLevel.Pictures => "pictures",
        ReadingLevel.ShortWords => "short words",
        _ => "all the words",
    };

    public static string More(ReadingLevel level) => level switch
    {
        ReadingLevel.Pictures => "a large picture and two words at most",
        ReadingLevel.ShortWords => "the title and one short sentence",
        _ => "everything that the activity says for this child",
    };

    public static string State(OwnList? list) => list is not { Shown: true } ? "no list" : $"{Of(list.Reading)}, {(list.HasPin ? "with a PIN" : "no PIN yet")}";

    /// <summary>Why a PIN is none; null where it may be one.</summary>
    public static string? Fault(string pin)
    {
        if (pin.Length is < OwnList.ShortestPin or > OwnList.LongestPin || !pin.All(char.IsAsciiDigit))
            return $"A PIN has {OwnList.ShortestPin} to {OwnList.LongestPin} digits.";
        var steps = pin.Zip(pin.Skip(1), (a, b) => b - a).Distinct().ToList();
        return steps is [0] or [1] or [-1] ? "That is the first one that a sister or brother tries. Choose digits that do not follow each other." : null;
    }
}
