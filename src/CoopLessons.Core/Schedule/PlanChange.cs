namespace CoopLessons.Core.Schedule;

/// <summary>
/// One move of a planned session to another date, or off the calendar where <paramref name="To"/> is null.
/// Whoever proposes changes, a parent by hand or a computed layout, proposes them in this form; one verb of the plan
/// takes them, all or none.
/// </summary>
public sealed record PlanChange(Guid SessionId, DateOnly From, DateOnly? To);
