using CoopLessons.Core.Calendar;

namespace CoopLessons.Core.Requirements;

/// <summary>Why a learner stands under a pathway from a day on.</summary>
public enum SpanReason
{
    /// <summary>Home instruction begins.</summary>
    Begins,

    /// <summary>The family has moved here.</summary>
    Moves,

    /// <summary>The family changes to another pathway of the same place.</summary>
    Changes,
}

/// <summary>What the law asks to know of a learner.</summary>
/// <param name="Grade">In the school year asked about, 0 for kindergarten; null where the family has not said.</param>
public sealed record LearnerFacts(Guid Id, string Name, DateOnly BirthDate, int? Grade)
{
    public DateOnly Birthday(int age) => BirthDate.AddYears(age) is var day && BirthDate is { Month: 2, Day: 29 } && day is { Month: 2, Day: 28 } ? day.AddDays(1) : day;
}

/// <summary>A stretch of days during which a learner stands under one pathway.</summary>
/// <param name="Place">The place as people call it: Missouri; for a family's own pathway, "your own".</param>
/// <param name="Code">ISO 3166-2, or empty for a family's own pathway.</param>
/// <param name="Until">Included; null while nothing follows.</param>
/// <param name="CountsFrom">The day from which the log counts where the law lets nothing count before a paper is in; null for the first day.</param>
public sealed record PathwaySpan(
    string Code,
    string Place,
    Pathway Pathway,
    DateOnly From,
    DateOnly? Until,
    SpanReason Because,
    DateOnly? CountsFrom,
    PathwayChoices Choices)
{
    /// <summary>Place and pathway, as papers name them.</summary>
    public string Named => $"{(Code.Length == 0 ? "Our own" : Place)}: {Pathway.Name}";

    public bool Holds(DateOnly date) => date >= From && (Until is null || date <= Until);

    /// <summary>The days of the span inside a range, or null where they do not meet.</summary>
    public DayRange? In(DayRange range)
    {
        var first = From > range.First ? From : range.First;
        var last = Until is { } until && until < range.Last ? until : range.Last;
        return last < first ? null : new DayRange(first, last);
    }
}

/// <summary>What the family chose for a learner under a pathway.</summary>
/// <param name="Goals">Ids of figures that bind nobody and that the family takes as its own.</param>
/// <param name="Figures">Figures that are set locally, by the requirement's id: days as days, hours as hours.</param>
/// <param name="Subjects">The family's subjects behind each of the statute's, by the statute subject's id.</param>
public sealed record PathwayChoices(
    IReadOnlySet<string> Goals,
    IReadOnlyDictionary<string, decimal> Figures,
    IReadOnlyDictionary<string, IReadOnlySet<Guid>> Subjects)
{
    public static PathwayChoices None { get; } = new(new HashSet<string>(), new Dictionary<string, decimal>(), new Dictionary<string, IReadOnlySet<Guid>>());

    /// <summary>The family's subjects that count for one of the statute's; empty where none is chosen.</summary>
    public IReadOnlySet<Guid> SubjectsFor(string id) => Subjects.GetValueOrDefault(id) ?? new HashSet<Guid>();
}
