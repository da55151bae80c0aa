using CoopLessons.Data;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>A teaching family changes an outing, or removes one to which nobody comes.</summary>
public sealed class EditOutingModel(AppDb db, TimeProvider clock) : OutingPage(db, clock)
{
    [BindProperty]
    public OutingForm Input { get; set; } = new();

    public IActionResult OnGet()
    {
        if (!Mine.Teaches)
            return Forbid();
        Input = OutingForm.Of(Outing);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync()
    {
        if (!Mine.Teaches)
            return Forbid();
        if (Input.Read(ModelState, Outing.On < Today ? Outing.On : Today) is not { } facts)
            return Again();
        Expect(Outing, Input.Version);
        Outing.Describe(facts);
        if (!await SaveAsync())
        {
            await FindAsync();
            return Again(StatusCodes.Status409Conflict);
        }

        Say($"“{Outing.Name}” is saved. All families see it.");
        return LocalRedirect($"{Here}/outings/{OutingId}");
    }

    public async Task<IActionResult> OnPostRemoveAsync()
    {
        ModelState.Clear();
        if (!Mine.Teaches)
            return Forbid();
        Input = OutingForm.Of(Outing);
        if (Coming.Any())
            return Refused("", "Families come to this outing. It can be removed once nobody does.");
        Db.CoopOutings.Remove(Outing);
        if (!await SaveAsync())
        {
            await FindAsync();
            return Again(StatusCodes.Status409Conflict);
        }

        Say($"“{Outing.Name}” is removed.");
        return LocalRedirect($"{Here}/outings");
    }
}
