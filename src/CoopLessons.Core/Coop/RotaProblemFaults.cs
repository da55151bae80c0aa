using CoopLessons.Core.Schedule;

namespace CoopLessons.Core.Coop;

/// <summary>What is wrong with the turns that are asked for, before anybody tries to give them.</summary>
public static class RotaProblemFaults
{
    public const int MostMeetings = 60;
    public const int MostRoles = 12;
    public const int MostAdults = 60;
    public const int MostWeight = 20;

    /// <summary>One sentence for each fault, in the order of the problem’s parts; nothing where all is well.</summary>
    public static IReadOnlyList<string> Of(RotaProblem problem) =>
        [.. OfMeetings(problem), .. problem.Roles.SelectMany(r => OfRole(problem, r)), .. OfPeople(problem), .. OfWishes(problem), .. OfRooms(problem)];

    private static IEnumerable<string> OfMeetings(RotaProblem problem)
    {
        if (problem.Meetings.Count is < 1 or > MostMeetings)
            yield return $"A rota has 1 to {MostMeetings} meetings, not {problem.Meetings.Count}.";
        for (var i = 1; i < problem.Meetings.Count; i++)
            if (problem.Meetings[i] <= problem.Meetings[i - 1])
                yield return $"The meetings are to ascend; {ClockWords.Day(problem.Meetings[i])} stands after {ClockWords.Day(problem.Meetings[i - 1])}.";
        if (problem.Roles.Count is < 1 or > MostRoles)
            yield return $"A rota has 1 to {MostRoles} roles, not {problem.Roles.Count}.";
        if (Repeats(problem.Roles.Select(r => r.Id)))
            yield return "Two roles have the same id.";
    }

    private static IEnumerable<string> OfRole(RotaProblem problem, RotaRole role)
    {
        if (role.Weight is < 1 or > MostWeight)
            yield return $"“{role.Name}” is to weigh 1 to {MostWeight}, not {role.Weight}.";
        if (role.Places is < 0 or > MostAdults)
            yield return $"“{role.Name}” is to have 0 to {MostAdults} places, not {role.Places}.";
        if (role.Only is { } only && only.Any(id => problem.Adults.All(a => a.Id != id)))
            yield return $"“{role.Name}” names an adult who is not in the rota.";
    }

    private static IEnumerable<string> OfPeople(RotaProblem problem)
    {
        if (problem.Families.Count is < 1 or > MostAdults)
            yield return $"A rota has 1 to {MostAdults} families, not {problem.Families.Count}.";
        if (problem.Adults.Count > MostAdults)
            yield return $"A rota has at most {MostAdults} adults, not {problem.Adults.Count}.";
        if (Repeats(problem.Families.Select(f => f.Id)))
            yield return "Two families have the same id.";
        if (Repeats(problem.Adults.Select(a => a.Id)))
            yield return "Two adults have the same id.";
        foreach (var family in problem.Families)
        {
            if (family.Share is < 1 or > 100)
                yield return $"The share of {family.Name} is to be 1 to 100, not {family.Share}.";
            if (family.PastHundredths is < -100_000 or > 100_000)
                yield return $"The past balance of {family.Name} is to be at most 1000 turns either way.";
        }

        foreach (var adult in problem.Adults.Where(a => problem.Families.All(f => f.Id != a.Family)))
            yield return $"{adult.Name} belongs to a family that is not in the rota.";
        if (problem.Absences.Any(b => problem.Adults.All(a => a.Id != b.Adult)))
            yield return "Somebody is away who is not in the rota.";
    }

    private static IEnumerable<string> OfWishes(RotaProblem problem)
    {
        foreach (var wish in problem.Wishes)
        {
            if (problem.Adults.All(a => a.Id != wish.Adult))
                yield return "Somebody wishes who is not in the rota.";
            if (wish.Weight is 0 or < -100 or > 100)
                yield return $"A wish weighs -100 to 100 and not 0; one weighs {wish.Weight}.";
            if (wish.Role is { } role && problem.Roles.All(r => r.Id != role))
                yield return "A wish names a role that is not in the rota.";
        }
    }

    private static IEnumerable<string> OfRooms(RotaProblem problem)
    {
        if (Repeats(problem.Rooms.Select(r => r.Id)))
            yield return "Two rooms have the same id.";
        if (Repeats(problem.Rooms.SelectMany(r => r.Roles)))
            yield return "A role is done in one room, and once in it.";
        foreach (var room in problem.Rooms)
        {
            if (room.LeastUnrelated < 0 || room.LeastAdults < 0)
                yield return $"For {room.Name} 0 or more adults are asked.";
            if (room.Roles.Any(id => problem.Roles.All(r => r.Id != id)))
                yield return $"In {room.Name} a role is done that is not in the rota.";
        }
    }

    private static bool Repeats(IEnumerable<Guid> ids) => ids.GroupBy(id => id).Any(g => g.Skip(1).Any());
}
