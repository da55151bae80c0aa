using CoopLessons.Core.Calendar;
using CoopLessons.Data.Tenancy;

namespace CoopLessons.Data.Families;

/// <summary>The founding of a family: its row, its first guardian, the usual subjects and a school year to begin with.</summary>
public static class NewFamily
{
    /// <summary>Adds everything and lets the unit of work act for the new family. Nothing is saved here.</summary>
    /// <param name="today">In the family's time zone; the first school year runs from the July before to the June after it.</param>
    public static Family Found(AppDb db, Guid id, string name, string timeZone, Guid guardianId, string guardianName, DateOnly today, DateTime now)
    {
        db.Current.Act(id, guardianId, Role.Guardian);
        var family = new Family(id, name, timeZone, now);
        db.Families.Add(family);
        db.Memberships.Add(new Membership(guardianId, guardianName, Role.Guardian, now));
        for (var i = 0; i < FamilySubject.Usual.Count; i++)
            db.Subjects.Add(new FamilySubject(Guid.CreateVersion7(), FamilySubject.Usual[i].Code, FamilySubject.Usual[i].Name, i));
        db.SchoolYears.Add(UsualYear(today));
        return family;
    }

    /// <summary>July to June, Monday to Friday (common practice, no source); the family changes it at will.</summary>
    public static SchoolYear UsualYear(DateOnly today)
    {
        var first = new DateOnly(today.Month >= 7 ? today.Year : today.Year - 1, 7, 1);
        var name = $"{first.Year}–{(first.Year + 1) % 100:00}";
        return new SchoolYear(Guid.CreateVersion7(), name, new DayRange(first, first.AddYears(1).AddDays(-1)), Weekdays.MondayToFriday);
    }
}
