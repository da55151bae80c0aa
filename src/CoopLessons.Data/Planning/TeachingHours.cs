using CoopLessons.Core.Calendar;
using CoopLessons.Core.Schedule;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Planning;

/// <summary>Whose hours hold: one's own where there are any, else the family's, else the usual ones.</summary>
/// <param name="Usual">What holds where the family has said nothing.</param>
public sealed record TeachingHours(IReadOnlyDictionary<Guid, WeekHours> Own, WeekHours? OfFamily, WeekHours Usual)
{
    public WeekHours Family => OfFamily ?? Usual;

    /// <param name="owner">A learner or an adult.</param>
    public WeekHours Of(Guid owner) => Own.GetValueOrDefault(owner) ?? Family;

    public bool HasOwn(Guid owner) => Own.ContainsKey(owner);

    /// <param name="on">Its school year's weekdays are proposed; without a year, Monday to Friday.</param>
    public static async Task<TeachingHours> LoadAsync(AppDb db, DateOnly on, CancellationToken ct)
    {
        var patterns = await db.DayPatterns.AsNoTracking().ToListAsync(ct);
        var weekdays = await db.SchoolYears.Where(y => y.First <= on && y.Last >= on).Select(y => (Weekdays?)y.Weekdays).FirstOrDefaultAsync(ct);
        return new TeachingHours(
            patterns.Where(p => p.Owner is not null).ToDictionary(p => p.OwnerId, p => p.Hours),
            patterns.SingleOrDefault(p => p.Owner is null)?.Hours,
            WeekHours.Usual(weekdays ?? Weekdays.MondayToFriday));
    }
}
