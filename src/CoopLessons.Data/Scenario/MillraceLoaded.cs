using CoopLessons.Data.Tenancy;

namespace CoopLessons.Data.Scenario;

/// <summary>What was put into the database.</summary>
public sealed record MillraceLoaded(IReadOnlyList<LoadedFamily> Families)
{
    public LoadedFamily this[string name] => Families.Single(f => f.Name == name);
}

/// <param name="Adults">The guardian who founded the family stands first.</param>
/// <param name="Learners">From the eldest.</param>
/// <param name="Entries">Entries written, removed ones among them.</param>
/// <param name="Sessions">Sessions of the unit that runs now, up to the next week.</param>
public sealed record LoadedFamily(
    Guid FamilyId, string Name, string State, IReadOnlyList<LoadedAdult> Adults, IReadOnlyList<LoadedLearner> Learners, int Entries, int Sessions)
{
    public LoadedAdult Guardian => Adults[0];
}

public sealed record LoadedAdult(Guid PersonId, string Name, string Email, Role Role);

/// <param name="IsOfSchoolAge">Has a full year's log.</param>
public sealed record LoadedLearner(Guid Id, string Name, DateOnly BirthDate, bool IsOfSchoolAge);
