namespace CoopLessons.Core.Coop.Rotas;

/// <summary>Why each adult has a turn, told as the term goes on.</summary>
internal static class RotaReasons
{
    public static List<RotaAssignment> Of(RotaGrid grid, List<RotaTurn> turns)
    {
        var families = grid.Adults.Select((a, i) => (a.Id, grid.Family[i])).ToDictionary(p => p.Id, p => p.Item2);
        var weights = grid.Roles.ToDictionary(r => r.Id, r => r.Weight);
        return [.. grid.InOrder(turns).Select(turn => new RotaAssignment(turn, Of(turn)))];

        TurnReason Of(RotaTurn turn)
        {
            var (m, r) = (grid.Meeting(turn.Meeting), Array.FindIndex(grid.Roles, q => q.Id == turn.Role));
            var own = families[turn.Adult];
            var candidates = Enumerable.Range(0, grid.Adults.Length).Where(a => grid.Can(m, r, a)).ToList();
            var others = candidates.Select(a => grid.Family[a]).Append(own).Distinct().ToList();
            var before = turns.Where(t => t.Meeting < turn.Meeting).ToList();
            var kind = candidates.Count <= 1 ? TurnReasonKind.OnlyOne
                : grid.Problem.Wishes.Where(w => RotaCheck.Meets(w, turn)).Sum(w => w.Weight) > 0 ? TurnReasonKind.Liked
                : others.All(f => Stand(own) <= Stand(f)) ? TurnReasonKind.FurthestBelow
                : others.All(f => InRole(own) * grid.Families[f].Share <= InRole(f) * grid.Families[own].Share) ? TurnReasonKind.RoleLeastOften
                : TurnReasonKind.EvenInTheEnd;
            return new TurnReason(kind, candidates.Count, Weighted(before, own), InRole(own), Weighted(turns, own));

            int Weighted(List<RotaTurn> some, int family) => some.Where(t => families[t.Adult] == family).Sum(t => weights[t.Role]);
            int InRole(int family) => before.Count(t => t.Role == turn.Role && families[t.Adult] == family);
            // Compared by what a share has had, so that a family with a double share may have had twice as much.
            decimal Stand(int family) => (100m * Weighted(before, family) + grid.Families[family].PastHundredths) / grid.Families[family].Share;
        }
    }
}
