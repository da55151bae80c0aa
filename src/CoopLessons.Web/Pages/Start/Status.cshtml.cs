using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CoopLessons.Web.Pages.Start;

/// <summary>What a page says that cannot be shown.</summary>
[IgnoreAntiforgeryToken] // Shown in place of refused posts, too; it changes nothing.
public sealed class StatusModel : PageModel
{
    public string Title { get; private set; } = "";
    public string Sentence { get; private set; } = "";

    public void OnGet(int code) => Tell(code);

    public void OnPost(int code) => Tell(code);

    private void Tell(int code) => (Title, Sentence) = code switch
    {
        400 => ("That was not understood", "The page may have been open for too long, or was sent from elsewhere. Nothing was changed. Open it again and send it once more."),
        401 or 403 => ("Not yours to open", "You are signed in, but this page is for others: guardians of the family, or nobody at all. Ask a guardian if you need it."),
        404 => ("Nothing here", "The address is wrong or no longer opens, or what stood here is not yours to read."),
        409 => ("Changed meanwhile", "Somebody changed this while you were writing. Open the page again to see how it stands."),
        410 => ("No longer here", "This address has been ended. Ask whoever gave it to you for a new one."),
        413 => ("Too large", "What was sent is larger than this server takes. Nothing was changed."),
        429 => ("Too many tries", "Wait a minute, then try again."),
        _ => ("That did not work", "Nothing was changed."),
    };
}
