using CoopLessons.Core.Coop;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Coops.Days;

/// <summary>A family signs its children up for a class, and takes them out of it.</summary>
public static class SigningUp
{
    /// <summary>Why the children cannot be signed up, a sentence each; nothing where they can.</summary>
    /// <param name="children">One or two of one family.</param>
    public static IReadOnlyList<string> Refusals(Timetable table, CoopClass of, IReadOnlyList<ShownLearner> children)
    {
        if (children.Count is < 1 or > 2)
            return ["Choose one child, or two who come together."];
        var refusals = new List<string>();
        foreach (var child in children)
        {
            if (child.Age is not { } age)
                refusals.Add($"Show the age of {child.Name} to the co-op first: how many adults the room needs depends on it.");
            else if (age < of.FromAge || age > of.ToAge)
                refusals.Add($"{child.Name} is {age}; “{of.Title}” is for {Ages(of.FromAge, of.ToAge)}.");
            if (Has(table.Roll(of), child.LearnerId))
                refusals.Add($"{child.Name} has a place or waits already.");
        }

        if (refusals.Count == 0)
            refusals.AddRange(InOtherRooms(table, of, children).Concat(Allergens(table, of, children)).Distinct());
        return refusals;
    }

    /// <summary>“8 to 10 years”, “9 years”.</summary>
    public static string Ages(int from, int to) => from == to ? $"{from} years" : $"{from} to {to} years";

    /// <summary>What a family is told once it signed up.</summary>
    public static string Told(CoopClass of, ClassList list, Guid signUp, IReadOnlyList<ShownLearner> children)
    {
        var names = string.Join(" and ", children.Select(c => c.Name));
        return list.Waiting.FirstOrDefault(w => w.SignUp == signUp) is { } waits
            ? $"“{of.Title}” has {Places(of.Size)} and {(list.Free == 0 ? "all are taken" : $"{list.Free} free")}: {names} {(children.Count == 1 ? "waits" : "wait")} as number {waits.Number}."
            : $"{names} {(children.Count == 1 ? "has a place" : "have places")} in “{of.Title}”.";
    }

    public static string Places(int size) => size == 1 ? "1 place" : $"{size} places";

    public static bool Has(ClassList list, Guid child) => list.Places.Any(p => p.Child == child) || list.Waiting.Any(w => w.Children.Contains(child));

    /// <summary>Children who are shown no longer lose their places and numbers. Saved by the caller.</summary>
    public static async Task WithdrawAsync(AppDb db, Guid coopId, IReadOnlyCollection<Guid> children, DateTime now, CancellationToken ct)
    {
        if (children.Count == 0)
            return;
        var table = await Timetable.LoadAsync(db, coopId, ct);
        foreach (var of in table.Classes)
        {
            var number = table.NextNumber(of);
            foreach (var child in children.Where(c => Has(table.Roll(of), c)))
                db.ClassListLines.Add(ClassListLine.Withdraw(of, number++, db.Current.FamilyId!.Value, child, now));
        }
    }

    private static IEnumerable<string> InOtherRooms(Timetable table, CoopClass of, IReadOnlyList<ShownLearner> children)
    {
        var here = table.RoomOf(of, table.Room(of), table.Period(of), children) with { Adults = [] };
        var others = table.Classes.Where(c => c.Id != of.Id && c.PeriodId == of.PeriodId && c.First <= of.Last && of.First <= c.Last)
            .Select(c => table.RoomOf(c) with { Adults = [] });
        return Cover.Faults([.. others, here], table.Rules).Where(f => f.Kind == CoverFaultKind.InTwoRooms && f.Room == here.Id).Select(f => f.Sentence);
    }

    /// <summary>What blocks only since these children would come: theirs by name, another child's without.</summary>
    private static IEnumerable<string> Allergens(Timetable table, CoopClass of, IReadOnlyList<ShownLearner> children)
    {
        var there = table.Roll(of).Places.Select(p => table.Children[p.Child]).ToList();
        var before = Blocks(table, of, there).Select(b => (b.Child, b.Ingredient)).ToHashSet();
        return Blocks(table, of, [.. there, .. children]).Where(b => !before.Contains((b.Child, b.Ingredient)))
            .Select(b => children.Any(c => c.LearnerId == b.Child) ? b.ForThoseWhoNeed : b.Sentence);
    }

    private static IEnumerable<AllergenFault> Blocks(Timetable table, CoopClass of, IReadOnlyList<ShownLearner> children) =>
        Cover.Faults(table.RoomOf(of, table.Room(of), table.Period(of), children), table.Rules).OfType<AllergenFault>().Where(f => f.Kind == CoverFaultKind.AllergenBlock);
}
