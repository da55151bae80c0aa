using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Data.Sealing;
using CoopLessons.Web.Phone;
using CoopLessons.Web.Sealing;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Filters;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages;

/// <summary>A page of somebody who acts for a family: the family, its today, and the answers that every form gives.</summary>
public abstract class FamilyPage(AppDb db, TimeProvider clock) : PageModel
{
    protected AppDb Db { get; } = db;
    protected TimeProvider Clock { get; } = clock;
    protected CancellationToken Ct => HttpContext.RequestAborted;

    /// <summary>The instant of this request, UTC.</summary>
    protected DateTime Now => Clock.GetUtcNow().UtcDateTime;

    public Family Family { get; private set; } = null!;

    /// <summary>Today in the family's time zone.</summary>
    public DateOnly Today => Family.Today(Clock);

    /// <summary>What a phone kept and sends now; null for a form that is sent by itself.</summary>
    protected KeptItem? Kept => KeptItem.Of(Request);

    public bool IsGuardian => Db.Current.Role == Data.Tenancy.Role.Guardian;

    public override async Task OnPageHandlerExecutionAsync(PageHandlerExecutingContext context, PageHandlerExecutionDelegate next)
    {
        Family = await Db.Families.SingleAsync(Ct);
        // What was done for one family is never written for another that the person chose meanwhile.
        if (KeptItem.Of(Request) is not null && Request.Headers[KeptItem.FamilyHeader].ToString() is { Length: > 0 } family && family != Family.Id.ToString())
        {
            context.Result = new StatusCodeResult(StatusCodes.Status421MisdirectedRequest);
            return;
        }

        ViewData["Family"] = Family.Name;
        ViewData["Zone"] = Family.TimeZone;
        ViewData["Now"] = Now;
        if (IsGuardian && LateWhy.Read(Request) is { } why)
            Db.Late = new LateCorrection(why, await AuthorAsync(), Today, Now);
        ViewData["Leaves"] = IsGuardian && Family.LeavesAt is { } leaves ? (Family.Local(leaves), leaves <= Now) : null;
        await next();
    }

    /// <summary>Who writes, as the family calls them.</summary>
    protected async Task<Author> AuthorAsync()
    {
        var person = Db.Current.PersonId!.Value;
        var name = await Db.Memberships.Where(m => m.PersonId == person).Select(m => m.Name).SingleAsync(Ct);
        return Kept is { } kept ? new Author(person, name, kept.WrittenBefore(Now), kept.Id) : new Author(person, name);
    }

    /// <summary>The form once more, with what was typed and the messages beside the fields.</summary>
    protected IActionResult Again(int status = StatusCodes.Status422UnprocessableEntity)
    {
        Response.StatusCode = status;
        return Page();
    }

    /// <summary>A fragment of the page, for a swap.</summary>
    protected IActionResult Fragment(string name, object model, int status = StatusCodes.Status200OK)
    {
        Response.StatusCode = status;
        return Partial(name, model);
    }

    /// <summary>A sentence that the next page says, once.</summary>
    protected void Say(string sentence) => TempData["Said"] = sentence;

    /// <summary>
    /// Saves; false where somebody saved a newer version first, with the message at the form's head. Nothing was
    /// written then.
    /// </summary>
    protected async Task<bool> SaveAsync()
    {
        try
        {
            await Db.SaveChangesAsync(Ct);
            return true;
        }
        catch (DbUpdateConcurrencyException)
        {
            Db.ChangeTracker.Clear();
            ModelState.AddModelError("", "Somebody changed this while you were writing. What you typed is still here; open the page again beside it to compare, then save once more.");
            return false;
        }
    }

    /// <summary>
    /// Saves a row with an id from its page. A second sending that comes in the same moment finds the id or another
    /// unique name taken, or the row that holds it changed: then nothing is written, and false is returned without a
    /// message.
    /// </summary>
    protected async Task<bool> SaveNewAsync()
    {
        try
        {
            await Db.SaveChangesAsync(Ct);
            return true;
        }
        catch (DbUpdateException)
        {
            Db.ChangeTracker.Clear();
            return false;
        }
    }

    /// <summary>The form once more where somebody else saved at the same moment; the message beside a field, or at the form's head.</summary>
    protected IActionResult AgainAfterOthers(string field = "")
    {
        ModelState.AddModelError(field, "Something else was saved at the same moment. Nothing you typed is lost; send it once more.");
        return Again(StatusCodes.Status409Conflict);
    }

    /// <summary>Saving will be refused unless the row is still at the version that the form was filled from.</summary>
    protected void Expect(Data.Tenancy.IVersioned row, int version) =>
        Db.Entry(row).Property(nameof(Data.Tenancy.IVersioned.Version)).OriginalValue = version;
}

public static class SwapRequests
{
    /// <summary>Whether the answer is swapped into a page that stays.</summary>
    public static bool IsHtmx(this HttpRequest request) => request.Headers.ContainsKey("HX-Request");
}
