namespace CoopLessons.Core.Schedule.Layout;

/// <summary>Plans made by putting one session after another into the best place that is left: quick, valid, seldom good.</summary>
internal static class FirstPlans
{
    private const int Tries = 40;

    /// <summary>The cheapest of some tries in different orders; the first try follows weight and length alone.</summary>
    public static Draft Best(GridWeek week, CancellationToken ct)
    {
        var order = GridDomains.InOrder(week.Sessions);
        var draw = new SplitMix64(7);
        Draft? best = null;
        var cost = int.MaxValue;
        for (var attempt = 0; attempt < Tries && cost > 0; attempt++)
        {
            ct.ThrowIfCancellationRequested();
            var keys = new int[week.Sessions.Length];
            foreach (var s in week.Sessions)
                keys[s.Index] = (s.HasOld ? 4000 : 0) + s.Worth * 40 + s.Length * s.Learners.Length * 4 + (s.Looks ? 60 : 0) + (s.Source.Bound is null ? 0 : 200)
                    + (attempt == 0 ? 0 : draw.Below(40 * (1 + attempt % 8)));
            // A session is as urgent as the most urgent one that waits for it.
            foreach (var s in Enumerable.Reverse(order))
                foreach (var (before, _) in s.After)
                    keys[before] = Math.Max(keys[before], keys[s.Index] + 1);
            var draft = Fill(week, [.. order.OrderByDescending(s => keys[s.Index])], attempt);
            var price = draft.Price(week).Total;
            if (price < cost)
                (best, cost) = (draft, price);
        }

        best ??= new Draft(week.Sessions.Length);
        best.PutAlikeInOrder(week);
        return best;
    }

    private static Draft Fill(GridWeek week, List<GridSession> order, int attempt)
    {
        var draft = new Draft(week.Sessions.Length);
        var books = new DayBooks(week);
        var load = week.FixedLoad.Select(l => l.ToArray()).ToArray();
        foreach (var s in order.Where(s => s.Possible))
        {
            if (s.After.Any(a => draft.Day[a.Before] < 0))
                continue;
            var best = (Score: long.MaxValue, Day: -1, Start: -1, Look: -1, Hands: -1, Looker: -1);
            for (var d = 0; d < week.Days; d++)
            {
                if (s.Starts[d].Length == 0 || s.After.Any(a => draft.Day[a.Before] + a.Lag > d))
                    continue;
                var dayScore = DayScore(week, draft, load, s, d);
                if (dayScore >= best.Score)
                    continue;
                var from = s.After.Where(a => draft.Day[a.Before] == d).Select(a => End(week.Sessions[a.Before], draft)).DefaultIfEmpty(0).Max();
                foreach (var t in s.Starts[d])
                {
                    var score = dayScore + (s.WishesMorning && !s.IsMorning(t) ? 4000 : 0) + (d == s.OldDay && t != s.OldStart ? 500 : 0)
                        + (attempt % 3 == 2 ? Math.Abs(Slots.Noon - t) : t);
                    if (t >= from && score < best.Score && books.Fits(s, d, t, out var look, out var hands, out var looker))
                        best = (score, d, t, look, hands, looker);
                }
            }

            if (best.Day < 0)
                continue;
            (draft.Day[s.Index], draft.Start[s.Index], draft.Look[s.Index], draft.Hands[s.Index], draft.Looker[s.Index]) =
                (best.Day, best.Start, best.Look, best.Hands, best.Looker);
            books.Enter(s, draft);
            foreach (var l in s.Learners)
                load[l][best.Day] += s.Load;
        }

        return draft;
    }

    private static int End(GridSession s, Draft draft) =>
        s.Looks ? draft.Look[s.Index] + s.LookLength : draft.Start[s.Index] + s.Length;

    // In thousandths of the units of the cost, so that the time of day decides only between equals.
    private static long DayScore(GridWeek week, Draft draft, int[][] load, GridSession s, int d)
    {
        long score = s.HasOld && d != s.OldDay ? 10_000 : 0;
        score += s.WishedDays is { } wished && !wished[d] ? 4_000 : 0;
        foreach (var l in s.Learners)
            score += 1000L * (load[l][d] + s.Load - week.Target[l][d]) / 4;
        foreach (var subject in week.Subjects)
            if (subject.Members.Contains(s.Index) && subject.Fixed[d] + subject.Members.Count(m => draft.Day[m] == d) >= subject.Share)
                score += 6_000;
        return score;
    }
}
