using CoopLessons.Core.Schedule;
using CoopLessons.Data.Log;
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

/// <summary>An activity placed on a date for some learners.</summary>
public sealed class PlannedSession : IFamilyOwned, IVersioned
{
    private PlannedSession() { }

    public PlannedSession(Guid id, Guid activityId, DateOnly date, int? startsAt, int order, IEnumerable<Guid> learners)
    {
        (Id, ActivityId, Order) = (id, activityId, order);
        Learners = [.. learners];
        Place(date, startsAt);
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public Guid ActivityId { get; private set; }
    public DateOnly Date { get; private set; }

    /// <summary>Minutes after midnight, or null where only the order of the day is known.</summary>
    public int? StartsAt { get; private set; }
    public int Order { get; private set; }
    public List<Guid> Learners { get; private set; } = [];
    public SessionState State { get; private set; }

    /// <summary>The entry that says it was done.</summary>
    public Guid? EntryId { get; private set; }
    public int Version { get; private set; }

    public void Place(DateOnly date, int? startsAt) => (Date, StartsAt) = (date, startsAt);

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

    /// <summary>Whether the session stands already as the change would leave it.</summary>
    public bool Meets(PlanChange change) => change.To is { } to
        ? Date == to && State is SessionState.Planned or SessionState.NotDone
        : State == SessionState.LetGo;

    /// <summary>Whether the session is not done and still where the change found it.</summary>
    public bool CanTake(PlanChange change) => State != SessionState.Done && Date == change.From;

    /// <exception cref="InvalidOperationException">The session is done.</exception>
    public void Take(PlanChange change)
    {
        if (change.To is { } to)
            MoveTo(to);
        else
            LetGo();
    }

    private void RefuseIfDone()
    {
        if (State == SessionState.Done)
            throw new InvalidOperationException("What is done is changed in the log.");
    }

    internal sealed class Mapping : IEntityTypeConfiguration<PlannedSession>
    {
        public void Configure(EntityTypeBuilder<PlannedSession> b)
        {
            b.HasKey(s => new { s.FamilyId, s.Id });
            b.HasIndex(s => new { s.FamilyId, s.Date });
            b.Property(s => s.Learners).AsJson();
            b.HasOne<Activity>().WithMany().HasForeignKey(s => new { s.FamilyId, s.ActivityId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
