using CoopLessons.Core.Units;
using Google.OrTools.Sat;

namespace CoopLessons.Core.Schedule.Layout;

/// <summary>The time of one day in sums: what a learner's day and its halves can hold, and what the adults' hands can.</summary>
internal sealed class AssignmentSums(GridWeek week, CpModel model, BoolVar?[,,] half, int day)
{
    public void Add()
    {
        for (var l = 0; l < week.Learners; l++)
            AddLearner(l);
        var hands = Sum(0, Slots.PerDay, HandsFree);
        AddSum(s => s.HandsLoad, hands, _ => true);
        if (Whole(HandsFree))
            AddSum(s => s.Need == AdultNeed.HandsOn ? s.Length : 0, Sum(Slots.Noon, Slots.PerDay, HandsFree), h => h == 1);
        AddSum(s => s.Need == AdultNeed.HandsOn ? s.Length : 0, Sum(0, Slots.Noon, HandsFree), h => h == 0);
        if (week.Adults != 1)
            return;
        var adult = Sum(0, Slots.PerDay, t => week.AdultFree[0][day][t] ? 1 : 0);
        for (var l = 0; l < week.Learners; l++)
        {
            var learner = l;
            AddSum(s => s.Need == AdultNeed.Beside && s.Learners.Contains(learner) ? s.Load : s.HandsLoad, adult, _ => true);
        }
    }

    private int HandsFree(int t) =>
        week.Adults == 1
            ? week.AdultFree[0][day][t] && !week.BesideFixed[day][t] ? 1 : 0
            : week.AdultFree.Count(a => a[day][t]);

    private static int Sum(int from, int to, Func<int, int> free) => Enumerable.Range(from, to - from).Sum(free);

    // Nothing free reaches over noon, so that what is not over by noon lies wholly after it.
    private static bool Whole(Func<int, int> free) => free(Slots.Noon - 1) == 0 || free(Slots.Noon) == 0;

    private void AddLearner(int l)
    {
        var free = new bool[Slots.Length];
        for (var t = 0; t < Slots.PerDay; t++)
            free[t] = week.Open[l][day][t] && !week.Taken[l][day][t];
        var rest = week.Sessions.Where(s => s.Learners.Contains(l)).Select(s => Rest(s, l)).DefaultIfEmpty(0).Max();
        // The last rest of each stretch may reach beyond it.
        var runs = Slots.Runs(free).ToList();
        AddSum(s => s.Learners.Contains(l) ? s.Length + Rest(s, l) + s.LookLength : 0, runs.Sum(r => r.To - r.From + rest), _ => true);
        AddSum(s => s.Learners.Contains(l) ? s.Length + Rest(s, l) : 0, runs.Where(r => r.From < Slots.Noon).Sum(r => Math.Min(r.To, Slots.Noon) - r.From + rest), h => h == 0);
        if (Whole(t => free[t] ? 1 : 0))
            AddSum(s => s.Learners.Contains(l) ? s.Length + Rest(s, l) : 0, runs.Where(r => r.From >= Slots.Noon).Sum(r => r.To - r.From + rest), h => h == 1);
    }

    private static int Rest(GridSession s, int learner) => s.Rests[Array.IndexOf(s.Learners, learner)];

    private void AddSum(Func<GridSession, int> size, int room, Func<int, bool> which)
    {
        var literals = new List<BoolVar>();
        var sizes = new List<long>();
        foreach (var s in week.Sessions)
            for (var h = 0; h < Assignment.Kinds; h++)
                if (which(h) && size(s) > 0 && half[s.Index, day, h] is { } literal)
                {
                    literals.Add(literal);
                    sizes.Add(size(s));
                }

        if (sizes.Sum() > room)
            model.Add(LinearExpr.WeightedSum(literals, sizes) <= room);
    }
}
