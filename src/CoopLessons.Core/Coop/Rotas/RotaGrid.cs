namespace CoopLessons.Core.Coop.Rotas;

/// <summary>A rota in numbers: meetings, roles, adults and families by their place in the problem.</summary>
internal sealed class RotaGrid
{
    public RotaGrid(RotaProblem problem)
    {
        Problem = problem;
        Meetings = [.. problem.Meetings];
        Roles = [.. problem.Roles];
        Adults = [.. problem.Adults];
        Families = [.. problem.Families];
        Family = [.. Adults.Select(a => Array.FindIndex(Families, f => f.Id == a.Family))];
        Household = Kinship.Groups([.. Adults.Select(a => (a.Family, a.Household))]);
        var away = problem.Absences.ToHashSet();
        There = [.. Meetings.Select(m => Adults.Select(a => !away.Contains(new RotaAbsence(a.Id, m))).ToArray())];
        May = [.. Roles.Select(r => Adults.Select(a => r.Only is not { } only || only.Contains(a.Id)).ToArray())];
        Rooms = [.. problem.Rooms.Select(room => (room, (int[])[.. room.Roles.Select(id => Array.FindIndex(Roles, r => r.Id == id))]))];
        Shares = Families.Sum(f => f.Share);
        Pool = 100L * Meetings.Length * Roles.Sum(r => r.Places * r.Weight) + Families.Sum(f => f.PastHundredths);
    }

    public RotaProblem Problem { get; }
    public DateOnly[] Meetings { get; }
    public RotaRole[] Roles { get; }
    public RotaAdult[] Adults { get; }
    public RotaFamily[] Families { get; }

    /// <summary>By adult.</summary>
    public int[] Family { get; }

    /// <summary>By adult; the same number for those who count as one.</summary>
    public int[] Household { get; }

    /// <summary>By meeting and adult.</summary>
    public bool[][] There { get; }

    /// <summary>By role and adult.</summary>
    public bool[][] May { get; }

    public (RotaRoom Room, int[] Roles)[] Rooms { get; }
    public long Shares { get; }
    private long Pool { get; }

    public bool Can(int m, int r, int a) => There[m][a] && May[r][a];

    public RotaTurn Turn(int m, int r, int a) => new(Meetings[m], Roles[r].Id, Adults[a].Id);

    public int Meeting(DateOnly day) => Array.IndexOf(Meetings, day);

    public long WishPrice(int m, int r, int a) =>
        Problem.Wishes.Where(w => RotaCheck.Meets(w, Turn(m, r, a))).Sum(w => -(long)w.Weight);

    /// <summary>What so many weighted turns of a family cost.</summary>
    public long PriceOfTurns(int family, long weighted)
    {
        var f = Families[family];
        return FairPrice.Of(Shares * (100 * weighted + f.PastHundredths) - f.Share * Pool, 100 * Shares);
    }

    /// <summary>What so many turns of a family in one role cost.</summary>
    public long PriceOfRole(int family, int role, long turns) =>
        FairPrice.Of(Shares * turns - (long)Families[family].Share * Roles[role].Places * Meetings.Length, Shares);

    /// <summary>The turns in the order of the problem.</summary>
    public List<RotaTurn> InOrder(IEnumerable<RotaTurn> turns)
    {
        var (roles, adults) = (Roles.Select((r, i) => (r.Id, i)).ToDictionary(p => p.Id, p => p.i), Adults.Select((a, i) => (a.Id, i)).ToDictionary(p => p.Id, p => p.i));
        return [.. turns.OrderBy(t => t.Meeting).ThenBy(t => roles.GetValueOrDefault(t.Role)).ThenBy(t => adults.GetValueOrDefault(t.Adult))];
    }
}
