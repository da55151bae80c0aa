using CoopLessons.Core.Schedule.Layout;

namespace CoopLessons.Core.Coop.Rotas;

/// <summary>
/// Why a place has nobody. Rules lie within a meeting and filling comes before fairness, so that one meeting by itself
/// says all.
/// </summary>
internal sealed class WhyOpen(RotaGrid grid, Thinking thinking)
{
    public List<RotaGap> Gaps(IReadOnlyList<RotaTurn> turns, int from)
    {
        var gaps = new List<RotaGap>();
        for (var m = from; m < grid.Meetings.Length; m++)
        {
            var open = Enumerable.Range(0, grid.Roles.Length)
                .Select(r => (R: r, Missing: grid.Roles[r].Places - turns.Count(t => t.Meeting == grid.Meetings[m] && t.Role == grid.Roles[r].Id)))
                .Where(p => p.Missing > 0).ToList();
            if (open.Count == 0)
                continue;
            var helps = new WhatHelps(grid, m, thinking).Of(open.Sum(p => p.Missing));
            gaps.AddRange(open.Select(p => Gap(m, p.R, p.Missing, helps)));
        }

        return gaps;
    }

    private RotaGap Gap(int m, int r, int missing, List<GapHelp> helps)
    {
        var (rule, sentence) = NobodyMay(m, r) ?? TooFew(m, r) ?? Room(m, r)
            ?? (GapRule.Rooms, CoopWords.RoomsTogether(grid.Roles[r], grid.Meetings[m]));
        return new RotaGap(grid.Meetings[m], grid.Roles[r].Id, missing, rule, sentence, helps);
    }

    private List<RotaAdult> Able(int m, IEnumerable<int> roles) =>
        [.. grid.Adults.Where((_, a) => roles.Any(r => grid.Can(m, r, a)))];

    private (GapRule, string)? NobodyMay(int m, int r)
    {
        var may = grid.Adults.Where((_, a) => grid.May[r][a]).ToList();
        if (may.Count == 0)
            return (GapRule.NobodyMay, CoopWords.NobodyMay(grid.Roles[r]));
        return Able(m, [r]).Count > 0 ? null : (GapRule.AllAway, CoopWords.AllAway(grid.Roles[r], grid.Meetings[m], may));
    }

    /// <summary>The fewest roles, this one among them, that have more places than adults (Hall's theorem on marriages, 1935, from memory).</summary>
    private (GapRule, string)? TooFew(int m, int r)
    {
        var others = Enumerable.Range(0, grid.Roles.Length).Where(q => q != r && grid.Roles[q].Places > 0).ToArray();
        return Enumerable.Range(0, 1 << others.Length).OrderBy(s => System.Numerics.BitOperations.PopCount((uint)s)).ThenBy(s => s)
            .Select(set => (int[])[r, .. others.Where((_, i) => (set >> i & 1) == 1)])
            .Where(roles => roles.Sum(q => grid.Roles[q].Places) > Able(m, roles).Count)
            .Select(roles => ((GapRule, string)?)(GapRule.TooFew, CoopWords.TooFew([.. roles.Order().Select(q => grid.Roles[q])], grid.Meetings[m], Able(m, roles))))
            .FirstOrDefault();
    }

    private (GapRule, string)? Room(int m, int r)
    {
        foreach (var (room, roles) in grid.Rooms.Where(p => p.Roles.Contains(r)))
        {
            var able = Enumerable.Range(0, grid.Adults.Length).Where(a => roles.Any(q => grid.Can(m, q, a))).ToList();
            var places = roles.Sum(q => grid.Roles[q].Places);
            if (room.LeastAdults > Math.Min(places, able.Count))
                return (GapRule.AdultsForChildren, CoopWords.TooFewForChildren(room, grid.Meetings[m], Math.Min(places, able.Count)));
            if (room.LeastUnrelated > Math.Min(places, able.Select(a => grid.Household[a]).Distinct().Count()))
                return (GapRule.Unrelated, CoopWords.TooRelated(room, grid.Meetings[m], [.. able.Select(a => grid.Adults[a])], places));
        }

        return null;
    }
}
