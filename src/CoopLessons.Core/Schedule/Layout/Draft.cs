namespace CoopLessons.Core.Schedule.Layout;

/// <summary>A plan in the making: by session the day, start, look and whose hands; -1 for none.</summary>
internal sealed class Draft
{
    public Draft(int sessions)
    {
        (Day, Start, Look, Hands, Looker) = (new int[sessions], new int[sessions], new int[sessions], new int[sessions], new int[sessions]);
        for (var s = 0; s < sessions; s++)
            Remove(s);
    }

    private Draft(Draft other) =>
        (Day, Start, Look, Hands, Looker) = ([.. other.Day], [.. other.Start], [.. other.Look], [.. other.Hands], [.. other.Looker]);

    public int[] Day { get; }
    public int[] Start { get; }
    public int[] Look { get; }
    public int[] Hands { get; }
    public int[] Looker { get; }

    public Draft Copy() => new(this);

    public void Remove(int s) => Day[s] = Start[s] = Look[s] = Hands[s] = Looker[s] = -1;

    /// <summary>Puts the earlier of sessions that are alike where the earliest of them stands, and so on: that changes nothing but titles.</summary>
    public void PutAlikeInOrder(GridWeek week)
    {
        var led = week.Sessions.Where(s => s.NextAlike >= 0).Select(s => s.NextAlike).ToHashSet();
        foreach (var head in week.Sessions.Where(s => s.NextAlike >= 0 && !led.Contains(s.Index)))
        {
            List<int> group = [];
            for (var s = head.Index; s >= 0; s = week.Sessions[s].NextAlike)
                group.Add(s);
            var places = group.Select(s => (Day: Day[s], Start: Start[s], Look: Look[s], Hands: Hands[s], Looker: Looker[s]))
                .OrderBy(p => p.Day < 0).ThenBy(p => p.Day).ThenBy(p => p.Start).ToList();
            foreach (var (s, p) in group.Zip(places))
                (Day[s], Start[s], Look[s], Hands[s], Looker[s]) = (p.Day, p.Start, p.Look, p.Hands, p.Looker);
        }
    }

    public PlanCost Price(GridWeek week)
    {
        int leftOut = 0, moved = 0, uneven = 0, unmet = week.FixedUnmet;
        var load = week.FixedLoad.Select(l => l.ToArray()).ToArray();
        var hands = week.FixedHands.ToArray();
        foreach (var s in week.Sessions)
        {
            var d = Day[s.Index];
            leftOut += d < 0 ? s.Worth : 0;
            moved += s.HasOld && (d < 0 || d != s.OldDay) ? 1 : 0;
            unmet += (s.WishedDays is { } wished && (d < 0 || !wished[d]) ? 1 : 0) + (s.WishesMorning && (d < 0 || !s.IsMorning(Start[s.Index])) ? 1 : 0);
            if (d < 0)
                continue;
            foreach (var l in s.Learners)
                load[l][d] += s.Load;
            hands[d] += s.HandsLoad;
        }

        for (var d = 0; d < week.Days; d++)
        {
            for (var l = 0; l < week.Learners; l++)
                uneven += Math.Max(0, Math.Abs(load[l][d] - week.Target[l][d]) - GridWeek.Band);
            uneven += Math.Max(0, Math.Abs(hands[d] - week.HandsTarget[d]) - GridWeek.Band);
            foreach (var subject in week.Subjects)
                uneven += 6 * Math.Max(0, subject.Fixed[d] + subject.Members.Count(m => Day[m] == d) - subject.Share);
        }

        return new PlanCost(leftOut, moved, uneven, unmet);
    }
}
