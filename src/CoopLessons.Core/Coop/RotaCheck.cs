using CoopLessons.Core.Hours;
using CoopLessons.Core.Schedule;

namespace CoopLessons.Core.Coop;

/// <summary>A rule that a turn breaks.</summary>
public enum RotaFaultKind { Unknown, TwoRoles, Away, MayNot, TooMany, Unrelated, AdultsForChildren }

/// <summary>What breaks a rule, in one sentence.</summary>
/// <param name="Adult">Null for a role or a room.</param>
public sealed record RotaFault(RotaFaultKind Kind, DateOnly Meeting, Guid? Adult, string Sentence);

/// <summary>
/// Holds turns against the rules of a rota and prices them. It knows nothing of how they are found, so that it serves
/// turns given by the program and by hand alike.
/// </summary>
public static class RotaCheck
{
    /// <summary>What the turns break, by meeting; nothing where all is well. An empty place is no fault, an open room without cover is one.</summary>
    public static IReadOnlyList<RotaFault> Faults(RotaProblem problem, IReadOnlyList<RotaTurn> turns)
    {
        var faults = new List<RotaFault>();
        foreach (var meeting in turns.GroupBy(t => t.Meeting).OrderBy(g => g.Key))
        {
            var known = new List<(RotaRole Role, RotaAdult Adult)>();
            foreach (var turn in meeting)
                if (problem.Meetings.Contains(turn.Meeting) && Role(problem, turn.Role) is { } role && problem.Adults.FirstOrDefault(a => a.Id == turn.Adult) is { } adult)
                    known.Add((role, adult));
                else
                    faults.Add(new RotaFault(RotaFaultKind.Unknown, turn.Meeting, turn.Adult, $"On {ClockWords.Day(turn.Meeting)} stands a turn that is not of this rota."));
            faults.AddRange([.. OfAdults(problem, meeting.Key, known), .. OfPlaces(meeting.Key, known), .. OfRooms(problem, meeting.Key, known)]);
        }

        return faults;
    }

    private static RotaRole? Role(RotaProblem problem, Guid id) => problem.Roles.FirstOrDefault(r => r.Id == id);

    private static IEnumerable<RotaFault> OfAdults(RotaProblem problem, DateOnly day, List<(RotaRole Role, RotaAdult Adult)> turns)
    {
        foreach (var twice in turns.GroupBy(t => t.Adult).Where(g => g.Skip(1).Any()))
            yield return new RotaFault(RotaFaultKind.TwoRoles, day, twice.Key.Id,
                $"On {ClockWords.Day(day)} {twice.Key.Name} would have {ClockWords.List([.. twice.Select(t => $"“{t.Role.Name}”")])} at once.");
        foreach (var (role, adult) in turns)
        {
            if (problem.Absences.Contains(new RotaAbsence(adult.Id, day)))
                yield return new RotaFault(RotaFaultKind.Away, day, adult.Id, $"On {ClockWords.Day(day)} {adult.Name} is away and cannot have “{role.Name}”.");
            if (role.Only is { } only && !only.Contains(adult.Id))
                yield return new RotaFault(RotaFaultKind.MayNot, day, adult.Id, $"{adult.Name} is not among those who have “{role.Name}”, on {ClockWords.Day(day)}.");
        }
    }

    private static IEnumerable<RotaFault> OfPlaces(DateOnly day, List<(RotaRole Role, RotaAdult Adult)> turns) =>
        from role in turns.GroupBy(t => t.Role)
        where role.Count() > role.Key.Places
        select new RotaFault(RotaFaultKind.TooMany, day, null, $"On {ClockWords.Day(day)} “{role.Key.Name}” has {role.Count()} adults for {role.Key.Places} places.");

    private static IEnumerable<RotaFault> OfRooms(RotaProblem problem, DateOnly day, List<(RotaRole Role, RotaAdult Adult)> turns)
    {
        foreach (var room in problem.Rooms)
        {
            var there = turns.Where(t => room.Roles.Contains(t.Role.Id)).Select(t => t.Adult).Distinct().ToList();
            if (there.Count == 0)
                continue;
            // Whoever joins two households need not be in the room for it.
            var groups = Kinship.Groups([.. problem.Adults.Select(a => (a.Family, a.Household))]);
            var unrelated = there.Select(a => groups[problem.Adults.ToList().IndexOf(a)]).Distinct().Count();
            if (unrelated < room.LeastUnrelated)
                yield return new RotaFault(RotaFaultKind.Unrelated, day, null,
                    $"On {ClockWords.Day(day)} {ClockWords.List([.. there.Select(a => a.Name)])} {(there.Count == 1 ? "is" : "are")} alone in {room.Name}, where {room.LeastUnrelated} unrelated adults are needed.");
            if (there.Count < room.LeastAdults)
                yield return new RotaFault(RotaFaultKind.AdultsForChildren, day, null,
                    $"On {ClockWords.Day(day)} {there.Count} of the {room.LeastAdults} adults that its children need are in {room.Name}.");
        }
    }

    /// <summary>The price of turns that are all of the problem; see <see cref="RotaCost"/> for the units.</summary>
    public static RotaCost Cost(RotaProblem problem, IReadOnlyList<RotaTurn> turns)
    {
        var unfilled = problem.Meetings.Sum(m => problem.Roles.Sum(r => Math.Max(0, r.Places - turns.Count(t => t.Meeting == m && t.Role == r.Id))));
        var shares = problem.Families.Sum(f => f.Share);
        var pool = 100L * problem.Meetings.Count * problem.Roles.Sum(r => r.Places * r.Weight) + problem.Families.Sum(f => f.PastHundredths);
        var (unfair, uneven, pace) = (0L, 0L, 0L);
        foreach (var family in problem.Families)
        {
            var adults = problem.Adults.Where(a => a.Family == family.Id).Select(a => a.Id).ToHashSet();
            var own = turns.Where(t => adults.Contains(t.Adult)).ToList();
            var weighted = own.Sum(t => Role(problem, t.Role)!.Weight);
            unfair += FairPrice.Of(shares * (100L * weighted + family.PastHundredths) - family.Share * pool, 100L * shares);
            foreach (var role in problem.Roles)
                uneven += FairPrice.Of((long)shares * own.Count(t => t.Role == role.Id) - (long)family.Share * role.Places * problem.Meetings.Count, shares);
            pace += Pace(problem.Meetings, own);
        }

        var wishes = turns.Sum(t => problem.Wishes.Where(w => Meets(w, t)).Sum(w => -(long)w.Weight));
        return new RotaCost(unfilled, unfair, uneven, wishes, pace);
    }

    private static long Pace(IReadOnlyList<DateOnly> meetings, List<RotaTurn> own) =>
        Enumerable.Range(0, meetings.Count).Sum(m =>
            Math.Max(0L, Math.Abs((long)meetings.Count * own.Count(t => t.Meeting <= meetings[m]) - (m + 1L) * own.Count) - meetings.Count));

    internal static bool Meets(RotaWish wish, RotaTurn turn) =>
        wish.Adult == turn.Adult && (wish.Role is null || wish.Role == turn.Role) && (wish.Meeting is null || wish.Meeting == turn.Meeting);

    /// <summary>What each family did against its fair share, in the order of the families.</summary>
    public static IReadOnlyList<RotaBalance> Balances(RotaProblem problem, IReadOnlyList<RotaTurn> turns)
    {
        var pool = checked(100 * problem.Meetings.Count * problem.Roles.Sum(r => r.Places * r.Weight) + problem.Families.Sum(f => f.PastHundredths));
        var fair = LargestRemainder.Divide(Math.Abs(pool), [.. problem.Families.Select(f => f.Share)]);
        return [.. problem.Families.Select((family, i) =>
        {
            var adults = problem.Adults.Where(a => a.Family == family.Id).Select(a => a.Id).ToHashSet();
            var own = turns.Where(t => adults.Contains(t.Adult)).ToList();
            var weighted = own.Sum(t => Role(problem, t.Role)?.Weight ?? 0);
            var share = Math.Sign(pool) * fair[i];
            return new RotaBalance(family.Id, own.Count, weighted, [.. problem.Roles.Select(r => own.Count(t => t.Role == r.Id))], share, 100 * weighted + family.PastHundredths - share);
        })];
    }
}
