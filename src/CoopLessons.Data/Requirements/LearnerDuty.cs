using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Duties;
using CoopLessons.Data.Families;

namespace CoopLessons.Data.Requirements;

/// <summary>Where a paper or a test stands for the family.</summary>
public enum DutyState
{
    /// <summary>Its date lies behind, and it is not done.</summary>
    Late,

    /// <summary>Its lead has begun.</summary>
    Near,
    Ahead,

    /// <summary>Its date follows from something that the family has not told.</summary>
    Waits,

    /// <summary>The law gives no date.</summary>
    Open,
    Done,
}

/// <summary>A paper or a test of a learner's year, with what the family says of it.</summary>
public sealed record LearnerDuty(LearnerFacts Learner, SchoolYear Year, DatedDuty Dated, DutyMark? Mark)
{
    /// <summary>Asked of the family without a condition: what a list of next things shows.</summary>
    public bool IsOwn => Dated.Duty is { Status: FigureStatus.Required, Voluntary: false, ByOthers: false, When: null };

    public DutyState State(DateOnly today) => this switch
    {
        { Mark.DoneOn: not null } => DutyState.Done,
        { Dated.Due: { } due } when due < today => DutyState.Late,
        { Dated: { Due: { } due, BeginBy: var begin } } => (begin ?? due) <= today ? DutyState.Near : DutyState.Ahead,
        { Dated.Missing: not null } => DutyState.Waits,
        _ => DutyState.Open,
    };

    /// <summary>Everything of one learner's year: by date, those without one last.</summary>
    public static IReadOnlyList<LearnerDuty> Of(LawOfLearner law)
    {
        var own = law.Marks.Where(m => m.SetDue is not null).ToDictionary(m => m.Key, m => m.SetDue!.Value);
        var dates = new DutyDates([.. law.Events.Select(e => new RecordedEvent(e.Event, e.On))], own);
        var marks = law.Marks.ToDictionary(m => m.Key);
        return [.. DutyList.Of(law.Learner, law.Spans, law.Year.Calendar, dates).Select(d => new LearnerDuty(law.Learner, law.Year, d, marks.GetValueOrDefault(d.Key)))];
    }

    /// <summary>The next paper that the family itself owes, a late one first; null where none is open with a date.</summary>
    public static LearnerDuty? Next(IEnumerable<LearnerDuty> duties, DateOnly today) =>
        duties.Where(d => d.IsOwn && d.State(today) is DutyState.Late or DutyState.Near or DutyState.Ahead).MinBy(d => d.Dated.Due);
}
