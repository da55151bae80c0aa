using CoopLessons.Core.Coop.Rotas;
using CoopLessons.Core.Schedule;

namespace CoopLessons.Core.Coop;

/// <summary>A rota that holds again.</summary>
/// <param name="Rota">All of the term. Its parts are proven among the rotas with as few empty places and as few changes.</param>
/// <param name="Changes">By meeting and role.</param>
/// <param name="Least">No rota with as few empty places has fewer changes.</param>
public sealed record HealedRota(Rota Rota, IReadOnlyList<RotaChange> Changes, int Least)
{
    /// <summary>Whether it is proven that fewer changes do not do.</summary>
    public bool IsLeast => Changes.Count == Least && Rota.Proven.Contains(RotaPart.Filled);

    /// <summary>Whether nobody is missing; where somebody is, <see cref="Rota.Gaps"/> say which rule stands in the way and what would help.</summary>
    public bool IsWhole => Rota.Gaps.Count == 0;
}

/// <summary>
/// Makes a rota valid again after somebody fell ill, left, or a meeting was lost: as few empty places as can be, then as few
/// changes, then what <see cref="RotaCost"/> asks for. Who did more than its share has it in its balance.
/// </summary>
public static class RotaHealing
{
    /// <param name="problem">As it is now, with the new absences. Who left is still in the list, and away.</param>
    /// <param name="was">The turns until now.</param>
    /// <param name="from">Meetings on this date and later may change; what stands earlier stays, whatever it breaks.</param>
    /// <inheritdoc cref="RotaPlanning.Solve"/>
    /// <exception cref="ArgumentException">The problem has a fault, or an earlier turn names somebody or a role that is not in it; the message is a sentence.</exception>
    public static HealedRota Heal(RotaProblem problem, IReadOnlyList<RotaTurn> was, DateOnly from, Effort effort, CancellationToken ct = default)
    {
        var grid = RotaPlanning.Grid(problem, effort);
        var firstFree = grid.Meetings.Count(m => m < from);
        if (was.Any(t => grid.Meeting(t.Meeting) is var m && m >= 0 && m < firstFree && (grid.Adults.All(a => a.Id != t.Adult) || grid.Roles.All(r => r.Id != t.Role))))
            throw new ArgumentException("A turn that is over names an adult or a role that is no longer in the rota.", nameof(was));
        var before = new RotaBefore(was, firstFree);
        var thinking = new RotaThinking(grid, before, effort.Units, ct);
        thinking.Run();
        var rota = RotaPlanning.Written(grid, thinking, firstFree, ct);
        return new HealedRota(rota, RotaChanges.Between(problem, was, rota.Assignments, from), thinking.LeastChanges);
    }

    /// <summary>The rota without a meeting. Its turns are gone, or go with their adults to another day, whose absences then decide.</summary>
    /// <param name="lost">One of the meetings.</param>
    /// <param name="instead">A day that is no meeting yet; null for none.</param>
    /// <exception cref="ArgumentException">No such meeting, or the other day is one already; the message is a sentence.</exception>
    public static (RotaProblem Problem, IReadOnlyList<RotaTurn> Was) WithoutMeeting(RotaProblem problem, IReadOnlyList<RotaTurn> was, DateOnly lost, DateOnly? instead = null)
    {
        if (!problem.Meetings.Contains(lost))
            throw new ArgumentException($"On {ClockWords.Day(lost)} there is no meeting.", nameof(lost));
        if (instead is { } taken && problem.Meetings.Contains(taken))
            throw new ArgumentException($"On {ClockWords.Day(taken)} there is a meeting already.", nameof(instead));
        var left = problem.Meetings.Where(m => m != lost);
        return instead is { } other
            ? (problem with { Meetings = [.. left.Append(other).Order()] }, [.. was.Select(t => t.Meeting == lost ? t with { Meeting = other } : t)])
            : (problem with { Meetings = [.. left] }, [.. was.Where(t => t.Meeting != lost)]);
    }
}
