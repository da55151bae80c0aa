using CoopLessons.Core.Coop.Rotas;

namespace CoopLessons.Core.Coop;

/// <summary>Why somebody no longer has a turn; the first that holds.</summary>
public enum ChangeReasonKind
{
    /// <summary>Nobody had the place before.</summary>
    WasEmpty,

    /// <summary>Is away.</summary>
    Away,

    /// <summary>Is no longer among those who may have the role.</summary>
    MayNot,

    /// <summary>Has another role at the same meeting now.</summary>
    NeededElsewhere,

    /// <summary>The room stays shut.</summary>
    RoomShut,

    /// <summary>Somebody of another household is needed in the room, or the role has fewer places than it had.</summary>
    MakesRoom,
}

/// <summary>A place whose adult is another.</summary>
/// <param name="Out">Who had it; null where nobody had.</param>
/// <param name="In">Who has it now; null where nobody has.</param>
/// <param name="WhyIn">Why the one who has it now; null where nobody has.</param>
public sealed record RotaChange(DateOnly Meeting, Guid Role, Guid? Out, Guid? In, ChangeReasonKind Why, TurnReason? WhyIn);

/// <summary>What differs between two rotas.</summary>
public static class RotaChanges
{
    /// <summary>
    /// By meeting and role. For each role at each meeting those who no longer have it are set against those who newly have
    /// it, as long as there are both; the longer of the two lists is the number of changes.
    /// </summary>
    /// <param name="problem">As it is now. Turns of meetings and roles that are not in it are no changes: they are gone.</param>
    /// <param name="from">Earlier meetings are not looked at; inclusive.</param>
    public static IReadOnlyList<RotaChange> Between(RotaProblem problem, IReadOnlyList<RotaTurn> was, IReadOnlyList<RotaAssignment> now, DateOnly from)
    {
        var changes = new List<RotaChange>();
        foreach (var meeting in problem.Meetings.Where(m => m >= from))
            foreach (var role in problem.Roles)
            {
                var had = was.Where(t => t.Meeting == meeting && t.Role == role.Id).Select(t => t.Adult).Distinct().ToList();
                var have = now.Where(t => t.Turn.Meeting == meeting && t.Turn.Role == role.Id).ToList();
                var gone = had.Where(a => have.All(h => h.Turn.Adult != a)).ToList();
                var come = have.Where(h => !had.Contains(h.Turn.Adult)).ToList();
                for (var i = 0; i < Math.Max(gone.Count, come.Count); i++)
                {
                    Guid? left = i < gone.Count ? gone[i] : null;
                    var entered = i < come.Count ? come[i] : null;
                    changes.Add(new RotaChange(meeting, role.Id, left, entered?.Turn.Adult, Why(problem, meeting, role, left, now), entered?.Reason));
                }
            }

        return changes;
    }

    internal static int Count(RotaBefore before, RotaGrid grid, IReadOnlyList<RotaTurn> turns) =>
        Enumerable.Range(before.FirstFree, grid.Meetings.Length - before.FirstFree).Sum(m => grid.Roles.Sum(r =>
        {
            var now = turns.Where(t => t.Meeting == grid.Meetings[m] && t.Role == r.Id).ToList();
            var kept = now.Count(before.Had);
            return Math.Max(now.Count - kept, before.Count(grid.Meetings[m], r.Id) - kept);
        }));

    private static ChangeReasonKind Why(RotaProblem problem, DateOnly meeting, RotaRole role, Guid? left, IReadOnlyList<RotaAssignment> now)
    {
        if (left is not { } adult)
            return ChangeReasonKind.WasEmpty;
        if (problem.Absences.Contains(new RotaAbsence(adult, meeting)))
            return ChangeReasonKind.Away;
        if (role.Only is { } only && !only.Contains(adult))
            return ChangeReasonKind.MayNot;
        if (now.Any(t => t.Turn.Meeting == meeting && t.Turn.Adult == adult))
            return ChangeReasonKind.NeededElsewhere;
        var shut = problem.Rooms.Any(room => room.Roles.Contains(role.Id) && !now.Any(t => t.Turn.Meeting == meeting && room.Roles.Contains(t.Turn.Role)));
        return shut ? ChangeReasonKind.RoomShut : ChangeReasonKind.MakesRoom;
    }
}
