using CoopLessons.Core.Units;

namespace CoopLessons.Core.Schedule.Layout;

/// <summary>Which starts a session may have at all: windows, bounds, adults and fixed sessions are all in here.</summary>
internal static class GridDomains
{
    public static void Set(GridWeek week)
    {
        foreach (var session in week.Sessions)
        {
            var limits = Limits(week, session, heedFollowers: true);
            Fill(week, session, limits);
            if (session.Starts.All(s => s.Length == 0))
                // What comes after it is fixed too early: that order is broken already, so it is laid as if nothing followed.
                Fill(week, session, Limits(week, session, heedFollowers: false));
        }

        var first = new int[week.Sessions.Length];
        foreach (var session in InOrder(week.Sessions))
        {
            var earliest = 0;
            foreach (var (before, lag) in session.After)
                earliest = Math.Max(earliest, week.Sessions[before].Possible ? first[before] + lag : week.Days);
            for (var d = 0; d < Math.Min(earliest, week.Days); d++)
                session.Starts[d] = [];
            first[session.Index] = Array.FindIndex(session.Starts, s => s.Length > 0);
            session.Possible = first[session.Index] >= 0;
        }
    }

    /// <summary>What comes before stands before; else in the problem's order.</summary>
    public static List<GridSession> InOrder(IReadOnlyList<GridSession> sessions)
    {
        var order = new List<GridSession>(sessions.Count);
        var seen = new bool[sessions.Count];
        foreach (var session in sessions)
            Visit(session);
        return order;

        void Visit(GridSession session)
        {
            if (seen[session.Index])
                return;
            seen[session.Index] = true;
            foreach (var (before, _) in session.After)
                Visit(sessions[before]);
            order.Add(session);
        }
    }

    /// <summary>By day: the first slot in which it may start, and the slot by which it and its look must be over; null for no such day.</summary>
    private static (int From, int By)?[] Limits(GridWeek week, GridSession session, bool heedFollowers)
    {
        var days = week.Problem.Days;
        var limits = days.Select(d => session.Source.OnlyOn is { } only && !only.Contains(d) ? null : ((int From, int By)?)(0, Slots.PerDay)).ToArray();
        for (var d = 0; d < limits.Length; d++)
            foreach (var (other, place) in week.Fixed)
            {
                foreach (var before in session.Source.After.Where(a => a.SessionId == other.Id))
                    if (d - Position(days, place.Day) < before.DaysBefore || days[d] < place.Day)
                        limits[d] = null;
                    else if (days[d] == place.Day && limits[d] is { } limit)
                        limits[d] = (Math.Max(limit.From, Slots.Up(Math.Max(place.StartsAt + other.Minutes, place.LooksAt + other.Wait?.LookMinutes ?? 0))), limit.By);
                if (!heedFollowers)
                    continue;
                foreach (var after in other.After.Where(a => a.SessionId == session.Source.Id))
                    if (Position(days, place.Day) - d < after.DaysBefore || days[d] > place.Day)
                        limits[d] = null;
                    else if (days[d] == place.Day && limits[d] is { } limit)
                        limits[d] = (limit.From, Math.Min(limit.By, Slots.Down(place.StartsAt)));
            }

        return limits;
    }

    /// <summary>A day's place among the problem's days; one that is not among them stands with the last before it.</summary>
    private static int Position(IReadOnlyList<DateOnly> days, DateOnly day) =>
        GridWeek.IndexOf(days, day) is var at and >= 0 ? at : days.Count(d => d < day) - 1;

    private static void Fill(GridWeek week, GridSession session, (int From, int By)?[] limits)
    {
        session.Starts = new int[week.Days][];
        session.LookStarts = new bool[week.Days][];
        for (var d = 0; d < week.Days; d++)
        {
            session.Starts[d] = [];
            session.LookStarts[d] = [];
            if (limits[d] is not { } limit)
                continue;
            var bound = session.Source.Bound is { } b ? Slots.Within(b.Hours.On(week.Problem.Days[d])) : null;
            if (session.Looks)
            {
                session.LookStarts[d] = new bool[Slots.Length];
                for (var k = 0; k + session.LookLength <= limit.By; k++)
                    session.LookStarts[d][k] = Fits(week, session, d, bound, k, session.LookLength, AdultNeed.HandsOn);
            }

            var starts = new List<int>();
            for (var t = limit.From; t + session.Length <= limit.By; t++)
                if (Fits(week, session, d, bound, t, session.Length, session.Need) && RestFits(week, session, d, t)
                    && (!session.Looks || Slots.Any(session.LookStarts[d], Math.Min(Slots.Length, t + session.LookFrom), Math.Min(Slots.Length, t + session.LookTo + 1))))
                    starts.Add(t);
            session.Starts[d] = [.. starts];
        }
    }

    private static bool Fits(GridWeek week, GridSession session, int day, bool[]? bound, int from, int length, AdultNeed need)
    {
        var to = from + length;
        if (bound is not null && !Slots.All(bound, from, to))
            return false;
        foreach (var l in session.Learners)
            if (!Slots.All(week.Open[l][day], from, to) || Slots.Any(week.Taken[l][day], from, to))
                return false;
        return need switch
        {
            AdultNeed.HandsOn => week.AdultFree.Any(a => Slots.All(a[day], from, to)) && (week.Adults > 1 || !Slots.Any(week.BesideFixed[day], from, to)),
            AdultNeed.Beside => Enumerable.Range(from, length).All(t => week.AdultFree.Any(a => a[day][t])),
            _ => true,
        };
    }

    private static bool RestFits(GridWeek week, GridSession session, int day, int start)
    {
        for (var i = 0; i < session.Learners.Length; i++)
            if (Slots.Any(week.Taken[session.Learners[i]][day], start + session.Length, start + session.Length + session.Rests[i]))
                return false;
        return true;
    }
}
