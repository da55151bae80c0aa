using CoopLessons.Core.Schedule;
using CoopLessons.Data.Log;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Schedule;

/// <summary>Where a planned session stands. "Not done" is no reproach: it can be moved or let go.</summary>
public enum SessionState
{
    Planned,
    Done,
    NotDone,
    LetGo,
}

/// <summary>Something placed on a date for some learners: an activity, the next lesson of a course, or the next step of a loop.</summary>
public sealed class PlannedSession : IFamilyOwned, IVersioned
{
    private PlannedSession() { }

    /// <summary>An activity of a unit.</summary>
    public PlannedSession(Guid id, Guid activityId, DateOnly date, int? startsAt, int order, IEnumerable<Guid> learners)
        : this(id, (activityId, null, null), date, startsAt, order, learners) { }

    /// <exception cref="ArgumentException">Not exactly one of activity, course and loop.</exception>
    private PlannedSession(Guid id, (Guid? Activity, Guid? Course, Guid? Loop) of, DateOnly date, int? startsAt, int order, IEnumerable<Guid> learners)
    {
        Guid?[] sources = [of.Activity, of.Course, of.Loop];
        if (sources.Count(s => s is not null) != 1)
            throw new ArgumentException("A session holds an activity, a lesson of a course, or a step of a loop: one of them.", nameof(of));
        (Id, ActivityId, CourseId, LoopId, Order) = (id, of.Activity, of.Course, of.Loop, order);
        Learners = [.. learners];
        Place(date, startsAt);
    }

    /// <summary>The next lesson of a course, whichever that is when it is done.</summary>
    public static PlannedSession OfCourse(Guid id, Guid courseId, DateOnly date, int? startsAt, int order, IEnumerable<Guid> learners) =>
        new(id, (null, courseId, null), date, startsAt, order, learners);

    /// <summary>The next step of a loop, whichever that is when it is done.</summary>
    public static PlannedSession OfLoop(Guid id, Guid loopId, DateOnly date, int? startsAt, int order, IEnumerable<Guid> learners) =>
        new(id, (null, null, loopId), date, startsAt, order, learners);

    /// <summary>A session that a proposal adds.</summary>
    public static PlannedSession Of(AddedSession added)
    {
        var session = new PlannedSession(added.Id, (added.ActivityId, added.CourseId, added.LoopId), added.Place.Date, added.Place.StartsAt, added.Place.Order, added.Learners);
        session.Stand(added.Place);
        return session;
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }

    /// <summary>Exactly one of this, <see cref="CourseId"/> and <see cref="LoopId"/> is there.</summary>
    public Guid? ActivityId { get; private set; }
    public Guid? CourseId { get; private set; }
    public Guid? LoopId { get; private set; }
    public DateOnly Date { get; private set; }

    /// <summary>Minutes after midnight, or null where only the order of the day is known.</summary>
    public int? StartsAt { get; private set; }
    public int Order { get; private set; }

    /// <summary>A length of its own where it is shortened or drawn out; null for the length of what is done in it.</summary>
    public int? Minutes { get; private set; }

    /// <summary>When somebody looks after its wait, where an hour was set; minutes after midnight.</summary>
    public int? LooksAt { get; private set; }

    /// <summary>Whose hands it takes; null where nobody was named.</summary>
    public Guid? AdultId { get; private set; }

    /// <summary>Set by hand: a layout leaves it where it is.</summary>
    public bool Pinned { get; private set; }
    public List<Guid> Learners { get; private set; } = [];
    public SessionState State { get; private set; }

    /// <summary>The entry that says it was done.</summary>
    public Guid? EntryId { get; private set; }

    /// <summary>The lesson of the course that was done, kept when that is taken back, so that a restored entry finds it.</summary>
    public int? LessonNumber { get; private set; }

    /// <summary>The step of the loop that was done, kept likewise.</summary>
    public Guid? StepId { get; private set; }
    public int Version { get; private set; }

    /// <summary>Everything that the plan says of it. What is done is not in the plan any more and has no such place.</summary>
    public PlanPlace Stands => new(
        Date, StartsAt, Order, LooksAt, AdultId, Minutes, Pinned,
        State switch { SessionState.NotDone => PlanState.NotDone, SessionState.LetGo => PlanState.LetGo, _ => PlanState.Planned });

    /// <summary>Puts it on a day and, if it matters, at a time; the hour at which to look after its wait follows from there.</summary>
    public void Place(DateOnly date, int? startsAt)
    {
        if ((date, startsAt) != (Date, StartsAt))
            LooksAt = null;
        (Date, StartsAt) = (date, startsAt);
    }

    /// <summary>Holds it where it is, or lets layouts move it.</summary>
    public void Pin(bool pinned) => Pinned = pinned;

    /// <summary>Names whose hands it takes.</summary>
    public void TakeHandsOf(Guid? adultId) => AdultId = adultId;

    /// <param name="minutes">Null for the length of what is done in it.</param>
    public void Last(int? minutes) => Minutes = minutes;

    /// <summary>Moves what is not done yet; a session let go or not done is planned again.</summary>
    /// <exception cref="InvalidOperationException">The session is done.</exception>
    public void MoveTo(DateOnly date)
    {
        RefuseIfDone();
        (Date, State) = (date, SessionState.Planned);
    }

    public void StandAt(int order) => Order = order;

    /// <exception cref="InvalidOperationException">The session is done.</exception>
    public void NotToday()
    {
        RefuseIfDone();
        State = SessionState.NotDone;
    }

    /// <exception cref="InvalidOperationException">The session is done.</exception>
    public void LetGo()
    {
        RefuseIfDone();
        State = SessionState.LetGo;
    }

    /// <summary>Takes "not today" or "let go" back.</summary>
    public void PlanAgain()
    {
        RefuseIfDone();
        State = SessionState.Planned;
    }

    /// <summary>Writes the entry that says it was done. The entry's id comes from the page, so that a repeat finds it.</summary>
    /// <exception cref="InvalidOperationException">The session is done: a second entry would count it twice.</exception>
    public LogEntry MarkDone(Guid entryId, EntryFacts facts, Author author, DateTime now)
    {
        RefuseIfDone();
        var entry = LogEntry.Write(entryId, facts, author, now, Id);
        (State, EntryId) = (SessionState.Done, entryId);
        return entry;
    }

    /// <summary>The entry was removed: the session is planned again.</summary>
    public void Undo() => (State, EntryId) = (SessionState.Planned, null);

    /// <summary>An entry that says it was done, and had been removed, stands again.</summary>
    public void DoneAgain(Guid entryId) => (State, EntryId) = (SessionState.Done, entryId);

    /// <summary>Which lesson of a course was done, or which step of a loop.</summary>
    internal void Did(int? lesson, Guid? step) => (LessonNumber, StepId) = (lesson, step);

    /// <summary>Whether the session stands already as the change would leave it.</summary>
    public bool Meets(PlanChange change) => State != SessionState.Done && Stands == change.Then;

    /// <summary>Whether the session is not done and still where the change found it.</summary>
    public bool CanTake(PlanChange change) => State != SessionState.Done && Stands == change.From;

    /// <exception cref="InvalidOperationException">The session is done.</exception>
    public void Take(PlanChange change)
    {
        RefuseIfDone();
        Stand(change.Then);
    }

    private void Stand(PlanPlace then)
    {
        (Date, StartsAt, Order, LooksAt) = (then.Date, then.StartsAt, then.Order, then.LooksAt);
        (AdultId, Minutes, Pinned) = (then.AdultId, then.Minutes, then.Pinned);
        State = then.State switch { PlanState.NotDone => SessionState.NotDone, PlanState.LetGo => SessionState.LetGo, _ => SessionState.Planned };
    }

    /// <summary>
    /// The change that moves it from one day to another with everything else as it is, or, with null, lets it go. Where it is
    /// there by now, the change says so and does nothing; where it left the first day otherwise, the plan will refuse it.
    /// </summary>
    public PlanChange ToDay(DateOnly from, DateOnly? to)
    {
        var isThere = to is null ? Date == from && State == SessionState.LetGo : Date == to && Date != from && State is SessionState.Planned or SessionState.NotDone;
        return isThere ? new PlanChange(Id, Stands, Stands)
            : new PlanChange(Id, Stands with { Date = from }, to is { } date ? Stands with { Date = date, State = PlanState.Planned } : null);
    }

    private void RefuseIfDone()
    {
        if (State == SessionState.Done)
            throw new InvalidOperationException("What is done is changed in the log.");
    }

    internal sealed class Mapping : IEntityTypeConfiguration<PlannedSession>
    {
        private const string OneOf =
            """
            (CASE WHEN "ActivityId" IS NULL THEN 0 ELSE 1 END) + (CASE WHEN "CourseId" IS NULL THEN 0 ELSE 1 END) + (CASE WHEN "LoopId" IS NULL THEN 0 ELSE 1 END) = 1
            """;

        public void Configure(EntityTypeBuilder<PlannedSession> b)
        {
            b.HasKey(s => new { s.FamilyId, s.Id });
            b.HasIndex(s => new { s.FamilyId, s.Date });
            b.Property(s => s.Learners).AsJson();
            b.HasOne<Activity>().WithMany().HasForeignKey(s => new { s.FamilyId, s.ActivityId }).OnDelete(DeleteBehavior.Cascade);
            b.HasOne<Course>().WithMany().HasForeignKey(s => new { s.FamilyId, s.CourseId }).OnDelete(DeleteBehavior.Cascade);
            b.HasOne<LessonLoop>().WithMany().HasForeignKey(s => new { s.FamilyId, s.LoopId }).OnDelete(DeleteBehavior.Cascade);
            // No action rather than restrict: where the whole family goes, both go with it.
            b.HasOne<TeachingAdult>().WithMany().HasForeignKey(s => new { s.FamilyId, s.AdultId }).OnDelete(DeleteBehavior.NoAction);
            b.Ignore(s => s.Stands);
            b.ToTable(t => t.HasCheckConstraint("CK_PlannedSessions_OneOf", OneOf));
        }
    }
}
