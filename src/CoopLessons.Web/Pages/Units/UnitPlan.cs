using CoopLessons.Core.Prepare.Supplies;
using CoopLessons.Core.Units;
using CoopLessons.Data.Families;
using CoopLessons.Data.Units;

namespace CoopLessons.Web.Pages.Units;

/// <summary>A subject's line in the grid: how many activities count for it in each week.</summary>
public sealed record SubjectLine(Guid Id, string Name, bool LeftOut, IReadOnlyList<int> Counts);

/// <summary>An activity as the family does it, or why it does not.</summary>
/// <param name="LeftOutWith">The left-out subjects that take the activity with them; empty where it was left out by itself or stays.</param>
public sealed record ActivityLine(
    Activity Activity, bool InPlan, IReadOnlyList<string> Subjects, IReadOnlyList<string> Touches, IReadOnlyList<string> LeftOutWith, IReadOnlyList<Caution> Cautions);

/// <summary>A supply of a week, joined over the activities in the plan.</summary>
public sealed record SupplyLine(string Name, string Unit, decimal Quantity, int Activities);

/// <param name="Minutes">Hands-on minutes of what is in the plan.</param>
public sealed record WeekLine(int Number, DateOnly? Monday, IReadOnlyList<ActivityLine> Activities, int Minutes, IReadOnlyList<SupplyLine> Supplies);

/// <summary>A unit as the family bends it: subjects by weeks, and the activities of each week.</summary>
public sealed class UnitPlan
{
    private UnitPlan(Unit unit) => Unit = unit;

    public Unit Unit { get; }
    public DateOnly Today { get; private init; }
    public int Learners { get; private init; }
    public IReadOnlyList<SubjectLine> Subjects { get; private init; } = [];
    public IReadOnlyList<WeekLine> Weeks { get; private init; } = [];

    public int Taken => Subjects.Count(s => !s.LeftOut);
    public int InPlan => Weeks.Sum(w => w.Activities.Count(a => a.InPlan));

    /// <summary>What meets whom in the plan, and in which activities.</summary>
    public IReadOnlyList<(string What, IReadOnlyList<ActivityLine> Activities)> Meetings =>
    [
        .. Weeks.SelectMany(w => w.Activities).Where(a => a.InPlan)
            .SelectMany(a => a.Cautions.Select(c => (What: CautionWords.Brief([c]), Line: a)))
            .GroupBy(x => x.What, x => x.Line)
            .Select(g => (g.Key, (IReadOnlyList<ActivityLine>)[.. g.Distinct()])),
    ];

    /// <param name="unit">With subjects and activities loaded.</param>
    /// <param name="subjects">All of the family's, retired ones too.</param>
    /// <param name="learners">Those who are taught now.</param>
    public static UnitPlan Of(Unit unit, IReadOnlyList<FamilySubject> subjects, IReadOnlyList<CautionedLearner> learners, DateOnly today)
    {
        var names = subjects.ToDictionary(s => s.Id, s => s.Name);
        var lines = unit.Activities.OrderBy(a => a.Order).ThenBy(a => a.Code, StringComparer.Ordinal)
            .GroupBy(a => a.Week).ToDictionary(g => g.Key, g => g.Select(a => Line(a, unit.LeftOut, names, learners)).ToList());
        return new UnitPlan(unit)
        {
            Today = today,
            Learners = learners.Count,
            Subjects = [.. Held(unit, subjects).Select(s => Line(unit, s))],
            Weeks = [.. Enumerable.Range(1, unit.Weeks).Select(n => Week(unit, n, lines.GetValueOrDefault(n, []), learners.Count))],
        };
    }

    /// <summary>How many of a supply a family needs: per learner, per two, or once. A family without learners counts as one.</summary>
    public static decimal Needed(Supply supply, int learners) => supply.Quantity * SupplyAsk.TimesFor(supply.Per, Math.Max(1, learners));

    /// <summary>The unit's subjects that an activity uses, in the family's order.</summary>
    private static IEnumerable<FamilySubject> Held(Unit unit, IReadOnlyList<FamilySubject> subjects)
    {
        var used = unit.Activities.SelectMany(a => a.Details.SubjectIds).ToHashSet();
        return subjects.Where(s => used.Contains(s.Id)).OrderBy(s => s.Order);
    }

    private static SubjectLine Line(Unit unit, FamilySubject subject)
    {
        var counts = new int[unit.Weeks];
        foreach (var activity in unit.InPlan())
        {
            if (activity.Week <= unit.Weeks && activity.Details.Weights.Any(w => w.SubjectId == subject.Id))
                counts[activity.Week - 1]++;
        }

        return new SubjectLine(subject.Id, subject.Name, unit.LeftOut.Contains(subject.Id), counts);
    }

    private static ActivityLine Line(Activity activity, IReadOnlySet<Guid> leftOut, Dictionary<Guid, string> names, IReadOnlyList<CautionedLearner> learners)
    {
        var split = activity.Split(leftOut);
        var details = activity.Details;
        return new ActivityLine(
            activity,
            activity.IsInPlan(leftOut),
            Names((split?.Split ?? details.Weights).Select(w => w.SubjectId)),
            Names(split?.Touches ?? details.Touches),
            split is null ? Names(details.Weights.Select(w => w.SubjectId)) : [],
            // Nobody is chosen for it yet: how near an adult stays is told for the ages for which it is written.
            [.. Cautions.Of(learners, learners, activity.Care).Where(c => c is not NearerAdult || details.Variants.Count == 0 || c.Learner.Age >= details.Variants.Min(v => v.FromAge))]);

        List<string> Names(IEnumerable<Guid> ids) => [.. ids.Where(names.ContainsKey).Select(id => names[id])];
    }

    private static WeekLine Week(Unit unit, int number, List<ActivityLine> activities, int learners)
    {
        var plan = activities.Where(a => a.InPlan).Select(a => a.Activity).ToList();
        var supplies = plan.SelectMany(a => a.Details.Supplies.Select(s => (Activity: a.Id, Supply: s)))
            .GroupBy(x => (Name: x.Supply.Name.Trim().ToUpperInvariant(), x.Supply.Unit))
            .Select(g => new SupplyLine(g.First().Supply.Name, g.Key.Unit, g.Sum(x => Needed(x.Supply, learners)), g.Select(x => x.Activity).Distinct().Count()))
            .OrderBy(s => s.Name, StringComparer.OrdinalIgnoreCase).ThenBy(s => s.Unit, StringComparer.Ordinal);
        return new WeekLine(number, unit.StartsOn?.AddDays(7 * (number - 1)), activities, plan.Sum(a => a.HandsOnMinutes), [.. supplies]);
    }
}
