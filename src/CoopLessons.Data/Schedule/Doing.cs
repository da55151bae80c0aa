using CoopLessons.Core.Units;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Units;

namespace CoopLessons.Data.Schedule;

/// <summary>What is done in a session, whatever stands behind it: an activity, a lesson of a course, a step of a loop.</summary>
/// <param name="Title">With the lesson's number or the step's title, such as "Mathematics, lesson 61".</param>
/// <param name="Minutes">The session's own length where it has one.</param>
/// <param name="WaitingMinutes">0 where nothing is waited for.</param>
/// <param name="Kind">Null where it is not an activity.</param>
/// <param name="Split">How its minutes count.</param>
/// <param name="Activity">With steps, supplies and cautions, where it is one.</param>
public sealed record Doing(
    string Title, int Minutes, AdultNeed Need, int WaitingMinutes, string WaitingFor, ActivityKind? Kind, TakenSplit Split, Activity? Activity)
{
    /// <summary>The lists of the activity; empty ones for a lesson or a step.</summary>
    public ActivityDetails Details => Activity?.Details ?? ActivityDetails.Empty;

    /// <summary>What a child does, one step a line; empty where it is written elsewhere, such as in the course's own book.</summary>
    public string Does => Activity?.Does ?? "";

    /// <param name="leftOut">Subjects of its unit that the family leaves out. What was planned before its last subject was left out counts as it was written.</param>
    internal static Doing Of(PlannedSession session, Activity activity, IReadOnlySet<Guid> leftOut) => new(
        activity.Title, session.Minutes ?? activity.HandsOnMinutes, activity.AdultNeed, activity.WaitingMinutes, activity.WaitingFor, activity.Kind,
        activity.Split(leftOut) ?? new TakenSplit(activity.Details.Weights, activity.Details.Touches), activity);

    /// <param name="lesson">Null where all are done.</param>
    internal static Doing Of(PlannedSession session, Course course, int? lesson) => new(
        Named(course.Title, lesson is null ? "" : $", lesson {lesson}"), session.Minutes ?? course.Minutes, course.Need, 0, "", null, course.Split, null);

    internal static Doing Of(PlannedSession session, LessonLoop loop, LoopStep step) => new(
        Named(loop.Title, $": {step.Title}"), session.Minutes ?? loop.Minutes, loop.Need, 0, "", null, LessonLoop.Split(step), null);

    // Together they are no longer than an entry of the log takes: 120 signs and 120.
    private static string Named(string title, string more)
    {
        var room = Log.LogRevision.LongestWhat - more.Length;
        return (title.Length > room ? title[..(room - 1)] + "…" : title) + more;
    }
}
