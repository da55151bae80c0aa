using CoopLessons.Web.Pages;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CoopLessons.Web.Planning;

/// <summary>A long work that a page waits for, and shows how far it is.</summary>
/// <param name="Tells">How it stands, in one sentence.</param>
/// <param name="Page">The page that waits; it is loaded anew when the work is over.</param>
/// <param name="Asks">The address that is asked how far it is.</param>
/// <param name="Kept">What becomes of the answer of whoever leaves the page meanwhile, as the end of a sentence; empty where it lies there.</param>
public sealed record WorkAtHand(JobStanding? Job, string Tells, string Page, string Asks, string Kept = "")
{
    /// <summary>In per cent.</summary>
    public int Share => (int)(100 * (Job?.Share ?? 0));
}

public static class WorkAnswers
{
    /// <summary>How far the work is, for a page that waits; where it is over, the page is loaded anew.</summary>
    public static IActionResult Progress(this PageModel page, WorkAtHand work)
    {
        if (!page.Request.IsHtmx())
            return page.LocalRedirect(work.Page);
        if (work.Job is null or { IsOver: true })
            page.Response.Headers["HX-Redirect"] = work.Page;
        return page.Partial("_WorkAtHand", work);
    }
}
