using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Planning;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Today;

/// <summary>A class day or an outing on one card: when, who goes, what they must not meet, and whom to call.</summary>
public sealed class OutModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    public DateOnly Date { get; private set; }

    public IReadOnlyList<OutOfTheHouse> Outings { get; private set; } = [];

    public IReadOnlyList<SheetPhone> Phones { get; private set; } = [];

    /// <summary>Whether children leave the house for it.</summary>
    public static bool IsOut(Appointment appointment) => appointment.Kind is AppointmentKind.CoOp or AppointmentKind.LessonOut;

    public async Task<IActionResult> OnGetAsync(string date)
    {
        if (!DayWords.TryRead(date, out var day))
            return NotFound();
        Date = day;
        var learners = await Db.Learners.AsNoTracking().Where(l => !l.SetAside).OrderBy(l => l.Order).ThenBy(l => l.Id).ToListAsync(Ct);
        var adults = await Db.TeachingAdults.AsNoTracking().Where(a => !a.SetAside).OrderBy(a => a.Order).ThenBy(a => a.Id).ToListAsync(Ct);
        Outings =
        [
            .. (await FixedPoint.InAsync(Db, new(day, day), Ct)).Where(f => IsOut(f.Appointment)).OrderBy(f => f.Appointment.StartsAt).Select(f => new OutOfTheHouse(
                f.Appointment, [.. learners.Where(l => f.Appointment.Learners.Count == 0 || f.Appointment.Learners.Contains(l.Id))],
                [.. adults.Where(a => f.Appointment.Adults.Contains(a.Id)).Select(a => a.Name)])),
        ];
        Phones = [.. adults.Where(a => a.Phone.Length > 0).Select(a => new SheetPhone(a.Name, a.Phone))];
        return Page();
    }
}

/// <summary>Something for which children leave the house.</summary>
public sealed record OutOfTheHouse(Appointment Appointment, IReadOnlyList<Learner> Learners, IReadOnlyList<string> Adults);
