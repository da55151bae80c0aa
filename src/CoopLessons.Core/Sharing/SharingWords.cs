using System.Text.Json.Nodes;

namespace CoopLessons.Core.Sharing;

/// <summary>A line for each change and each collision, as one parent tells another; without a full stop.</summary>
public static class SharingWords
{
    /// <summary>Such as: “Measure the weir”: minutes 40 → 20.</summary>
    public static string Of(UnitDifference change)
    {
        var (spot, from, to) = (change.Spot, change.From, change.To);
        if (spot is { Activity: not null, Field: null })
            return $"“{change.Title}” {Came(from)}";
        var name = SpotWords.Name(spot, change.Entry);
        return Where(spot, change.Title) + spot switch
        {
            { IsSequence: true } => $"{name} in another order",
            { Activity: null, Entry: not null } when from is null || to is null => $"{name} {Came(from)}",
            { Activity: null, Entry: not null } => $"{name}, before {SpotWords.Value(spot, from)}",
            { Field: UnitTree.After } => from is null ? $"comes after “{change.Entry}”" : $"no longer comes after “{change.Entry}”",
            { Field: UnitSpot.Place } => $"moved from {SpotWords.Value(spot, from)} to {SpotWords.Value(spot, to)}",
            { Field: "ingredients", Part: not null and not "name" } => $"{change.Entry} {(from is null ? "has" : "no longer has")} {SpotWords.Apart(spot.Part)} in it",
            { Entry: not null } when from is null && !SpotWords.IsLong(spot) => $"{name} added, {SpotWords.Value(spot, to)}",
            _ when from is null => $"{name} added",
            _ when to is null => $"{name} taken out",
            _ when SpotWords.IsLong(spot) => $"{name} is worded anew",
            _ => $"{name} {SpotWords.Value(spot, from)} → {SpotWords.Value(spot, to)}",
        };
    }

    /// <summary>Such as: “Measure the weir”: minutes 40 before, 20 here, 30 there. “Here” is mine.</summary>
    public static string Of(Collision collision)
    {
        var spot = collision.Spot;
        var isActivity = spot is { Activity: not null, Field: null };
        var what = isActivity ? $"“{collision.Title}”" : Where(spot, collision.Title) + SpotWords.Name(spot, collision.Entry);
        return collision.Kind switch
        {
            CollisionKind.ChangedHereTakenOutThere => $"{what} was changed here and taken out there",
            CollisionKind.TakenOutHereChangedThere => $"{what} was taken out here and changed there",
            CollisionKind.AddedOnBothSides when isActivity || SpotWords.IsLong(spot) => $"{what} was added here and there, each in another way",
            CollisionKind.AddedOnBothSides => $"{what} was added here and there: {SpotWords.Value(spot, collision.Mine)} here, {SpotWords.Value(spot, collision.Theirs)} there",
            CollisionKind.StillNamedHere => $"{what} was taken out there, and here “{collision.Beside}” {(isActivity ? "still comes after it" : "still has it")}",
            CollisionKind.NotHere => spot.Field == UnitTree.After
                ? $"“{collision.Title}” comes after “{collision.Entry}” there, which is not in the unit here"
                : $"“{collision.Title}” has the {SpotWords.Name(spot, collision.Entry)} there, which is not in the unit here",
            CollisionKind.Circle => $"“{collision.Title}” comes after “{collision.Entry}” there, and here it comes before it",
            CollisionKind.AfterTheLastWeek => OfWeek(collision),
            CollisionKind.NothingWouldBeLeft => OfLast(collision, what, isActivity),
            CollisionKind.NoRoom => $"{what} is new there, and there is no room for more here",
            _ when spot.IsSequence => $"{what} stand in one order here and in another there",
            _ when isActivity || SpotWords.IsLong(spot) => $"{what} was changed here and there, each in another way",
            _ => $"{what} {SpotWords.Value(spot, collision.Base)} before, {SpotWords.Value(spot, collision.Mine)} here, {SpotWords.Value(spot, collision.Theirs)} there",
        };
    }

    private static string OfWeek(Collision collision) => collision.Spot switch
    {
        { Activity: null } => $"The unit has {Weeks(collision.Theirs)} there, and here “{collision.Beside}” stands after them",
        { Field: null } => $"“{collision.Title}” is new there and stands in week {JsonNode.Parse(collision.Theirs!)!["week"]}, after the last week here",
        _ => $"“{collision.Title}” moved there to {SpotWords.Value(collision.Spot, collision.Theirs)}, after the last week here",
    };

    private static string OfLast(Collision collision, string what, bool isActivity) => isActivity
        ? collision.Mine is null ? $"{what} is new there and has no subject that is in the unit here" : $"{what} was taken out there, and without it the unit would be empty"
        : collision.Spot.Activity is null ? $"{what} was taken out there, and without it the unit would have no subject"
        : $"{what} went there, and without it the activity would have no subject";

    private static string Weeks(string? json) => json == "1" ? "1 week" : $"{json} weeks";

    private static string Came(string? from) => from is null ? "is new" : "was taken out";

    private static string Where(UnitSpot spot, string? title) => spot.Activity is null ? "The unit: " : $"“{title}”: ";
}
