using CoopLessons.Data.Prepare;

namespace CoopLessons.Data.Scenario;

/// <summary>What an orderly family has begun by today of all that its units ask to be begun ahead.</summary>
internal static class BegunAhead
{
    /// <summary>How long after its first day, or before its last one, such a family begins.</summary>
    private const int DaysToSpare = 3;

    /// <summary>Adds the marks to the unit of work. Nothing is saved here.</summary>
    public static async Task AddAsync(AppDb db, DateOnly today, CancellationToken ct)
    {
        foreach (var line in (await AheadList.LoadAsync(db, today, ct)).Lines)
        {
            var begun = line.Dates.From is { } from && from.AddDays(DaysToSpare) <= line.Dates.By ? from.AddDays(DaysToSpare) : line.Dates.By.AddDays(-DaysToSpare);
            if (begun >= today)
                continue;
            var mark = new AheadMark(Guid.CreateVersion7(), line.Activity.Id, line.Start.What);
            mark.Begin(begun, line.NeededOn);
            if (line.Start.TendEveryDays > 0 && today.AddDays(-1) > begun)
                mark.Tend(today.AddDays(-1));
            db.Add(mark);
        }
    }
}
