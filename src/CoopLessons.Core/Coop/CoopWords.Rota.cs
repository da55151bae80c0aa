using System.Globalization;
using CoopLessons.Core.Schedule;

namespace CoopLessons.Core.Coop;

/// <summary>How turns, empty places and changes are told.</summary>
public static partial class CoopWords
{
    internal static string NobodyMay(RotaRole role) => $"Nobody is named who may have “{role.Name}”.";

    internal static string AllAway(RotaRole role, DateOnly day, IReadOnlyList<RotaAdult> may) =>
        $"On {ClockWords.Day(day)} everybody who may have “{role.Name}” is away: {Names(may)}.";

    internal static string TooFew(IReadOnlyList<RotaRole> roles, DateOnly day, IReadOnlyList<RotaAdult> able)
    {
        var places = roles.Sum(r => r.Places);
        var who = able.Count == 0 ? "nobody is there who may have them" : able.Count == 1 ? $"only {able[0].Name} is there who may have them" : $"only {Names(able)} are there who may have them";
        return $"On {ClockWords.Day(day)} {ClockWords.List([.. roles.Select(r => $"“{r.Name}”")])} {(roles.Count == 1 ? "has" : "have")} {Count(places, "place", "places")}{(roles.Count == 1 ? "" : " together")}, and {who}.";
    }

    internal static string TooRelated(RotaRoom room, DateOnly day, IReadOnlyList<RotaAdult> able, int places)
    {
        var needed = $"{Count(room.LeastUnrelated, "adult", "unrelated adults")} {(room.LeastUnrelated == 1 ? "is" : "are")} needed";
        return able.Count == 0 || places < room.LeastUnrelated
            ? $"{Capital(room.Name)} stays shut on {ClockWords.Day(day)}: {needed}, and it has {Count(Math.Min(places, able.Count), "adult", "adults")}."
            : $"{Capital(room.Name)} stays shut on {ClockWords.Day(day)}: {needed}, and of those who may be in it only {Names(able)} {(able.Count == 1 ? "is" : "are")} there.";
    }

    internal static string TooFewForChildren(RotaRoom room, DateOnly day, int able) =>
        $"{Capital(room.Name)} stays shut on {ClockWords.Day(day)}: its children need {Count(room.LeastAdults, "adult", "adults")}, and {Number(able)} can be in it.";

    internal static string RoomsTogether(RotaRole role, DateOnly day) =>
        $"On {ClockWords.Day(day)} the cover that the rooms need leaves nobody for “{role.Name}”.";

    internal static string MoreAdults(int count, int left) =>
        $"{Capital(Number(count))} more {(count == 1 ? "adult of another family" : "adults of other families")} {Would(left)}.";

    internal static string ComesAfterAll(RotaAdult adult, int left) => $"If {adult.Name} came after all, that {Would(left)}.";

    internal static string OpenTheRole(RotaRole role, int left) => $"If everybody might have “{role.Name}”, that {Would(left)}.";

    internal static string SmallerClass(RotaRoom room, int adults, int left) =>
        $"A class in {room.Name} small enough for {Count(adults, "adult", "adults")} {Would(left)}.";

    private static string Would(int left) => left == 0 ? "would fill every place" : $"would leave {Count(left, "place", "places")} empty";

    /// <summary>Why somebody has a turn: “Iris has “Hosting”: of those who could, no family was further below its share.”</summary>
    public static string Turn(RotaProblem problem, RotaAssignment assignment)
    {
        var (turn, reason) = (assignment.Turn, assignment.Reason);
        var adult = problem.Adults.First(a => a.Id == turn.Adult);
        var family = problem.Families.First(f => f.Id == adult.Family).Name;
        return $"{adult.Name} has “{RoleName(problem, turn.Role)}”: {Why(reason, family)}.";
    }

    private static string Why(TurnReason reason, string family) => reason.Kind switch
    {
        TurnReasonKind.OnlyOne => "nobody else who is there may have it",
        TurnReasonKind.Liked => "it was wished for",
        TurnReasonKind.FurthestBelow => $"of the {reason.Candidates} who could, none is of a family that had done less of its share than {family}",
        TurnReasonKind.RoleLeastOften => $"of the {reason.Candidates} who could, none is of a family that had had it less often than {family} ({Times(reason.RoleBefore)})",
        _ => $"so the turns of {family} come to {reason.InTheEnd} in the end",
    };

    /// <summary>“Thursday 7 January, “Hosting”: Rue for Iris, who is away; …”</summary>
    public static string Change(RotaProblem problem, RotaChange change)
    {
        var place = $"{ClockWords.Day(change.Meeting)}, “{RoleName(problem, change.Role)}”";
        var entered = change.In is { } one ? AdultName(problem, one) : "nobody";
        var family = change.In is { } id ? problem.Families.First(f => problem.Adults.Any(a => a.Id == id && a.Family == f.Id)).Name : "";
        var why = change.WhyIn is { } reason ? $"; {Why(reason, family)}" : "";
        var left = change.Out is { } gone ? AdultName(problem, gone) : "";
        return change.Why switch
        {
            ChangeReasonKind.WasEmpty => $"{place}: {entered}, where nobody was{why}.",
            ChangeReasonKind.Away => $"{place}: {entered} for {left}, who is away{why}.",
            ChangeReasonKind.MayNot => $"{place}: {entered} for {left}, who is not among those who have it{why}.",
            ChangeReasonKind.NeededElsewhere => $"{place}: {entered} for {left}, who is needed for another role{why}.",
            ChangeReasonKind.RoomShut => $"{place}: nobody for {left}, since the room stays shut.",
            _ => $"{place}: {entered} for {left}, so that the rules of the meeting hold{why}.",
        };
    }

    /// <summary>“Alder: 12 turns that count 18, a fair share is 18.00, so 0.00 above.”</summary>
    public static string Balance(RotaProblem problem, RotaBalance balance)
    {
        var family = problem.Families.First(f => f.Id == balance.Family);
        var past = family.PastHundredths == 0 ? "" : $" and {Money(family.PastHundredths)} from before";
        return $"{family.Name}: {Count(balance.Turns, "turn that counts", "turns that count")} {balance.Weighted}{past}; a fair share is {Money(balance.FairHundredths)}, so {Distance(balance.DistanceHundredths)}.";
    }

    private static string Distance(int hundredths) => hundredths switch
    {
        0 => "it is even",
        > 0 => $"it is {Money(hundredths)} above",
        _ => $"it is {Money(-(long)hundredths)} below",
    };

    /// <summary>What is known about how good a rota is.</summary>
    public static string Proof(Rota rota) => rota.IsBest
        ? "No rota is better under these rules and wishes."
        : rota.Proven.Count == 0 ? "It holds; whether a better one is possible was not found out."
        : $"No rota is better in {ClockWords.List([.. rota.Proven.Select(Of)])}; whether one is better in {Of((RotaPart)rota.Proven.Count)} was not found out.";

    private static string Of(RotaPart part) => part switch
    {
        RotaPart.Filled => "filled places",
        RotaPart.Turns => "fair turns",
        RotaPart.Roles => "an even spread of roles",
        RotaPart.Wishes => "wishes",
        _ => "an even pace",
    };

    private static string RoleName(RotaProblem problem, Guid id) => problem.Roles.First(r => r.Id == id).Name;

    // Who left may have been taken out of the list.
    private static string AdultName(RotaProblem problem, Guid id) => problem.Adults.FirstOrDefault(a => a.Id == id)?.Name ?? "somebody who left";

    private static string Names(IReadOnlyList<RotaAdult> adults) => ClockWords.List([.. adults.Select(a => a.Name)]);

    private static string Times(int count) => count switch { 0 => "not once", 1 => "once", 2 => "twice", _ => $"{count} times" };

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpper(text[0], CultureInfo.InvariantCulture) + text[1..];
}
