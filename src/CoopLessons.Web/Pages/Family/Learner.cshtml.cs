using CoopLessons.Data;
using CoopLessons.Data.Coops;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Families;

/// <summary>A child's name, birth date, allergies and levels; setting aside one who has left.</summary>
public sealed class LearnerModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    [BindProperty]
    public LearnerInput Input { get; set; } = new();

    [BindProperty]
    public int Version { get; set; }

    public string Name { get; private set; } = "";

    public bool IsSetAside { get; private set; }

    public async Task<IActionResult> OnGetAsync(Guid id)
    {
        if (await FindAsync(id) is not { } learner)
            return NotFound();
        Input = LearnerInput.Of(learner);
        Version = learner.Version;
        await Input.ListLevelsAsync(Db, learner, Ct);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(Guid id)
    {
        if (await FindAsync(id) is not { } learner || !await Input.NamesOwnSubjectsAsync(Db, Ct))
            return NotFound();
        if (Input.BirthDate > Today)
            ModelState.AddModelError("Input.BirthDate", "The birth date is today or earlier.");
        if (!ModelState.IsValid)
        {
            await Input.ListLevelsAsync(Db, learner, Ct);
            return Again();
        }

        Input.Write(learner);
        await Showing.FollowAsync(Db, learner, Today, Now, Ct);
        // Levels are rows of their own; the version that guards them is the child's.
        Db.Entry(learner).State = EntityState.Modified;
        Expect(learner, Version);
        if (!await SaveAsync())
        {
            if (await FindAsync(id) is not { } newer)
                return NotFound();
            await Input.ListLevelsAsync(Db, newer, Ct);
            ModelState.Remove(nameof(Version));
            Version = newer.Version;
            return Again(StatusCodes.Status409Conflict);
        }

        Say($"{Input.Name} is saved.");
        return RedirectToPage("/Family/Index");
    }

    public Task<IActionResult> OnPostAsideAsync(Guid id) => PutAsync(id, aside: true, name => $"{name} is set aside. What was logged stays in the records.");

    public Task<IActionResult> OnPostBackAsync(Guid id) => PutAsync(id, aside: false, name => $"{name} is back.");

    private async Task<IActionResult> PutAsync(Guid id, bool aside, Func<string, string> sentence)
    {
        if (await FindAsync(id) is not { } learner)
            return NotFound();
        // The fields of the other form did not come with this one.
        ModelState.Clear();
        // Sent a second time, it is done already.
        if (learner.SetAside != aside)
        {
            if (aside)
                learner.PutAside();
            else
                learner.BringBack();
            await Showing.FollowAsync(Db, learner, Today, Now, Ct);
            Expect(learner, Version);
            if (!await SaveAsync())
            {
                if (await FindAsync(id) is not { } newer)
                    return NotFound();
                (Input, Version) = (LearnerInput.Of(newer), newer.Version);
                await Input.ListLevelsAsync(Db, newer, Ct);
                return Again(StatusCodes.Status409Conflict);
            }
        }

        Say(sentence(learner.Name));
        return RedirectToPage("/Family/Index");
    }

    private async Task<Data.Families.Learner?> FindAsync(Guid id)
    {
        var learner = await Db.Learners.Include(l => l.Levels).SingleOrDefaultAsync(l => l.Id == id, Ct);
        (Name, IsSetAside) = (learner?.Name ?? "", learner?.SetAside == true);
        return learner;
    }
}
