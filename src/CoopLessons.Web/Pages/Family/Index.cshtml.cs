using CoopLessons.Data;
using CoopLessons.Data.Families;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Families;

/// <summary>The family at a glance: children, subjects, years, people, what it counts.</summary>
public sealed class IndexModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    public IReadOnlyList<Learner> Learners { get; private set; } = [];

    public IReadOnlyList<FamilySubject> Subjects { get; private set; } = [];

    public IReadOnlyList<SchoolYear> Years { get; private set; } = [];

    public IReadOnlyList<Membership> Members { get; private set; } = [];

    public int OpenInvitations { get; private set; }

    public async Task OnGetAsync()
    {
        Learners = await Db.Learners.AsNoTracking().Include(l => l.Levels).OrderBy(l => l.Order).ThenBy(l => l.Name).ToListAsync(Ct);
        Subjects = await Db.Subjects.AsNoTracking().OrderBy(s => s.Order).ThenBy(s => s.Name).ToListAsync(Ct);
        Years = await Db.SchoolYears.AsNoTracking().Include(y => y.Breaks).OrderByDescending(y => y.First).ToListAsync(Ct);
        Members = await Db.Memberships.AsNoTracking().OrderBy(m => m.Since).ThenBy(m => m.Name).ToListAsync(Ct);
        OpenInvitations = await Db.Invitations.CountAsync(i => i.WithdrawnAt == null && i.TakenAt == null && i.EndsAt > Now, Ct);
    }
}
