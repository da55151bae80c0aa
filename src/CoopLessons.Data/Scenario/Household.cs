using CoopLessons.Core.Families;
using CoopLessons.Core.Hours;
using CoopLessons.Data.Log;

namespace CoopLessons.Data.Scenario;

/// <summary>A child of the scenario with the id of its row.</summary>
internal sealed record Pupil(Guid Id, CoopChild Child)
{
    public int AgeOn(DateOnly date) => Age.On(date, Child.Born);

    public bool IsOfSchoolAge => Child.YearHours > 0;
}

/// <summary>A family of the scenario as the writing of its log needs it.</summary>
/// <param name="Number">The family's place in the co-op's list, from 0.</param>
/// <param name="Subjects">Ids of the family's subjects by code.</param>
/// <param name="Children">From the eldest.</param>
/// <param name="Adults">The one who writes most stands first.</param>
/// <param name="Runs">The units that were taken, by their first Monday.</param>
internal sealed record Household(
    Coop Coop,
    int Number,
    CoopFamily Family,
    TimeZoneInfo Zone,
    IReadOnlyDictionary<string, Guid> Subjects,
    IReadOnlyList<Pupil> Children,
    IReadOnlyList<Author> Adults,
    IReadOnlyList<UnitRun> Runs)
{
    public Chance ChanceFor(int purpose, int number) => new(Coop.Seed, Number, purpose, number);

    public IReadOnlyList<SubjectWeight> Split(IReadOnlyDictionary<string, int> split) =>
        [.. split.Select(s => new SubjectWeight(Subjects[s.Key], s.Value))];

    public IReadOnlyList<Guid> Touches(IEnumerable<string> codes) => [.. codes.Select(c => Subjects[c])];

    /// <summary>The instant of a wall-clock time at the family's, in UTC; minutes may run past midnight.</summary>
    public DateTime Utc(DateOnly date, double minutes) =>
        TimeZoneInfo.ConvertTimeToUtc(date.ToDateTime(TimeOnly.MinValue).AddMinutes(minutes), Zone);
}
