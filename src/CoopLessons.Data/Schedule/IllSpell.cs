using CoopLessons.Core.Units;
using CoopLessons.Data.Log;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Schedule;

/// <summary>
/// Days on which somebody is ill and the plan rests. It decides nothing about a session: what rests is neither done nor not
/// done, and goes on or is let go once everybody is well. Who is ill with what is written nowhere.
/// </summary>
public sealed class IllSpell : IFamilyOwned, IVersioned
{
    private IllSpell() { }

    /// <param name="id">Made with the page, so that a second sending is recognised.</param>
    /// <param name="now">UTC.</param>
    public IllSpell(Guid id, DateOnly from, IEnumerable<Guid> learners, Author by, DateTime now)
    {
        (Id, From, BegunBy, BegunAt) = (id, from, by.Name, now);
        Concern(learners);
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public DateOnly From { get; private set; }

    /// <summary>The last day of it, included; null while nobody said that it is over.</summary>
    public DateOnly? To { get; private set; }

    /// <summary>Who is ill; empty for everybody.</summary>
    public List<Guid> Learners { get; private set; } = [];

    /// <summary>Sessions that go on by the family's word.</summary>
    public List<Guid> Kept { get; private set; } = [];

    /// <summary>Sessions that rest by the family's word, although what they are usually goes on.</summary>
    public List<Guid> Rested { get; private set; } = [];

    /// <summary>As the family calls them.</summary>
    public string BegunBy { get; private set; } = "";
    public DateTime BegunAt { get; private set; }
    public int Version { get; private set; }

    public bool IsOpen => To is null;

    /// <param name="today">Up to which an open spell reaches: what comes later may be well again.</param>
    public bool Holds(DateOnly date, DateOnly today) => date >= From && date <= (To ?? today);

    public void Concern(IEnumerable<Guid> learners) => Learners = [.. learners.Distinct()];

    public void Keep(Guid sessionId)
    {
        Rested.Remove(sessionId);
        if (!Kept.Contains(sessionId))
            Kept.Add(sessionId);
    }

    public void Rest(Guid sessionId)
    {
        Kept.Remove(sessionId);
        if (!Rested.Contains(sessionId))
            Rested.Add(sessionId);
    }

    /// <param name="well">The first day on which everybody is well.</param>
    /// <exception cref="ArgumentOutOfRangeException">That day is not after the first day of the spell.</exception>
    public void End(DateOnly well)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(well, From);
        To = well.AddDays(-1);
    }

    /// <summary>Whether a session that is still to be decided rests.</summary>
    public bool Stops(PlannedWork work, DateOnly today) =>
        work.Session.State == SessionState.Planned && Holds(work.Session.Date, today) && Takes(work.Session) && !GoesOn(work);

    /// <summary>Whether it would rest but for what it is, or for the family's word.</summary>
    public bool Spares(PlannedWork work, DateOnly today) =>
        work.Session.State == SessionState.Planned && Holds(work.Session.Date, today) && Takes(work.Session) && GoesOn(work);

    /// <summary>All of its children are ill; with others in it, it goes on for them.</summary>
    public bool Takes(PlannedSession session) => Learners.Count == 0 || session.Learners.Count > 0 && session.Learners.All(Learners.Contains);

    private bool GoesOn(PlannedWork work) => Kept.Contains(work.Session.Id) || !Rested.Contains(work.Session.Id) && UsuallyGoesOn(work.Doing);

    /// <summary>What is heard can be heard in bed: reading aloud, and what is listened to. Common practice, no source.</summary>
    public static bool UsuallyGoesOn(Doing doing) => doing.Kind == ActivityKind.ReadAloud || doing.Details.Books.Any(b => b.Use == BookUse.ListenedTo);

    internal sealed class Mapping : IEntityTypeConfiguration<IllSpell>
    {
        public void Configure(EntityTypeBuilder<IllSpell> b)
        {
            b.HasKey(s => new { s.FamilyId, s.Id });
            b.Property(s => s.Id).ValueGeneratedNever();
            b.HasIndex(s => new { s.FamilyId, s.From });
            b.Property(s => s.Learners).AsJson();
            b.Property(s => s.Kept).AsJson();
            b.Property(s => s.Rested).AsJson();
            b.Property(s => s.BegunBy).HasMaxLength(People.Person.LongestName);
            b.Ignore(s => s.IsOpen);
        }
    }
}

/// <summary>The spells of a family that reach into some days.</summary>
public sealed class IllDays(IReadOnlyList<IllSpell> spells, DateOnly today)
{
    public static async Task<IllDays> LoadAsync(AppDb db, DateOnly first, DateOnly today, CancellationToken ct) =>
        new(await db.IllSpells.AsNoTracking().Where(s => s.To == null || s.To >= first).OrderBy(s => s.From).ThenBy(s => s.Id).ToListAsync(ct), today);

    /// <summary>The one that nobody ended yet.</summary>
    public IllSpell? Open => spells.FirstOrDefault(s => s.IsOpen);

    public IllSpell? On(DateOnly date) => spells.FirstOrDefault(s => s.Holds(date, today));

    public bool Stops(PlannedWork work) => spells.Any(s => s.Stops(work, today));

    public bool Spares(PlannedWork work) => spells.Any(s => s.Spares(work, today));
}
