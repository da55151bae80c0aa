using CoopLessons.Core.Families;
using CoopLessons.Core.Units;

namespace CoopLessons.Core.Coop;

/// <summary>An adult in a room.</summary>
/// <param name="Name">Without the family's: “Iris”.</param>
/// <param name="FamilyName">“Alder”.</param>
public sealed record RoomAdult(Guid Id, string Name, Guid Family, string FamilyName)
{
    /// <summary>The same for those who live together or are a couple, also over two families; null where the family says all.</summary>
    public Guid? Household { get; init; }

    /// <summary>Somebody who is there for a day and was not looked at by the co-op.</summary>
    public bool Guest { get; init; }

    public string FullName => $"{Name} {FamilyName}";
}

/// <summary>A child in a room.</summary>
/// <param name="Age">Completed years, 0 and more.</param>
public sealed record RoomChild(Guid Id, string Name, Guid Family, int Age, IReadOnlyCollection<Allergen> Allergies);

/// <summary>Something that an activity uses.</summary>
/// <param name="Swap">What would do instead; null where nothing is known.</param>
public sealed record RoomIngredient(Ingredient Ingredient, Ingredient? Swap = null);

/// <summary>What is done in a room.</summary>
public sealed record RoomActivity(string Title, IReadOnlyList<RoomIngredient> Ingredients);

/// <summary>One room during one period.</summary>
/// <param name="Name">As it stands after “in”: “the barn”.</param>
/// <param name="Period">As it stands after “at”: “10:00”. Rooms with the same period are open at the same time.</param>
/// <param name="Adults">Everybody who is in it all the time; somebody named twice counts once.</param>
public sealed record CoverRoom(Guid Id, string Name, string Period, IReadOnlyList<RoomAdult> Adults, IReadOnlyList<RoomChild> Children)
{
    public bool OffSite { get; init; }
    public RoomActivity? Activity { get; init; }
}

/// <summary>A rule of cover that a room breaks.</summary>
public enum CoverFaultKind { TooFewUnrelated, TooFewAdults, ClassTooLarge, AgesTooFarApart, AllergenSwap, AllergenBlock, InTwoRooms }

/// <summary>What is wrong with a room.</summary>
/// <param name="Sentence">In plain words. It names no child, but where one would be in two rooms.</param>
/// <param name="Missing">How many adults, children or years too few or too many; 0 for allergens.</param>
public record CoverFault(CoverFaultKind Kind, Guid Room, string Period, string Sentence, int Missing);

/// <summary>
/// An activity holds what a child in the room is allergic to. The plain sentence names the thing and no child; the child
/// is named to those alone who need to know.
/// </summary>
/// <param name="Child">Whose allergy it is.</param>
/// <param name="Met">At least one, in the order of the law's list.</param>
/// <param name="Instead">What is used instead, free of what any child in the room is allergic to; null where it is left out.</param>
/// <param name="ForThoseWhoNeed">The sentence with the child's name.</param>
/// <param name="TellAdults">Everybody who hands things out in the room, guests among them.</param>
/// <param name="TellFamily">The child's own family.</param>
public sealed record AllergenFault(
    CoverFaultKind Kind, Guid Room, string Period, string Sentence, Guid Child, string Ingredient, IReadOnlyList<Allergen> Met, string? Instead,
    string ForThoseWhoNeed, IReadOnlyList<Guid> TellAdults, Guid TellFamily) : CoverFault(Kind, Room, Period, Sentence, 0);
