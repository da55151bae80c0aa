using CoopLessons.Core.Coop;
using CoopLessons.Core.Families;

namespace CoopLessons.Core.Tests.Coop;

/// <summary>The four families of the Millrace co-op, with names in place of ids.</summary>
internal static class Millrace
{
    public static readonly string[] Families = ["Alder", "Birch", "Cedar", "Dogwood"];

    public static Guid Id(string name) => new(name.Aggregate(17, (hash, c) => unchecked(hash * 31 + c)), 0, 0, [0, 0, 0, 0, 0, 0, 0, 9]);

    public static Guid Id(int kind, int number) => new(kind, (short)number, 0, [0, 0, 0, 0, 0, 0, 0, 9]);

    public static RoomAdult Adult(string name, string family, string? household = null, bool guest = false) =>
        new(Id(name), name, Id(family), family) { Household = household is null ? null : Id(household), Guest = guest };

    public static RoomChild Child(string name, string family, int age, params Allergen[] allergies) => new(Id(name), name, Id(family), age, allergies);

    public static CoverRoom Barn(RoomAdult[] adults, params RoomChild[] children) => new(Id("barn"), "the barn", "10:00", adults, children);

    public static readonly DateOnly First = new(2027, 1, 7);

    public static DateOnly[] Thursdays(int count) => [.. Enumerable.Range(0, count).Select(i => First.AddDays(7 * i))];
}
