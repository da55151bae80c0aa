using CoopLessons.Core.Units;

namespace CoopLessons.Core.Schedule;

/// <summary>A stretch of a day in minutes after midnight: <paramref name="From"/> included, <paramref name="To"/> not.</summary>
public readonly record struct Stretch(int From, int To)
{
    public int Minutes => To - From;

    public bool Holds(Stretch other) => From <= other.From && other.To <= To;

    public bool Meets(Stretch other) => From < other.To && other.From < To;
}

/// <summary>
/// The free stretches of some days, ascending within a day and apart from each other; a day that is not named has none.
/// </summary>
public sealed record FreeTime(IReadOnlyDictionary<DateOnly, IReadOnlyList<Stretch>> Days)
{
    public static FreeTime None { get; } = new(new Dictionary<DateOnly, IReadOnlyList<Stretch>>());

    public IReadOnlyList<Stretch> On(DateOnly day) => Days.GetValueOrDefault(day) ?? [];
}

/// <summary>A child who takes part.</summary>
/// <param name="LongestSitting">Minutes after which the child needs a change; a longer session gets a longer rest after it, and the checker says so.</param>
public sealed record WeekLearner(Guid Id, string Name, int LongestSitting, FreeTime Free);

/// <summary>A grown-up who is there to teach. At most four in a problem.</summary>
public sealed record WeekAdult(Guid Id, string Name, FreeTime Free);

/// <summary>
/// A wait after a session, such as a rise or a drying, within the same day. Nobody is busy in it; at its end somebody looks,
/// with the session's learners and an adult's hands, for <paramref name="LookMinutes"/>. The rest after the session is not
/// longer than the wait.
/// </summary>
/// <param name="Minutes">From the end of the session to the earliest look.</param>
/// <param name="LookMinutes">1 or more.</param>
/// <param name="Patience">How many minutes later the look may still be; the end of it is rounded up to five minutes.</param>
public sealed record WaitAndLook(int Minutes, int LookMinutes, int Patience);

/// <summary>What must be done before a session.</summary>
/// <param name="DaysBefore">0: earlier on the same day will do; n: at least n places earlier among the problem's days.</param>
public sealed record Precedence(Guid SessionId, int DaysBefore);

/// <summary>What the family would like; kept where nothing of more weight is lost by it.</summary>
/// <param name="Day">The weekday wished for, or null for any.</param>
/// <param name="Morning">Over by noon.</param>
public sealed record SessionWish(DayOfWeek? Day, bool Morning);

/// <summary>
/// Where a session stands, or stood before. <paramref name="StartsAt"/> in minutes after midnight. What is not said of a
/// fixed session, its look and whose hands it takes, is the earliest that clashes with no fixed session before it in the
/// problem, else the earliest there is.
/// </summary>
public sealed record OldPlace(DateOnly Day, int StartsAt, int? LooksAt = null, Guid? Adult = null, Guid? Looker = null);

/// <summary>Hours to which a session is bound, and the reason as the middle of a sentence: "while Robin sleeps".</summary>
public sealed record BoundHours(FreeTime Hours, string Because);

/// <summary>How gladly a session is kept when not everything fits.</summary>
public enum Weight { IfThereIsRoom = 1, Usual = 2, AboveAll = 3 }

/// <summary>One thing to be placed in a week.</summary>
/// <param name="Id">Of the session; unique in the problem.</param>
/// <param name="Subject">Anything by which sessions of one subject know each other; null where it does not matter.</param>
/// <param name="Learners">At least one, all in the problem; they do it together.</param>
/// <param name="Minutes">1 or more.</param>
public sealed record WeekSession(
    Guid Id, string Title, string? Subject, IReadOnlyList<Guid> Learners, int Minutes, AdultNeed Need)
{
    public Weight Weight { get; init; } = Weight.Usual;
    public WaitAndLook? Wait { get; init; }
    public IReadOnlyList<Precedence> After { get; init; } = [];
    public SessionWish? Wish { get; init; }

    /// <summary>Where it stood. Sessions with an old place leave it only where something is gained.</summary>
    public OldPlace? Was { get; init; }

    /// <summary>Whether it stays where it was, whatever that breaks: done already, or set by hand. Needs <see cref="Was"/>.</summary>
    public bool Fixed { get; init; }

    public BoundHours? Bound { get; init; }

    /// <summary>Days on which alone it may stand; null for any. An activity that needs three days of growing names the third.</summary>
    public IReadOnlyList<DateOnly>? OnlyOn { get; init; }

    /// <summary>Equal for sessions that may change places with each other, such as five lessons of one course; null for one of a kind.</summary>
    public string? Alike { get; init; }
}

/// <summary>A week, or what is left of it, to be laid out.</summary>
/// <param name="Days">The days on which sessions may stand: ascending, 1 to 7 of them.</param>
public sealed record WeekProblem(
    IReadOnlyList<DateOnly> Days, IReadOnlyList<WeekLearner> Learners, IReadOnlyList<WeekAdult> Adults, IReadOnlyList<WeekSession> Sessions)
{
    public const int MostAdults = 4;
}
