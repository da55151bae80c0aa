using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.People;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Hosting;
using CoopLessons.Web.Pages.Account;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Filters;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.People;

/// <summary>Somebody who is signed in founds a family.</summary>
[EnableRateLimiting(Access.Brake)]
public sealed class FoundFamilyModel(AppDb db, CurrentFamily current, Founding founding, UserManager<Person> people, ServerSettings settings) : PageModel
{
    [BindProperty]
    public InputModel Input { get; set; } = new();

    public bool HasFamily { get; private set; }

    /// <summary>On an open server anybody; on a closed one only somebody who has the server to themselves.</summary>
    public bool MayFound { get; private set; }

    private CancellationToken Ct => HttpContext.RequestAborted;

    public override async Task OnPageHandlerExecutionAsync(PageHandlerExecutingContext context, PageHandlerExecutionDelegate next)
    {
        HasFamily = current.FamilyId is not null;
        MayFound = settings.SignUpIsOpen || (!HasFamily && await db.Users.CountAsync(p => p.Email != null, Ct) == 1);
        await next();
    }

    public async Task<IActionResult> OnPostAsync()
    {
        if (!MayFound)
            return NotFound();
        if (!ModelState.IsValid)
            return this.Again();
        var person = (await people.GetUserAsync(User))!;
        founding.AddFamily(person.Id, person.Name, Input.Name, Input.TimeZone);
        await db.SaveChangesAsync(Ct);
        this.Say($"The {Input.Name} family is founded. Begin with the children.");
        return LocalRedirect("/family");
    }

    public sealed class InputModel
    {
        [Required(ErrorMessage = "Give the family a name.")]
        [StringLength(Family.LongestName, ErrorMessage = "A family's name has at most {1} signs.")]
        [Visible]
        public string Name { get; set; } = "";

        [Required(ErrorMessage = "Choose the time zone you live in.")]
        [StringLength(60, ErrorMessage = "Choose a time zone from the list.")]
        [KnownZone]
        public string TimeZone { get; set; } = Zones.Usual;
    }
}
