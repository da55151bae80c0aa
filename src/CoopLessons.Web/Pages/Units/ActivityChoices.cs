using CoopLessons.Core.Families;
using CoopLessons.Core.Units;
using Microsoft.AspNetCore.Mvc.Rendering;

namespace CoopLessons.Web.Pages.Units;

/// <summary>What the lists of an activity's form offer.</summary>
public static class ActivityChoices
{
    public static IReadOnlyList<Allergen> Allergens { get; } = Enum.GetValues<Allergen>();

    public static IEnumerable<SelectListItem> Kinds => All<ActivityKind>(UnitWords.Of);
    public static IEnumerable<SelectListItem> Hazards => All<HazardKind>(UnitWords.Of);
    public static IEnumerable<SelectListItem> Uses => All<BookUse>(UnitWords.Of);
    public static IEnumerable<SelectListItem> Aheads => All<AheadKind>(UnitWords.Of);
    public static IEnumerable<SelectListItem> For => All<Per>(UnitWords.Of);
    public static IEnumerable<SelectListItem> Measures => UnitWords.Measures.Select(m => new SelectListItem(m, m));
    public static IReadOnlyList<AdultNeed> Needs { get; } = Enum.GetValues<AdultNeed>();

    private static IEnumerable<SelectListItem> All<T>(Func<T, string> word)
        where T : struct, Enum => Enum.GetValues<T>().Select(v => new SelectListItem(word(v), v.ToString()));
}
