using CoopLessons.Data;
using CoopLessons.Data.People;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Travel;
using CoopLessons.Web.Files;
using CoopLessons.Web.Hosting;
using CoopLessons.Web.Pages.Account;
using CoopLessons.Web.Planning;
using CoopLessons.Web.Security;
using CoopLessons.Web.Travel;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Filters;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.People;

/// <summary>Somebody who is signed in brings a family from another installation, and sees how far it is.</summary>
[EnableRateLimiting(Access.Brake)]
[LargestUpload(FamilyFile.MostBytes)]
[RequestSizeLimit(FamilyFile.MostBytes + LargestUploadAttribute.Around)]
[RequestFormLimits(MultipartBodyLengthLimit = FamilyFile.MostBytes + LargestUploadAttribute.Around)]
public sealed class BringFamilyModel(AppDb db, CurrentFamily current, InWork work, UserManager<Person> people, ServerSettings settings) : PageModel
{
    private const string Address = "/person/bring";

    [BindProperty]
    public IFormFile? Brought { get; set; }

    /// <summary>As for founding one: on an open server anybody, on a closed one somebody who has it to themselves.</summary>
    public bool MayBring { get; private set; }

    /// <summary>The taking in that was asked for last; null where none is known.</summary>
    public JobStanding? Job { get; private set; }

    /// <summary>The family that came by it.</summary>
    public BroughtFamily? Here => (Job?.Result as FamilyTaken)?.Family;

    public WorkAtHand Waiting => new(Job, JobWords.OfTaking(Job), Address, Address + "?handler=Progress");

    private Guid PersonId => Guid.Parse(people.GetUserId(User)!);

    private CancellationToken Ct => HttpContext.RequestAborted;

    public override async Task OnPageHandlerExecutionAsync(PageHandlerExecutingContext context, PageHandlerExecutionDelegate next)
    {
        Job = work.Standing(PersonId);
        MayBring = settings.SignUpIsOpen || (current.FamilyId is null && await db.Users.CountAsync(p => p.Email != null, Ct) == 1);
        await next();
    }

    public IActionResult OnGet()
    {
        if (LargestUploadAttribute.Refused(HttpContext))
            return Refused($"A family’s file has at most {FamilyFile.MostBytes / 1_000_000_000} gigabytes.", StatusCodes.Status413PayloadTooLarge);
        var fault = Job switch
        {
            { Result: FamilyTaken { Fault: { } unfit } } => unfit,
            { State: JobState.Failed or JobState.Dropped } => JobWords.OfTaking(Job),
            _ => null,
        };
        if (fault is not null)
            ModelState.AddModelError(nameof(Brought), fault);
        return Page();
    }

    public IActionResult OnGetProgress() => this.Progress(Waiting);

    public async Task<IActionResult> OnPostAsync()
    {
        if (!MayBring)
            return NotFound();
        if (Brought is not { Length: > 0 } file)
            return Refused(Brought is null ? "Choose the family’s file." : "This file is empty.");
        await using var brought = file.OpenReadStream();
        return await work.AskAsync(PersonId, brought, Ct)
            ? LocalRedirect(Address)
            : Refused("The server is busy with what others asked for. Nothing was taken in; try again in a minute.", StatusCodes.Status503ServiceUnavailable);
    }

    public IActionResult OnPostCallOff()
    {
        work.CallOff(PersonId);
        return LocalRedirect(Address);
    }

    private IActionResult Refused(string sentence, int status = StatusCodes.Status422UnprocessableEntity)
    {
        ModelState.AddModelError(nameof(Brought), sentence);
        return this.Again(status);
    }
}
