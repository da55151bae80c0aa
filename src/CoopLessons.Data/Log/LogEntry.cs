using CoopLessons.Core.Hours;
using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Log;

/// <summary>Who writes.</summary>
/// <param name="OnPhoneAt">When it was written on a phone without a network, UTC, as the phone says; null for what came at once.</param>
/// <param name="SentAs">The id under which a phone kept it, by which a second sending is known; null for what came at once.</param>
public sealed record Author(Guid PersonId, string Name, DateTime? OnPhoneAt = null, Guid? SentAs = null);

/// <summary>Everything an entry says, as one writing of it.</summary>
/// <param name="StartsAt">Minutes after midnight, or null.</param>
/// <param name="Times">Each learner once.</param>
/// <param name="Split">At least one subject; each once.</param>
public sealed record EntryFacts(
    DateOnly Date,
    int? StartsAt,
    string What,
    Place Place,
    string Note,
    IReadOnlyList<LearnerTime> Times,
    IReadOnlyList<SubjectWeight> Split,
    IReadOnlyList<Guid> Touches)
{
    /// <summary>Whether both say the same; the order in which learners and subjects were named says nothing.</summary>
    public bool SaysTheSame(EntryFacts other) =>
        (Date, StartsAt, What, Place, Note) == (other.Date, other.StartsAt, other.What, other.Place, other.Note)
        && Times.ToHashSet().SetEquals(other.Times) && Split.ToHashSet().SetEquals(other.Split) && Touches.ToHashSet().SetEquals(other.Touches);
}

/// <summary>
/// One thing that was done. The entry itself holds only which of its revisions is the newest; what it says stands in
/// the revisions, which are never changed.
/// </summary>
public sealed class LogEntry : IFamilyOwned, IVersioned
{
    private readonly List<LogRevision> _revisions = [];

    private LogEntry() { }

    public Guid FamilyId { get; private set; }

    /// <summary>Made on the page that wrote it, so that a second sending is recognised.</summary>
    public Guid Id { get; private set; }
    public Guid? SessionId { get; private set; }

    /// <summary>Number of the revision that holds.</summary>
    public int Newest { get; private set; }

    /// <summary>Number of the last revision that was set aside; 0 for none.</summary>
    public int LastAside { get; private set; }
    public int Version { get; private set; }

    /// <summary>Those that were loaded, which need not be all.</summary>
    public IReadOnlyList<LogRevision> Revisions => _revisions;

    public static LogEntry Write(Guid id, EntryFacts facts, Author author, DateTime now, Guid? sessionId = null, string why = "")
    {
        var entry = new LogEntry { Id = id, SessionId = sessionId };
        entry.Add(facts, author, now, why, removed: false);
        return entry;
    }

    public void Change(EntryFacts facts, Author author, DateTime now, string why) => Add(facts, author, now, why, removed: false);

    /// <summary>Takes the entry out of every total; its text stays readable in the history.</summary>
    public void Remove(LogRevision newest, Author author, DateTime now, string why) => Add(newest.Facts, author, now, why, removed: true);

    public void Restore(LogRevision newest, Author author, DateTime now, string why) => Add(newest.Facts, author, now, why, removed: false);

    /// <summary>
    /// Keeps what somebody wrote elsewhere at the same time beside what holds: it counts nowhere until a guardian says
    /// which of both is right.
    /// </summary>
    public void SetAside(EntryFacts facts, Author author, DateTime now, string why)
    {
        Add(facts, author, now, why, removed: false, aside: true);
        LastAside = Last;
    }

    /// <summary>A guardian's word on a revision that was set aside; from now on these facts hold.</summary>
    /// <param name="removed">The entry counts nowhere, as it did not before.</param>
    public void Answer(LogRevision aside, EntryFacts facts, bool removed, Author author, DateTime now, string why) =>
        Add(facts, author, now, why, removed, answers: aside.Number);

    private int Last => Math.Max(Newest, _revisions.Count == 0 ? LastAside : Math.Max(LastAside, _revisions.Max(r => r.Number)));

    private void Add(EntryFacts facts, Author author, DateTime now, string why, bool removed, bool aside = false, int? answers = null)
    {
        // The database would take what the arithmetic later cannot read.
        if (facts.StartsAt is < 0 or >= 1440)
            throw new ArgumentOutOfRangeException(nameof(facts), facts.StartsAt, "An entry begins at a minute of its day, 0–1439.");
        if (facts.Times.Count == 0 || facts.Split.Count == 0)
            throw new ArgumentException("An entry has a learner and a subject.", nameof(facts));
        var number = Last + 1;
        if (!aside)
            Newest = number;
        _revisions.Add(new LogRevision(number, facts, author, now, why, removed, aside, answers));
    }

    internal sealed class Mapping : IEntityTypeConfiguration<LogEntry>
    {
        public void Configure(EntityTypeBuilder<LogEntry> b)
        {
            b.HasKey(e => new { e.FamilyId, e.Id });
            b.Property(e => e.Id).ValueGeneratedNever();
            b.HasMany(e => e.Revisions).WithOne(r => r.Entry).HasForeignKey(r => new { r.FamilyId, r.EntryId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}

/// <summary>One writing of an entry: the first, a change, or a removal.</summary>
public sealed class LogRevision : IFamilyOwned, IAppendOnly
{
    public const int LongestWhat = 200;
    public const int LongestNote = 4000;
    public const int LongestWhy = 200;

    private readonly List<LogTime> _times = [];
    private readonly List<LogSubject> _subjects = [];

    private LogRevision() { }

    internal LogRevision(int number, EntryFacts facts, Author author, DateTime now, string why, bool removed, bool aside, int? answers)
    {
        (Number, Date, StartsAt, What, Place, Note) = (number, facts.Date, facts.StartsAt, facts.What, facts.Place, facts.Note);
        (AuthorId, AuthorName, WrittenAt, OnPhoneAt, Why, Removed) = (author.PersonId, author.Name, now, author.OnPhoneAt, why, removed);
        (SentAs, Aside, Answers) = (author.SentAs, aside, answers);
        _times.AddRange(facts.Times.Select(t => new LogTime(number, t)));
        _subjects.AddRange(facts.Split.Select(s => new LogSubject(number, s.SubjectId, s.Weight)));
        _subjects.AddRange(facts.Touches.Select(t => new LogSubject(number, t, 0)));
    }

    public Guid FamilyId { get; private set; }
    public Guid EntryId { get; private set; }
    public LogEntry Entry { get; private set; } = null!;
    public int Number { get; private set; }

    /// <summary>The day on which it was done.</summary>
    public DateOnly Date { get; private set; }
    public int? StartsAt { get; private set; }
    public string What { get; private set; } = "";
    public Place Place { get; private set; }
    public string Note { get; private set; } = "";
    public Guid AuthorId { get; private set; }
    public string AuthorName { get; private set; } = "";

    /// <summary>The instant at which it reached the server, UTC; it may be days after the deed, and that stays visible.</summary>
    public DateTime WrittenAt { get; private set; }

    /// <summary>When it was written on a phone without a network, UTC, as the phone says; null for what came at once.</summary>
    public DateTime? OnPhoneAt { get; private set; }
    public string Why { get; private set; } = "";
    public bool Removed { get; private set; }

    /// <summary>The id under which a phone kept it until it was sent; null for what came at once.</summary>
    public Guid? SentAs { get; private set; }

    /// <summary>Written elsewhere at the same time as what holds, and kept beside it until a guardian chooses.</summary>
    public bool Aside { get; private set; }

    /// <summary>Number of the revision set aside on which this one is the word; null where it is none.</summary>
    public int? Answers { get; private set; }
    public IReadOnlyList<LogTime> Times => _times;
    public IReadOnlyList<LogSubject> Subjects => _subjects;

    public EntryFacts Facts => new(
        Date, StartsAt, What, Place, Note,
        [.. _times.Select(t => new LearnerTime(t.LearnerId, new Minutes(t.Minutes)))],
        [.. _subjects.Where(s => s.Weight > 0).Select(s => new SubjectWeight(s.SubjectId, s.Weight))],
        [.. _subjects.Where(s => s.Weight == 0).Select(s => s.SubjectId)]);

    public LoggedEntry ToCore()
    {
        var facts = Facts;
        return new LoggedEntry(EntryId, Number, Date, Clock(StartsAt), What, Place, facts.Times, facts.Split, facts.Touches);
    }

    /// <summary>Minutes after midnight as a time of day.</summary>
    internal static TimeOnly? Clock(int? startsAt) => startsAt is { } minutes ? new TimeOnly(minutes / 60, minutes % 60) : null;

    internal sealed class Mapping : IEntityTypeConfiguration<LogRevision>
    {
        public void Configure(EntityTypeBuilder<LogRevision> b)
        {
            b.HasKey(r => new { r.FamilyId, r.EntryId, r.Number });
            b.Property(r => r.Number).ValueGeneratedNever();
            b.HasIndex(r => new { r.FamilyId, r.Date });
            b.Property(r => r.What).HasMaxLength(LongestWhat);
            b.Property(r => r.Note).HasMaxLength(LongestNote);
            b.Property(r => r.AuthorName).HasMaxLength(60);
            b.Property(r => r.Why).HasMaxLength(LongestWhy);
            b.Ignore(r => r.Facts);
            b.HasMany(r => r.Times).WithOne().HasForeignKey(t => new { t.FamilyId, t.EntryId, t.Number }).OnDelete(DeleteBehavior.Cascade);
            b.HasMany(r => r.Subjects).WithOne().HasForeignKey(s => new { s.FamilyId, s.EntryId, s.Number }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}

/// <summary>A learner's minutes in one revision.</summary>
public sealed class LogTime : IFamilyOwned, IAppendOnly
{
    private LogTime() { }

    internal LogTime(int number, LearnerTime time) => (Number, LearnerId, Minutes) = (number, time.LearnerId, time.Minutes.Value);

    public Guid FamilyId { get; private set; }
    public Guid EntryId { get; private set; }
    public int Number { get; private set; }
    public Guid LearnerId { get; private set; }

    /// <summary>1–1440.</summary>
    public int Minutes { get; private set; }

    internal sealed class Mapping : IEntityTypeConfiguration<LogTime>
    {
        public void Configure(EntityTypeBuilder<LogTime> b)
        {
            b.HasKey(t => new { t.FamilyId, t.EntryId, t.Number, t.LearnerId });
            b.HasOne<Learner>().WithMany().HasForeignKey(t => new { t.FamilyId, t.LearnerId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}

/// <summary>A subject's weight in one revision; 0 for a touch.</summary>
public sealed class LogSubject : IFamilyOwned, IAppendOnly
{
    private LogSubject() { }

    internal LogSubject(int number, Guid subjectId, int weight) => (Number, SubjectId, Weight) = (number, subjectId, weight);

    public Guid FamilyId { get; private set; }
    public Guid EntryId { get; private set; }
    public int Number { get; private set; }
    public Guid SubjectId { get; private set; }
    public int Weight { get; private set; }

    internal sealed class Mapping : IEntityTypeConfiguration<LogSubject>
    {
        public void Configure(EntityTypeBuilder<LogSubject> b)
        {
            b.HasKey(s => new { s.FamilyId, s.EntryId, s.Number, s.SubjectId });
            b.HasOne<FamilySubject>().WithMany().HasForeignKey(s => new { s.FamilyId, s.SubjectId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
