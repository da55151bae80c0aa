using CoopLessons.Data;
using CoopLessons.Data.Families;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Families;

/// <summary>A child is added.</summary>
public sealed class NewLearnerModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    [BindProperty]
    public LearnerInput Input { get; set; } = new();

    /// <summary>Made with the form, so that a form sent twice adds one child.</summary>
    [BindProperty]
    public Guid Id { get; set; }

    public Task OnGetAsync()
    {
        Id = Guid.CreateVersion7();
        return Input.ListLevelsAsync(Db, null, Ct);
    }

    public async Task<IActionResult> OnPostAsync()
    {
        if (!await Input.NamesOwnSubjectsAsync(Db, Ct))
            return NotFound();
        if (Input.BirthDate > Today)
            ModelState.AddModelError("Input.BirthDate", "The birth date is today or earlier.");
        if (!ModelState.IsValid)
        {
            await Input.ListLevelsAsync(Db, null, Ct);
            return Again();
        }

        if (Id == Guid.Empty || !await Db.Learners.AnyAsync(l => l.Id == Id, Ct))
        {
            var learner = new Learner(Id == Guid.Empty ? Guid.CreateVersion7() : Id, Input.Name, Input.BirthDate!.Value, await Db.Learners.CountAsync(Ct));
            Input.Write(learner);
            Db.Learners.Add(learner);
            if (!await SaveNewAsync() && !await Db.Learners.AnyAsync(l => l.Id == Id, Ct))
            {
                await Input.ListLevelsAsync(Db, null, Ct);
                return AgainAfterOthers();
            }
        }

        Say($"{Input.Name} is added.");
        return RedirectToPage("/Family/Index");
    }
}
