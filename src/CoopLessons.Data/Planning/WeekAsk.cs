namespace CoopLessons.Data.Planning;

/// <summary>
/// What a parent says of a week before it is laid out. Keys are those of <see cref="Wanted.Key"/>, which stay the same from
/// one asking to the next.
/// </summary>
/// <param name="LeftOut">Not done at all; its activity is left out of the unit when the layout is taken.</param>
/// <param name="NextWeek">Not this week.</param>
/// <param name="Shorter">Minutes instead of those that are written.</param>
/// <param name="Helped">Somebody else sees to it: it takes none of the family's own hands.</param>
/// <param name="Lost">Days on which nothing is taught.</param>
public sealed record WeekAsk(
    IReadOnlySet<string> LeftOut,
    IReadOnlySet<string> NextWeek,
    IReadOnlyDictionary<string, int> Shorter,
    IReadOnlySet<string> Helped,
    IReadOnlySet<DateOnly> Lost)
{
    /// <summary>Only what is planned already, with nothing new taken up.</summary>
    public bool PlannedOnly { get; init; }

    /// <summary>Sessions that would stand on another day, and stay on it whatever else moves.</summary>
    public IReadOnlyDictionary<Guid, DateOnly> Moves { get; init; } = new Dictionary<Guid, DateOnly>();

    /// <summary>Sessions that are not looked at: they are let go.</summary>
    public IReadOnlySet<Guid> LetGo { get; init; } = new HashSet<Guid>();

    public static WeekAsk Plain { get; } = new(new HashSet<string>(), new HashSet<string>(), new Dictionary<string, int>(), new HashSet<string>(), new HashSet<DateOnly>());

    public bool Omits(string key) => LeftOut.Contains(key) || NextWeek.Contains(key);
}
