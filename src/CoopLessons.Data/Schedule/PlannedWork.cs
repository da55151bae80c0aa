using CoopLessons.Core.Hours;
using CoopLessons.Core.Units;
using CoopLessons.Data.Log;
using CoopLessons.Data.Planning;

namespace CoopLessons.Data.Schedule;

/// <summary>
/// A planned session together with what is done in it. Done, taken back and done again go through here, since the
/// bookmark of a course or of a loop moves with them.
/// </summary>
/// <param name="Course">Where it is a lesson.</param>
/// <param name="Loop">Where it is a step.</param>
public sealed record PlannedWork(PlannedSession Session, Doing Doing, Course? Course = null, LessonLoop? Loop = null)
{
    public string Title => Doing.Title;

    public int Minutes => Doing.Minutes;

    /// <summary>How its minutes count.</summary>
    public TakenSplit Split => Doing.Split;

    /// <summary>The entry that says it was done as planned; null where it names no learner or no subject to credit.</summary>
    public EntryFacts? AsPlanned()
    {
        if (Session.Learners.Count == 0 || Split.Split.Count == 0)
            return null;
        var minutes = new Minutes(Minutes);
        // The planned hour is a wish; only what a parent writes down is a start.
        return new EntryFacts(
            Session.Date, null, Title, Place.Home, "",
            [.. Session.Learners.Distinct().Select(l => new LearnerTime(l, minutes))], Split.Split, Split.Touches);
    }

    /// <summary>Writes the entry that says it was done, and moves the bookmark on. The entry's id comes from the page, so that a repeat finds it.</summary>
    /// <exception cref="InvalidOperationException">The session is done: a second entry would count it twice.</exception>
    public LogEntry MarkDone(Guid entryId, EntryFacts facts, Author author, DateTime now)
    {
        var entry = Session.MarkDone(entryId, facts, author, now);
        Session.Did(Course?.LessonDone(), Loop?.StepDone().Id);
        return entry;
    }

    /// <summary>The entry was removed: the session is planned again, and the bookmark goes back to what was not done after all.</summary>
    public void Undo()
    {
        Session.Undo();
        if (Session.LessonNumber is { } lesson)
            Course?.TakeBack(lesson);
        if (Session.StepId is { } step)
            Loop?.TakeBack(step);
    }

    /// <summary>An entry that says it was done, and had been removed, stands again.</summary>
    public void DoneAgain(Guid entryId)
    {
        Session.DoneAgain(entryId);
        if (Session.LessonNumber is { } lesson)
            Course?.DoneAgain(lesson);
        if (Session.StepId is { } step)
            Loop?.DoneAgain(step);
    }
}
