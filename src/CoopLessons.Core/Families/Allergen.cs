namespace CoopLessons.Core.Families;

/// <summary>The nine major food allergens, 21 U.S.C. § 321(qq) (FALCPA 2004 and the FASTER Act of 2021).</summary>
public enum Allergen
{
    Milk,
    Eggs,
    Fish,
    Shellfish,
    TreeNuts,
    Peanuts,
    Wheat,
    Soybeans,
    Sesame,
}
