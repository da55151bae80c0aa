using CoopLessons.Core.Schedule.Layout;
using Google.OrTools.Sat;

namespace CoopLessons.Core.Coop.Rotas;

/// <summary>What would fill more places of one meeting: each way is tried on that meeting alone.</summary>
internal sealed class WhatHelps(RotaGrid grid, int meeting, Thinking thinking)
{
    private const double Share = 0.02;

    private readonly RotaProblem _alone = grid.Problem with { Meetings = [grid.Meetings[meeting]] };

    public List<GapHelp> Of(int missing)
    {
        var helps = new List<GapHelp>();
        Add(GapHelpKind.OneMoreAdult, null, 1, WithStrangers(1), left => CoopWords.MoreAdults(1, left));
        if (helps is [{ Left: > 0 }] or [])
            for (var more = 2; more <= missing + 2; more++)
                if (Empty(WithStrangers(more)) == 0)
                {
                    Add(GapHelpKind.OneMoreAdult, null, more, WithStrangers(more), left => CoopWords.MoreAdults(more, left));
                    break;
                }

        foreach (var away in grid.Adults.Where((_, a) => !grid.There[meeting][a]))
            Add(GapHelpKind.ComesAfterAll, away.Id, 1, _alone with { Absences = [.. _alone.Absences.Where(b => b.Adult != away.Id)] }, left => CoopWords.ComesAfterAll(away, left));
        foreach (var role in grid.Roles.Where(r => r.Only is not null))
            Add(GapHelpKind.OpenTheRole, role.Id, 1, _alone with { Roles = [.. _alone.Roles.Select(r => r.Id == role.Id ? r with { Only = null } : r)] }, left => CoopWords.OpenTheRole(role, left));
        foreach (var room in _alone.Rooms.Where(r => r.LeastAdults > 0))
            for (var fewer = room.LeastAdults - 1; fewer >= 0; fewer--)
                if (Add(GapHelpKind.SmallerClass, room.Id, fewer, _alone with { Rooms = [.. _alone.Rooms.Select(r => r.Id == room.Id ? r with { LeastAdults = fewer } : r)] },
                    left => CoopWords.SmallerClass(room, fewer, left)))
                    break;
        return helps;

        bool Add(GapHelpKind kind, Guid? about, int count, RotaProblem other, Func<int, string> sentence)
        {
            if (Empty(other) is not { } left || left >= missing)
                return false;
            helps.Add(new GapHelp(kind, about, count, left, sentence(left)));
            return true;
        }
    }

    /// <summary>Adults of families of their own who may do everything.</summary>
    private RotaProblem WithStrangers(int count)
    {
        var strangers = Enumerable.Range(1, count).Select(i => Unused(i)).ToList();
        return _alone with
        {
            Families = [.. _alone.Families, .. strangers.Select(id => new RotaFamily(id, ""))],
            Adults = [.. _alone.Adults, .. strangers.Select(id => new RotaAdult(id, "", id))],
            Roles = [.. _alone.Roles.Select(r => r.Only is { } only ? r with { Only = [.. only, .. strangers] } : r)],
        };
    }

    // An id that is nobody's in this problem.
    private Guid Unused(int number)
    {
        var taken = _alone.Adults.Select(a => a.Id).Concat(_alone.Families.Select(f => f.Id)).ToHashSet();
        return Enumerable.Range(0, int.MaxValue).Select(i => new Guid(number, (short)(i % 1000), (short)(i / 1000 % 1000), [0, 0, 0, 0, 0, 0, 0, 0])).First(id => !taken.Contains(id));
    }

    /// <summary>The fewest places that stay empty; null where that was not found out.</summary>
    private int? Empty(RotaProblem problem)
    {
        var model = new RotaModel(new RotaGrid(problem));
        var (price, _) = model.Price(RotaPart.Filled);
        model.Model.Minimize(price);
        var (status, solver) = thinking.Solve(model.Model, Share);
        return status == CpSolverStatus.Optimal ? (int)Math.Round(solver.ObjectiveValue) : null;
    }
}
