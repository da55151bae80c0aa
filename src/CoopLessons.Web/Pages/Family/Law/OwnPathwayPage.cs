using CoopLessons.Data;
using CoopLessons.Data.Families;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Families.Law;

/// <summary>The form of a pathway of the family's own, new or known.</summary>
public abstract class OwnPathwayPage(AppDb db, TimeProvider clock) : LawPage(db, clock)
{
    [BindProperty(Name = nameof(Input))]
    public OwnInput Input { get; set; } = new();

    /// <summary>In the family's order; retired ones only where the pathway names them.</summary>
    public IReadOnlyList<FamilySubject> Subjects { get; private set; } = [];

    /// <param name="known">Codes that the pathway names already.</param>
    protected async Task ListSubjectsAsync(IReadOnlyCollection<string> known) =>
        Subjects = [.. (await Db.Subjects.AsNoTracking().OrderBy(s => s.Retired).ThenBy(s => s.Order).ThenBy(s => s.Id).ToListAsync(Ct)).Where(s => !s.Retired || known.Contains(s.Code))];

    protected bool NamesOwnSubjects() => !Input.CoreSubjects.Concat(Input.RequiredSubjects).Except(Subjects.Select(s => s.Id)).Any();
}
