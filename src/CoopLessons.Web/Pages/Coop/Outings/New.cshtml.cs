using CoopLessons.Data;
using CoopLessons.Data.Coops.Days;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>A teaching family adds an outing.</summary>
public sealed class NewOutingModel(AppDb db, TimeProvider clock) : CoopPage(db, clock)
{
    [BindProperty]
    public OutingForm Input { get; set; } = new();

    public IActionResult OnGet()
    {
        if (!Mine.Teaches)
            return Forbid();
        Input = new() { NewId = Guid.CreateVersion7() };
        return Page();
    }

    public async Task<IActionResult> OnPostAsync()
    {
        if (!Mine.Teaches)
            return Forbid();
        if (await Db.CoopOutings.AnyAsync(o => o.CoopId == CoopId && o.Id == Input.NewId, Ct))
            return LocalRedirect($"/coop/{CoopId}/outings/{Input.NewId}");
        if (Input.Read(ModelState, Today) is not { } facts)
            return Again();
        var added = new CoopOuting(CoopId, Input.NewId == Guid.Empty ? Guid.CreateVersion7() : Input.NewId, facts);
        Db.CoopOutings.Add(added);
        if (!await SaveNewAsync())
            return AgainAfterOthers();
        Say($"“{added.Name}” is added.");
        return LocalRedirect($"/coop/{CoopId}/outings/{added.Id}");
    }
}
