using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Travel;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.OwnLists;

/// <summary>How much a child reads on the child's own list.</summary>
public enum ReadingLevel
{
    /// <summary>A picture and two words at most.</summary>
    Pictures,

    /// <summary>The title and one short sentence.</summary>
    ShortWords,
    AllWords,
}

/// <summary>Whether a child has a list of the child's own, how it reads, and the PIN that opens it on the family's tablet.</summary>
public sealed class OwnList : IFamilyOwned, IVersioned
{
    public const int ShortestPin = 4;
    public const int LongestPin = 6;

    /// <summary>Wrong PINs before the first wait. Common practice, no source; so are the waits.</summary>
    public const int TriesBeforeWait = 5;

    /// <summary>In minutes; the first wait is one minute, and each further wrong PIN doubles it.</summary>
    public const int LongestWait = 60;

    private OwnList() { }

    public OwnList(Guid learnerId) => LearnerId = learnerId;

    public Guid FamilyId { get; private set; }
    public Guid LearnerId { get; private set; }

    /// <summary>Whether the child has the list; nobody has one until a guardian says so.</summary>
    public bool Shown { get; private set; }
    public ReadingLevel Reading { get; private set; }

    /// <summary>Slow hash of the PIN, sealed; empty while none is set.</summary>
    [StaysHere("a PIN is a secret, sealed with a key of this server; choose it anew")]
    public string Pin { get; private set; } = "";
    [StaysHere("goes with the PIN")]
    public int WrongPins { get; private set; }

    /// <summary>UTC; null where another PIN may be tried at once.</summary>
    [StaysHere("goes with the PIN")]
    public DateTime? WaitsUntil { get; private set; }
    public int Version { get; private set; }

    public bool HasPin => Pin.Length > 0;

    public void Describe(bool shown, ReadingLevel reading) => (Shown, Reading) = (shown, reading);

    /// <param name="hash">Empty to forget the PIN. Waits end either way.</param>
    public void SetPin(string hash)
    {
        Pin = hash;
        Opened();
    }

    public bool IsWaiting(DateTime now) => WaitsUntil > now;

    /// <summary>Counts a try as wrong before it is looked at, so that tries made at once are each counted.</summary>
    public void Try(DateTime now)
    {
        WrongPins++;
        WaitsUntil = WrongPins < TriesBeforeWait ? null : now.AddMinutes(Math.Min(LongestWait, 1 << Math.Min(WrongPins - TriesBeforeWait, 10)));
    }

    /// <summary>The PIN was right.</summary>
    public void Opened() => (WrongPins, WaitsUntil) = (0, null);

    internal sealed class Mapping : IEntityTypeConfiguration<OwnList>
    {
        public void Configure(EntityTypeBuilder<OwnList> b)
        {
            b.HasKey(l => new { l.FamilyId, l.LearnerId });
            b.Property(l => l.Reading).HasConversion<string>().HasMaxLength(20);
            b.Property(l => l.Pin).HasMaxLength(600);
            b.Ignore(l => l.HasPin);
            b.HasOne<Learner>().WithMany().HasForeignKey(l => new { l.FamilyId, l.LearnerId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
