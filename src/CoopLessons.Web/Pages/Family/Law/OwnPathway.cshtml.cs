using CoopLessons.Core.Requirements;
using CoopLessons.Data;
using CoopLessons.Data.Requirements;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Families.Law;

/// <summary>A pathway of the family's own is changed, or removed while nobody stands under it.</summary>
public sealed class OwnPathwayModel(AppDb db, TimeProvider clock) : OwnPathwayPage(db, clock)
{
    [BindProperty]
    public int Version { get; set; }

    public OwnPathway Row { get; private set; } = null!;

    /// <summary>Null where the stored text can no longer be read; the form then begins empty.</summary>
    public Pathway? Pathway { get; private set; }

    /// <summary>Names of the children who stand or stood under it.</summary>
    public IReadOnlyList<string> Standing { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(Guid id)
    {
        if (!await FindAsync(id))
            return NotFound();
        Fill();
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(Guid id)
    {
        if (!await FindAsync(id) || !NamesOwnSubjects())
            return NotFound();
        if (!ModelState.IsValid)
            return Again();
        Row.Write(OwnWriting.Write(Input, Subjects, Pathway, Today));
        Expect(Row, Version);
        if (!await SaveAsync())
            return await AgainAsync(id, fill: false);
        Say($"{Row.Name} is saved.");
        return RedirectToPage("/Family/Law/Index");
    }

    public async Task<IActionResult> OnPostRemoveAsync(Guid id)
    {
        if (!await FindAsync(id))
            return NotFound();
        ModelState.Clear();
        if (Standing.Count > 0)
        {
            Fill();
            ModelState.AddModelError("", InUse);
            return Again(StatusCodes.Status409Conflict);
        }

        var text = id.ToString();
        Db.RemoveRange(await Db.SubjectReadings.Where(r => r.Code == "" && r.PathwayId == text).ToListAsync(Ct));
        Db.Remove(Row);
        Expect(Row, Version);
        try
        {
            if (!await SaveAsync())
                return await AgainAsync(id, fill: true);
        }
        catch (DbUpdateException)
        {
            // Somebody came to stand under it in the same moment; the database kept it.
            Db.ChangeTracker.Clear();
            ModelState.AddModelError("", InUse);
            return await AgainAsync(id, fill: true);
        }

        Say($"{Row.Name} is removed.");
        return RedirectToPage("/Family/Law/Index");
    }

    private static string InUse => "A child stands or stood under this pathway. Take it away there first; then it can be removed.";

    private async Task<IActionResult> AgainAsync(Guid id, bool fill)
    {
        if (!await FindAsync(id))
            return NotFound();
        ModelState.Remove(nameof(Version));
        if (fill)
            Fill();
        Version = Row.Version;
        return Again(StatusCodes.Status409Conflict);
    }

    private async Task<bool> FindAsync(Guid id)
    {
        if (await Db.OwnPathways.SingleOrDefaultAsync(p => p.Id == id, Ct) is not { } own)
            return false;
        (Row, Pathway) = (own, own.Read());
        Standing = await Db.LearnerPathways.Where(p => p.OwnPathwayId == id)
            .Join(Db.Learners, p => p.LearnerId, l => l.Id, (_, l) => l.Name).Distinct().OrderBy(n => n).ToListAsync(Ct);
        await ListSubjectsAsync(Pathway is null ? [] : [.. Pathway.Subjects.Select(s => s.Id)]);
        return true;
    }

    private void Fill()
    {
        Input = Pathway is null ? new OwnInput { Name = Row.Name } : OwnWriting.Read(Pathway, Subjects);
        Input.Spread();
        Version = Row.Version;
    }
}
