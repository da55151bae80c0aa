using System.Globalization;
using CoopLessons.Core.Families;
using CoopLessons.Core.Schedule;

namespace CoopLessons.Core.Coop;

/// <summary>How a co-op's rooms, turns and money are told.</summary>
public static partial class CoopWords
{
    /// <summary>What stands beside every answer about allergies.</summary>
    public const string AllergyCaution =
        "This looks only at what is written down. Read each label, ask the family of the child, and follow the child’s own care plan.";

    /// <summary>What stands beside every answer about adults in rooms.</summary>
    public const string CoverCaution =
        "These figures are common practice. Local rules, the insurer and the owner of the room may ask for more, and theirs come first.";

    /// <summary>“41.37”, “-0.05”; the sign of the currency is the page’s.</summary>
    public static string Money(long cents) =>
        string.Create(CultureInfo.InvariantCulture, $"{(cents < 0 ? "-" : "")}{Math.Abs(cents) / 100}.{Math.Abs(cents) % 100:00}");

    internal static string TooFewUnrelated(CoverRoom room, IReadOnlyList<RoomAdult> adults, int groups, int missing, bool guests)
    {
        var need = (groups, missing) switch
        {
            (0, 1) => "an adult is needed",
            (0, _) => $"{Number(missing)} adults of different families are needed",
            (1, 1) => "a second adult of another family is needed",
            (_, 1) => "one more adult of another family is needed",
            _ => $"{Number(missing)} more adults of other families are needed",
        };
        var note = guests ? " Guests do not count." : "";
        return (adults.Count, groups) switch
        {
            (0, _) => $"No adult of the co-op is in {room.Name} at {room.Period}: {need}.{note}",
            (1, _) => $"{adults[0].FullName} is the only adult in {room.Name} at {room.Period}: {need}.{note}",
            (_, 1) => $"{Together(adults)} are one household: {need} in {room.Name}.{note}",
            _ => $"{Together(adults)} count as {Number(groups)} in {room.Name} at {room.Period}: {need}.{note}",
        };
    }

    /// <summary>“Basil and Iris Alder”, and with two names of families “Basil Alder and Rue Birch”.</summary>
    private static string Together(IReadOnlyList<RoomAdult> adults) => adults.Select(a => a.FamilyName).Distinct().Count() == 1
        ? $"{ClockWords.List([.. adults.Select(a => a.Name)])} {adults[0].FamilyName}"
        : ClockWords.List([.. adults.Select(a => a.FullName)]);

    internal static string TooFewAdults(CoverRoom room, CoverRules rules, int needed, int there)
    {
        var young = room.Children.Count(c => c.Age < rules.YoungBelow);
        var old = room.Children.Count - young;
        var (perOld, perYoung) = Cover.Ratios(room.OffSite, rules);
        var groups = new List<string>();
        if (young > 0)
            groups.Add($"{Count(young, "child", "children")} under {rules.YoungBelow} (one adult for {perYoung})");
        if (old > 0)
            groups.Add($"{Count(old, "child", "children")} of {rules.YoungBelow} and more (one adult for {perOld})");
        return $"With {ClockWords.List(groups)} {room.Name} needs {Count(needed, "adult", "adults")} at {room.Period}; {Number(there)} {(there == 1 ? "is" : "are")} there who count{(there == 1 ? "s" : "")}.";
    }

    internal static string TooLarge(CoverRoom room, int most) =>
        $"{Count(room.Children.Count, "child is", "children are")} in {room.Name} at {room.Period}; a class has at most {most}.";

    internal static string TooFarApart(CoverRoom room, int youngest, int oldest, int most) =>
        $"The ages in {room.Name} at {room.Period} reach from {youngest} to {oldest}, {Count(oldest - youngest, "year", "years")} apart; a class spans at most {most}.";

    internal static string AllergenOpenly(CoverRoom room, string thing, string? instead) => instead is null
        ? $"{thing} is left out of {room.Name} at {room.Period}; nothing is named that would do instead."
        : $"{thing} is left out of {room.Name} at {room.Period}; {instead} is used instead.";

    internal static string AllergenByName(CoverRoom room, string thing, string? instead, string child, IReadOnlyList<Allergen> met) =>
        $"{thing} holds {ClockWords.List([.. met.Select(Of)])}, and {child} is allergic: {(instead is null ? "leave it out" : $"use {instead} instead")} in {room.Name} at {room.Period}.";

    internal static string InTwoRooms(string name, IReadOnlyList<string> rooms, string period) =>
        $"{name} would be in {ClockWords.List(rooms)} at {period} at once.";

    internal static string Refund(Refund refund) => refund.Whole
        ? $"Said in time: the whole {Money(refund.PaidCents)} is given back."
        : $"{Count(refund.Left, "meeting", "meetings")} of {refund.All} {(refund.Left == 1 ? "is" : "are")} still to come: {Money(refund.Cents)} of {Money(refund.PaidCents)} is given back.";

    public static string Of(Allergen allergen) => allergen == Allergen.TreeNuts ? "tree nuts" : allergen.ToString().ToLowerInvariant();

    private static string Count(int number, string one, string many) => $"{Number(number)} {(number == 1 ? one : many)}";

    private static string Number(int number) => number switch { 0 => "none", 1 => "one", 2 => "two", _ => number.ToString(CultureInfo.InvariantCulture) };
}
