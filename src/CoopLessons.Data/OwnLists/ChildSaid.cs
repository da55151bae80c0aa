using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.OwnLists;

/// <summary>What became of something that a child said was done.</summary>
public enum SaidState
{
    Waiting,

    /// <summary>It is logged as the child said.</summary>
    Confirmed,

    /// <summary>It is logged otherwise.</summary>
    Changed,

    /// <summary>Not yet, with a word to the child.</summary>
    Declined,

    /// <summary>The child took it back.</summary>
    TakenBack,
}

/// <summary>What a child says, set together.</summary>
/// <param name="SessionId">The planned thing; null where it is something else, told in <paramref name="What"/>.</param>
/// <param name="What">What it was: the plan's title, or the child's own.</param>
/// <param name="Minutes">How long, where the child said so.</param>
/// <param name="Words">One line of the child's own.</param>
/// <param name="With">Who was there, as the child said; empty where nobody asked.</param>
/// <param name="Pieces">What was brought to show it.</param>
public sealed record SaidFacts(
    Guid LearnerId, Guid? SessionId, string What, DateOnly Date, int? Minutes, string Words, string With, IReadOnlyList<Guid> Pieces);

/// <summary>Something that a child says was done. It counts nowhere until a guardian confirms it.</summary>
public sealed class ChildSaid : IFamilyOwned, IVersioned
{
    public const int LongestWords = 200;
    public const int LongestAnswer = 120;

    private ChildSaid() { }

    /// <param name="id">Made with the page, so that a second sending is recognised.</param>
    /// <param name="now">UTC.</param>
    public ChildSaid(Guid id, SaidFacts facts, DateTime now)
    {
        (Id, SaidAt) = (id, now);
        (LearnerId, SessionId, What, Date, Minutes) = (facts.LearnerId, facts.SessionId, facts.What, facts.Date, facts.Minutes);
        (Words, With, Pieces) = (facts.Words, facts.With, [.. facts.Pieces]);
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public Guid LearnerId { get; private set; }
    public Guid? SessionId { get; private set; }
    public string What { get; private set; } = "";
    public DateOnly Date { get; private set; }
    public int? Minutes { get; private set; }
    public string Words { get; private set; } = "";
    public string With { get; private set; } = "";
    public List<Guid> Pieces { get; private set; } = [];
    public DateTime SaidAt { get; private set; }
    public SaidState State { get; private set; }

    /// <summary>The entry of the log that came of it.</summary>
    public Guid? EntryId { get; private set; }

    /// <summary>Whether confirming put the child into the log; not so where the entry named the child already.</summary>
    public bool Wrote { get; private set; }

    /// <summary>As the family calls them; empty while it waits.</summary>
    public string DecidedBy { get; private set; } = "";
    public DateTime? DecidedAt { get; private set; }

    /// <summary>A short word to the child.</summary>
    public string Answer { get; private set; } = "";
    public int Version { get; private set; }

    public bool IsWaiting => State == SaidState.Waiting;
    public bool IsLogged => State is SaidState.Confirmed or SaidState.Changed;

    /// <exception cref="InvalidOperationException">It does not wait any more.</exception>
    internal void Confirm(Guid entryId, bool wrote, Author by, DateTime now) => Decide(SaidState.Confirmed, entryId, wrote, by, now);

    /// <summary>A guardian logged it otherwise than the child said.</summary>
    /// <exception cref="InvalidOperationException">It does not wait any more.</exception>
    public void Change(Guid entryId, Author by, DateTime now) => Decide(SaidState.Changed, entryId, wrote: true, by, now);

    /// <exception cref="InvalidOperationException">It does not wait any more.</exception>
    public void Decline(string answer, Author by, DateTime now)
    {
        Decide(SaidState.Declined, null, wrote: false, by, now);
        Answer = answer;
    }

    /// <summary>The child takes it back; what was decided stays.</summary>
    public void TakeBack()
    {
        if (IsWaiting)
            State = SaidState.TakenBack;
    }

    /// <summary>What was decided is undone: it waits again.</summary>
    internal void WaitAgain()
    {
        (State, EntryId, Wrote) = (SaidState.Waiting, null, false);
        (DecidedBy, DecidedAt, Answer) = ("", null, "");
    }

    private void Decide(SaidState state, Guid? entryId, bool wrote, Author by, DateTime now)
    {
        if (!IsWaiting)
            throw new InvalidOperationException("What was decided is undone first.");
        (State, EntryId, Wrote, DecidedBy, DecidedAt) = (state, entryId, wrote, by.Name, now);
    }

    internal sealed class Mapping : IEntityTypeConfiguration<ChildSaid>
    {
        public void Configure(EntityTypeBuilder<ChildSaid> b)
        {
            b.HasKey(s => new { s.FamilyId, s.Id });
            b.Property(s => s.Id).ValueGeneratedNever();
            b.HasIndex(s => new { s.FamilyId, s.LearnerId, s.Date });
            b.Property(s => s.What).HasMaxLength(LogRevision.LongestWhat);
            b.Property(s => s.Words).HasMaxLength(LongestWords);
            b.Property(s => s.With).HasMaxLength(People.Person.LongestName);
            b.Property(s => s.Pieces).AsJson();
            b.Property(s => s.State).HasConversion<string>().HasMaxLength(20);
            b.Property(s => s.DecidedBy).HasMaxLength(People.Person.LongestName);
            b.Property(s => s.Answer).HasMaxLength(LongestAnswer);
            b.Ignore(s => s.IsWaiting);
            b.Ignore(s => s.IsLogged);
            b.HasOne<Learner>().WithMany().HasForeignKey(s => new { s.FamilyId, s.LearnerId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
