using System.Text.Json;

namespace CoopLessons.Data.Scenario;

/// <summary>Days that families of the co-op did not come to write down yet, as <c>seed-scenario/forgotten.json</c> tells it.</summary>
internal sealed record CoopForgotten(IReadOnlyDictionary<string, ForgottenDays> Families)
{
    public static CoopForgotten Read() =>
        JsonSerializer.Deserialize<CoopForgotten>(ScenarioFiles.Bytes("scenario/forgotten.json"), Coop.Json) ?? throw new InvalidDataException("forgotten.json holds nothing.");
}

/// <param name="From">Days before this are written down, whenever the co-op is loaded.</param>
/// <param name="TeachingDaysBack">Counted from the last teaching day before today, which is 1.</param>
internal sealed record ForgottenDays(DateOnly From, IReadOnlyList<int> TeachingDaysBack)
{
    /// <summary>A week of teaching lies well within so many days, unless a long break does.</summary>
    private const int DaysLookedBack = 14;

    /// <summary>The log without those days.</summary>
    public IReadOnlyList<Draft> Without(IReadOnlyList<Draft> drafts, Household house, DateOnly today)
    {
        var teaching = Enumerable.Range(1, DaysLookedBack).Select(back => today.AddDays(-back))
            .Where(d => house.Family.Years.Any(y => y.Calendar.IsTeachingDay(d) && !y.IsSick(d))).ToList();
        var forgotten = TeachingDaysBack.Where(n => n <= teaching.Count).Select(n => teaching[n - 1]).Where(d => d >= From).ToHashSet();
        return [.. drafts.Where(d => !forgotten.Contains(d.Facts.Date))];
    }
}
