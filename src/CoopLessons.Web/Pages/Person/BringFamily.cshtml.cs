using CoopLessons.Data;
using CoopLessons.Data.Files;
using CoopLessons.Data.People;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Travel;
using CoopLessons.Web.Files;
using CoopLessons.Web.Hosting;
using CoopLessons.Web.Pages.Account;
using CoopLessons.Web.Security;
using CoopLessons.Web.Travel;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Filters;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.People;

/// <summary>Somebody who is signed in brings a family from another installation.</summary>
[EnableRateLimiting(Access.Brake)]
[LargestUpload(FamilyFile.MostBytes)]
[RequestSizeLimit(FamilyFile.MostBytes + LargestUploadAttribute.Around)]
[RequestFormLimits(MultipartBodyLengthLimit = FamilyFile.MostBytes + LargestUploadAttribute.Around)]
public sealed class BringFamilyModel(
    AppDb db, CurrentFamily current, FileShelf shelf, FileRoom room, TravelLook look, UserManager<Person> people, ServerSettings settings, TimeProvider clock, ILogger<BringFamilyModel> log) : PageModel
{
    [BindProperty]
    public IFormFile? Brought { get; set; }

    /// <summary>As for founding one: on an open server anybody, on a closed one somebody who has it to themselves.</summary>
    public bool MayBring { get; private set; }

    private CancellationToken Ct => HttpContext.RequestAborted;

    public override async Task OnPageHandlerExecutionAsync(PageHandlerExecutingContext context, PageHandlerExecutionDelegate next)
    {
        MayBring = settings.SignUpIsOpen || (current.FamilyId is null && await db.Users.CountAsync(p => p.Email != null, Ct) == 1);
        await next();
    }

    public IActionResult OnGet()
    {
        if (!LargestUploadAttribute.Refused(HttpContext))
            return Page();
        return Refused($"A family’s file has at most {FamilyFile.MostBytes / 1_000_000_000} gigabytes.", StatusCodes.Status413PayloadTooLarge);
    }

    public async Task<IActionResult> OnPostAsync()
    {
        if (!MayBring)
            return NotFound();
        if (Brought is not { Length: > 0 } file)
            return Refused(Brought is null ? "Choose the family’s file." : "This file is empty.");
        var person = (await people.GetUserAsync(User))!;
        using var turn = await room.EnterAsync(person.Id, Ct);
        if (turn is null)
            return Refused("Other files are being looked at just now. Nothing was taken in; try again in a minute.", StatusCodes.Status503ServiceUnavailable);
        try
        {
            await using var brought = file.OpenReadStream();
            // Begun is finished, even if the visitor has gone.
            var family = await new FamilyIn(db, shelf, look.OfAsync).TakeAsync(brought, person, clock.GetUtcNow().UtcDateTime, _ => { }, CancellationToken.None);
            this.Say($"The {family.Name} family is here, with {family.Rows:N0} rows and {family.Files:N0} files.");
            return LocalRedirect("/family");
        }
        catch (FamilyUnfitException unfit)
        {
            log.LogInformation(unfit.InnerException, "A family was not taken in");
            return Refused(unfit.Message);
        }
    }

    private IActionResult Refused(string sentence, int status = StatusCodes.Status422UnprocessableEntity)
    {
        ModelState.AddModelError(nameof(Brought), sentence);
        return this.Again(status);
    }
}
