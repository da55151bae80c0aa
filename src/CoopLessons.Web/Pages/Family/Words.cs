using CoopLessons.Core.Calendar;
using CoopLessons.Core.Families;

namespace CoopLessons.Web.Pages.Families;

/// <summary>How the family pages say things.</summary>
public static class Words
{
    public static readonly IReadOnlyList<Weekdays> Days =
        [Weekdays.Monday, Weekdays.Tuesday, Weekdays.Wednesday, Weekdays.Thursday, Weekdays.Friday, Weekdays.Saturday, Weekdays.Sunday];

    public static string Of(Allergen allergen) => allergen switch
    {
        Allergen.TreeNuts => "tree nuts",
        _ => allergen.ToString().ToLowerInvariant(),
    };

    public static string Of(Weekdays days) => days switch
    {
        Weekdays.None => "no day",
        Weekdays.MondayToFriday => "Monday to Friday",
        _ => string.Join(", ", Days.Where(d => days.HasFlag(d))),
    };

    public static string Of(DayRange days) =>
        days.First == days.Last ? days.First.ToString("d MMMM yyyy") : $"{days.First:d MMMM yyyy} to {days.Last:d MMMM yyyy}";

    /// <summary>The span of a child's levels in short: “grade 2 to grade 4”.</summary>
    public static string Levels(IReadOnlyCollection<Level> levels)
    {
        if (levels.Count == 0)
            return "levels not set";
        var (low, high) = (levels.MinBy(l => l.Grade), levels.MaxBy(l => l.Grade));
        return low == high ? low.Name : $"{low.Name} to {high.Name}";
    }
}
