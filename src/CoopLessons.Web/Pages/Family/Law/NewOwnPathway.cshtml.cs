using CoopLessons.Data;
using CoopLessons.Data.Requirements;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Families.Law;

/// <summary>A pathway of the family's own is written.</summary>
public sealed class NewOwnPathwayModel(AppDb db, TimeProvider clock) : OwnPathwayPage(db, clock)
{
    /// <summary>Made with the form, so that a form sent twice writes one pathway.</summary>
    [BindProperty]
    public Guid Id { get; set; }

    public async Task OnGetAsync()
    {
        Id = Guid.CreateVersion7();
        await ListSubjectsAsync([]);
        Input.Spread();
    }

    public async Task<IActionResult> OnPostAsync()
    {
        await ListSubjectsAsync([]);
        if (!NamesOwnSubjects())
            return NotFound();
        if (!ModelState.IsValid)
            return Again();
        if (Id == Guid.Empty || !await Db.OwnPathways.AnyAsync(p => p.Id == Id, Ct))
        {
            var own = new OwnPathway(Id == Guid.Empty ? Guid.CreateVersion7() : Id, OwnWriting.Write(Input, Subjects, null, Today));
            Db.Add(own);
            if (!await SaveNewAsync() && !await Db.OwnPathways.AnyAsync(p => p.Id == own.Id, Ct))
                return AgainAfterOthers();
        }

        Say($"{Input.Name} is written. Now it can be chosen for a child.");
        return RedirectToPage("/Family/Law/Index");
    }
}
