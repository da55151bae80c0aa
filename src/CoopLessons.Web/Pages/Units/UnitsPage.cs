using CoopLessons.Core.Units;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Units;

/// <summary>What the pages of the Units place read in the same way.</summary>
public abstract class UnitsPage(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    /// <summary>The family's unit with its subjects and activities, or null.</summary>
    protected Task<Unit?> UnitAsync(Guid id) => Db.WholeUnitAsync(id, Ct);

    /// <summary>All of the family's subjects in its order, retired ones too.</summary>
    protected Task<List<FamilySubject>> SubjectsAsync() => Db.Subjects.AsNoTracking().OrderBy(s => s.Order).ThenBy(s => s.Id).ToListAsync(Ct);

    /// <summary>The learners who are taught now, in the family's order.</summary>
    protected Task<List<Learner>> LearnersAsync() =>
        Db.Learners.AsNoTracking().Include(l => l.Levels).Where(l => !l.SetAside).OrderBy(l => l.Order).ThenBy(l => l.Id).ToListAsync(Ct);

    protected CautionedLearner Cautioned(Learner learner) => learner.ToCautioned(Today);

    /// <summary>
    /// Takes minutes that the log's memory offers for an activity, or goes back to those that were written. False, with the
    /// reason at the head of the page, where they are not offered by now or somebody else changed the activity first.
    /// </summary>
    /// <param name="activity">As the unit of work follows it.</param>
    protected async Task<bool> TakeMinutesAsync(Activity activity, MinutesOffers offers, int minutes, int version)
    {
        if (!offers.Holds(minutes))
        {
            ModelState.AddModelError("", "The log says otherwise by now. This is what it offers.");
            return false;
        }

        activity.TakeLikely(minutes);
        Expect(activity, version);
        if (!await SaveAsync())
            return false;
        Say($"“{activity.Title}” is planned for {UnitWords.Length(minutes)} from now on.");
        return true;
    }
}
