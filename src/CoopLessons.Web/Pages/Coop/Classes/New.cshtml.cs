using CoopLessons.Data;
using CoopLessons.Data.Coops.Days;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>A teaching family adds a class.</summary>
public sealed class NewClassModel(AppDb db, TimeProvider clock) : ClassFormPage(db, clock)
{
    public const int Most = 200;

    public async Task<IActionResult> OnGetAsync()
    {
        if (!Mine.Teaches)
            return Forbid();
        await ReadTableAsync();
        Input = new() { NewId = Guid.CreateVersion7(), First = await Db.CoopMeetings.Where(m => m.CoopId == CoopId && m.On >= Today).OrderBy(m => m.On).Select(m => (DateOnly?)m.On).FirstOrDefaultAsync(Ct) };
        Input.Spread(Table);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync()
    {
        if (!Mine.Teaches)
            return Forbid();
        await ReadTableAsync();
        if (Table.Classes.Any(c => c.Id == Input.NewId))
            return LocalRedirect($"{Here}/classes/{Input.NewId}");
        if (Table.Classes.Count >= Most)
            ModelState.AddModelError("", $"A co-op has at most {Most} classes.");
        if (ReadForm(null) is not { } read)
            return AgainSpread();
        var added = new CoopClass(CoopId, Input.NewId == Guid.Empty ? Guid.CreateVersion7() : Input.NewId, read.Facts, read.Details);
        Db.CoopClasses.Add(added);
        Db.ClassListLines.Add(ClassListLine.Resize(added, 1, Family.Id, Now));
        if (!await SaveNewAsync())
        {
            ModelState.AddModelError("", "Something else was saved at the same moment. Nothing you typed is lost; send it once more.");
            return AgainSpread(StatusCodes.Status409Conflict);
        }

        Say($"“{added.Title}” is added.");
        return LocalRedirect($"{Here}/classes/{added.Id}");
    }
}
