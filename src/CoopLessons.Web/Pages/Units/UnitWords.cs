using System.Globalization;
using System.Text;
using CoopLessons.Core.Families;
using CoopLessons.Core.Units;

namespace CoopLessons.Web.Pages.Units;

/// <summary>The words in which units are spoken of.</summary>
public static class UnitWords
{
    /// <summary>Units of measure that the bundle's schema knows.</summary>
    public static IReadOnlyList<string> Measures { get; } = [.. Core.Prepare.Supplies.Measures.All.Select(m => m.Word)];

    public static string Of(ActivityKind kind) => kind switch
    {
        ActivityKind.Talk => "talking it over",
        ActivityKind.ReadAloud => "reading aloud",
        ActivityKind.Reading => "reading alone",
        ActivityKind.Writing => "writing",
        ActivityKind.Making => "making",
        ActivityKind.Cooking => "cooking",
        ActivityKind.Experiment => "experiment",
        ActivityKind.Observing => "watching and noting",
        ActivityKind.Drawing => "drawing",
        ActivityKind.Music => "music",
        ActivityKind.Movement => "movement",
        ActivityKind.Outing => "outing",
        ActivityKind.Game => "game",
        _ => "finding out",
    };

    public static string Of(AdultNeed need) => need switch
    {
        AdultNeed.Alone => "alone",
        AdultNeed.Beside => "somebody beside",
        _ => "an adult's hands on",
    };

    public static string Of(HazardKind kind) => kind switch
    {
        HazardKind.SmallParts => "small parts",
        HazardKind.ButtonCells => "button cells",
        HazardKind.FoodTemperature => "food kept hot or cold",
        HazardKind.RawFlour => "raw flour",
        _ => kind.ToString().ToLowerInvariant(),
    };

    public static string Of(Allergen allergen) => allergen == Allergen.TreeNuts ? "tree nuts" : allergen.ToString().ToLowerInvariant();

    public static string Of(BookUse use) => use switch
    {
        BookUse.Heard => "read aloud to everybody",
        BookUse.ReadAlone => "read alone",
        BookUse.ListenedTo => "listened to",
        _ => "looked through",
    };

    public static string Of(AheadKind kind) => kind switch
    {
        AheadKind.Seeds => "seeds to sow",
        AheadKind.Eggs => "eggs to set",
        AheadKind.Crystals => "crystals to grow",
        AheadKind.Sourdough => "a sourdough or another ferment",
        AheadKind.Order => "something to order",
        AheadKind.Arrangement => "a visit or a person to ask",
        _ => "something else",
    };

    public static string Of(Per per) => per switch
    {
        Per.Learner => "for each learner",
        Per.Pair => "for every two",
        Per.Family => "for the family",
        _ => "for the group",
    };

    /// <summary>An amount without idle zeros and with its measure: <c>2.5 cup</c>; pieces need no word.</summary>
    public static string Amount(decimal quantity, string measure)
    {
        var number = quantity.ToString("#,0.###", CultureInfo.InvariantCulture);
        return measure == "piece" ? number : $"{number} {measure}";
    }

    /// <summary>Minutes as they are said: <c>45 min</c>, <c>2 h</c>, <c>2 h 10</c>.</summary>
    public static string Length(int minutes) =>
        minutes < 60 ? $"{minutes} min" : minutes % 60 == 0 ? $"{minutes / 60} h" : string.Create(CultureInfo.InvariantCulture, $"{minutes / 60} h {minutes % 60:00}");

    /// <summary>A waiting time, which may last for weeks: <c>75 min</c>, <c>14 h</c>, <c>6 days</c>, <c>1 day 9 h</c>.</summary>
    public static string Wait(int minutes)
    {
        const int day = 24 * 60;
        if (minutes <= 90)
            return $"{minutes} min";
        var days = minutes / day;
        var words = days == 0 ? "" : days == 1 ? "1 day" : $"{days} days";
        return (words + " " + (minutes % day == 0 ? "" : Length(minutes % day))).Trim();
    }

    /// <summary><c>20 min, then 75 min while the dough rises</c>.</summary>
    public static string Time(int handsOn, int waiting, string waitingFor)
    {
        if (waiting == 0)
            return Length(handsOn);
        return $"{Length(handsOn)}, then {Wait(waiting)}{(waitingFor.Length > 0 ? $" while {waitingFor}" : " of waiting")}";
    }

    public static string Count(int number, string one, string many) => number == 1 ? $"1 {one}" : string.Create(CultureInfo.InvariantCulture, $"{number:#,0} {many}");

    public static string Date(DateOnly date, DateOnly today) =>
        date.ToString(date.Year == today.Year ? "dddd d MMMM" : "dddd d MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>Where a taken unit stands: <c>week 2 of 4</c>, or when it begins or ended.</summary>
    public static string Running(DateOnly monday, int weeks, DateOnly today)
    {
        var week = Math.DivRem(today.DayNumber - monday.DayNumber, 7, out _) + (today < monday ? 0 : 1);
        if (today < monday)
            return $"starts on {Date(monday, today)}";
        return week > weeks ? $"ended on {Date(monday.AddDays(weeks * 7 - 1), today)}" : $"week {week} of {weeks}";
    }

    public static string Joined(IEnumerable<string> all) => all.ToList() switch
    {
        [] => "",
        [var one] => one,
        [.. var first, var last] => $"{string.Join(", ", first)} and {last}",
    };

    /// <summary>Lower-case words joined by hyphens, at most <paramref name="longest"/> long; <paramref name="otherwise"/> where no letter is left.</summary>
    public static string Slug(string title, int longest, string otherwise)
    {
        const string accented = "àáâãäåçèéêëìíîïñòóôõöøùúûüýÿ";
        const string plain = "aaaaaaceeeeiiiinoooooouuuuyy";
        var slug = new StringBuilder();
        foreach (var c in title.ToLowerInvariant())
        {
            var letter = accented.IndexOf(c, StringComparison.Ordinal) is >= 0 and var at ? plain[at] : c;
            if (char.IsAsciiLetterOrDigit(letter))
                slug.Append(letter);
            else if (slug.Length > 0 && slug[^1] != '-' && c is not ('\'' or '’'))
                slug.Append('-');
        }

        if (slug.Length > longest)
            slug.Length = longest;
        var words = slug.ToString().Trim('-');
        return words.Length > 0 ? words : otherwise;
    }
}
