using CoopLessons.Core.Schedule;
using CoopLessons.Data.Schedule;

namespace CoopLessons.Data.Planning;

/// <summary>A week with the plan that was computed for it, and what taking it would change.</summary>
public sealed record WeekLaid(WeekAtHand AtHand, WeekPlan Plan, PlanProposal Proposal)
{
    /// <summary>Lays a week out. It may take seconds.</summary>
    /// <exception cref="InvalidOperationException">The plan breaks a rule, which is a fault of the program: it is never shown nor saved.</exception>
    public static WeekLaid Of(WeekAtHand week, string title, Effort effort, Action<LayoutProgress>? progress, CancellationToken ct)
    {
        var plan = WeekLayout.Solve(week.Problem, effort, progress, ct);
        Check(week.Problem, plan.Places);
        return new WeekLaid(week, plan, ProposalOf(week, plan, title));
    }

    /// <summary>Holds a plan against the rules by code that knows nothing of how it was found. What was set by hand may break them.</summary>
    /// <exception cref="InvalidOperationException">It breaks one.</exception>
    public static void Check(WeekProblem problem, IReadOnlyList<Placing> places)
    {
        var byHand = problem.Sessions.Where(s => s.Fixed).Select(s => s.Id).ToHashSet();
        var fault = PlanCheck.Faults(problem, places).FirstOrDefault(f => !byHand.Contains(f.SessionId) && !f.With.Any(byHand.Contains));
        if (fault is not null)
            throw new InvalidOperationException($"A laid-out week breaks a rule: {fault.Sentence}");
    }

    private static PlanProposal ProposalOf(WeekAtHand week, WeekPlan plan, string title)
    {
        var changes = new List<PlanChange>();
        var added = new List<AddedSession>();
        foreach (var place in plan.Places)
        {
            var wanted = week.Of(place.SessionId);
            var adult = week.Adults.Any(a => a.Id == place.Adult) ? place.Adult : null;
            if (wanted.From is not { } stood)
                added.Add(new AddedSession(
                    wanted.SessionId, wanted.Source.ActivityId, wanted.Source.CourseId, wanted.Source.LoopId, wanted.Learners,
                    new PlanPlace(place.Day, place.StartsAt, 0, place.LooksAt, adult, wanted.OwnMinutes)));
            else
                Change(wanted, stood with
                {
                    Date = place.Day,
                    StartsAt = place.StartsAt,
                    LooksAt = place.LooksAt,
                    AdultId = adult,
                    Minutes = wanted.OwnMinutes,
                    State = PlanState.Planned,
                });
        }

        // What found no place and stands in these days keeps its day and loses its hour: nothing is let go unasked.
        foreach (var misfit in plan.Misfits.Select(m => week.Of(m.SessionId)).Where(w => w.From is not null && week.Problem.Days.Contains(w.MustBeOn ?? w.From.Date)))
            Change(misfit, misfit.From! with { Date = misfit.MustBeOn ?? misfit.From.Date, StartsAt = null, LooksAt = null, AdultId = null });
        foreach (var omitted in week.Omitted.Where(o => o.From is not null))
            Change(omitted, week.Ask.LeftOut.Contains(omitted.Key)
                ? null
                : omitted.From! with { Date = week.NextWeek, StartsAt = null, LooksAt = null, AdultId = null, State = PlanState.Planned });
        var leftOut = week.Omitted.Where(o => o.From is null && week.Ask.LeftOut.Contains(o.Key)).Select(o => o.Source.ActivityId).OfType<Guid>();
        return new PlanProposal(title, changes, added, [], [.. leftOut]);

        void Change(Wanted wanted, PlanPlace? to)
        {
            if (to != wanted.From)
                changes.Add(new PlanChange(wanted.SessionId, wanted.From!, to));
        }
    }
}
